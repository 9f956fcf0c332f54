import { length, movePoint, type Outline, type Point } from '@panewright/geometry';
import type { PoleOut } from '@panewright/magnets';
import type { Materials } from '../derive/materials.ts';
import { remember } from '../derive/remember.ts';
import type { Catalogue, Magnet } from '../document/catalogue.ts';
import type { HeldByHand, Opening } from '../document/job.ts';
import { panelMass } from '../panels/panelMass.ts';
import type { Find } from '../plan/finding.ts';
import type {
  HoldOpening,
  HoldPlan,
  HoldPoint,
  OpeningPlan,
  PanelPlan,
  PatternPlan,
  PocketPiece,
} from '../plan/plan.ts';
import { carriedByHand } from './carriedByHand.ts';
import { faceRadius } from './faceOf.ts';
import { handFindings } from './handFindings.ts';
import { EASE } from './holdDetails.ts';
import { holdOnGlass } from './holdOnGlass.ts';
import type { HandPlaced } from './layout.ts';
import { insetFrom, keepOuts, type PanelFoot, type PanelRules, panelLayout } from './panelLayout.ts';
import { panelPoles, poleContext } from './panelPoles.ts';
import { type Cavity, patchPiece, samePatch } from './pocket.ts';
import { pointsForMargin } from './pointsForMargin.ts';
import { sewnPocket } from './sewnPocket.ts';

/** Pocket patches of the whole job: a shape met before is the same piece. */
export interface PatchBook {
  readonly patches: { readonly piece: string; readonly outline: Outline; readonly kind: 'corner' | 'edge' }[];
}

export interface HoldInput {
  readonly pattern: PatternPlan;
  readonly panel: PanelPlan;
  readonly materials: Materials;
  readonly members: readonly { readonly opening: Opening; readonly plan: OpeningPlan }[];
  readonly byHand: readonly HeldByHand[];
  readonly openings: readonly OpeningPlan[];
}

/** A hold point before its patch is known by name. */
interface Placed {
  readonly foot: PanelFoot;
  readonly pocket: Outline | null;
  readonly piece: Outline | null;
  readonly cavity: Cavity;
}

interface PlaceContext {
  readonly panel: PanelPlan;
  readonly rules: PanelRules;
}

/** Feet, pockets and cavities of a panel by its finished edge: all that does not depend on other panels or on the glass. */
const placed = remember(
  (_finished: Outline, { panel, rules }: PlaceContext, find) => {
    const { feet, edges, gaps, problems } = panelLayout(panel, rules);
    const places = feet.map((foot, index) =>
      rules.inset === null
        ? place(foot, index + 1, panel, rules.habits.pocketSeam, find)
        : fastened(foot, rules.inset, rules.reach),
    );
    return { edges, gaps, problems, places };
  },
  (a, b) =>
    a.rules.habits === b.rules.habits &&
    a.panel.cut === b.panel.cut &&
    a.panel.band === b.panel.band &&
    a.panel.pattern === b.panel.pattern &&
    (['spacing', 'upTo', 'pocket'] as const).every(
      (key) => a.panel.choices.hold[key] === b.panel.choices.hold[key],
    ) &&
    a.rules.inset === b.rules.inset &&
    sameList(a.rules.zones, b.rules.zones) &&
    sameList(a.rules.hand, b.rules.hand) &&
    JSON.stringify(a.rules.counts) === JSON.stringify(b.rules.counts) &&
    (plainly(a.rules) || a.rules.reach === b.rules.reach),
);

/** Points whose reach does not move them. */
const plainly = ({ zones, inset }: PanelRules): boolean => zones.length === 0 && inset === null;

const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  (a.length === 0 && b.length === 0) || JSON.stringify(a) === JSON.stringify(b);

/**
 * Hold points of one panel with their pockets, and what each member's glass makes of them.
 *
 * @param book null where the patches need no names: they are then all called ''
 * @param on the one opening whose glass is looked at; all members' where left out
 */
export function holdPlan(
  input: HoldInput,
  catalogue: Catalogue,
  book: PatchBook | null,
  find: Find,
  on?: string,
): HoldPlan {
  const { pattern, panel, materials } = input;
  const { habits } = catalogue;
  const hand = carriedByHand(input.byHand, pattern, panel, input.openings, find);
  const rules = rulesOf(input, hand.placed, catalogue, find);
  const made = placed(panel.finished, { panel, rules }, find);
  const { edges, gaps, places } = made;
  handFindings(hand, made.problems, gaps, panel, find);
  const standing = places.flatMap((one, index) => (one ? [{ one, number: index + 1 }] : []));
  const poles = panelPoles(
    made,
    poleContext(
      standing.map(({ one }) => ({ centre: one.cavity.centre })),
      panel,
      materials,
    ),
    find,
  );
  const counts = new Map<string, number>();
  const points = standing.map(({ one, number }, k): HoldPoint => {
    const piece = one.piece && book ? pieceFor(one.piece, one.foot.kind, book) : '';
    if (piece) counts.set(piece, (counts.get(piece) ?? 0) + 1);
    return toPoint(one, number, piece, poles.plan.panelOut[k]!);
  });
  reportOverlap(points, panel, rules, find);
  if (rules.inset === null) reportFit(points, panel, materials.outside, find);
  for (const member of input.members) reportObstructions(points, pattern, member.opening, rules.reach, find);
  const hung = { ...panel, mass: panelMass(panel, points, materials) };
  const seen = input.members.filter(({ plan }) => on === undefined || plan.opening === on);
  const openings = seen.map(({ plan }): HoldOpening => {
    const { place } = pattern.members.find((member) => member.opening === plan.opening)!;
    const { magnets } = catalogue;
    const context = { points, places: made, panel: hung, place, materials, habits, magnets, poles };
    return holdOnGlass(plan, context, catalogue, find);
  });
  return {
    pattern: pattern.pattern,
    points,
    edges,
    pocketPieces: book ? piecesOf(counts, book) : [],
    openings,
    gaps,
    byHandOf: hand.of,
    poles: poles.way,
    ...(poles.way === 'keyed' ? { wrongWays: poles.plan.wrongWays } : {}),
  };
}

function rulesOf(
  { pattern, panel, materials, members }: HoldInput,
  hand: readonly HandPlaced[],
  catalogue: Catalogue,
  find: Find,
): PanelRules {
  const { holder, outside } = materials;
  const { habits } = catalogue;
  const rules = {
    zones: keepOuts(pattern, members),
    reach: holder.kind === 'fastener' ? holder.fastener.face / 2 : faceRadius(outside),
    hand,
    inset: holder.kind === 'fastener' ? holder.fastener.inset : null,
    habits,
  };
  const asked = panel.choices.hold.points === 'margin';
  const counts = asked ? pointsForMargin({ panel, materials, members, rules }, catalogue, find) : null;
  return { ...rules, counts };
}

function place(foot: PanelFoot, number: number, panel: PanelPlan, seam: number, find: Find): Placed | null {
  const size = panel.choices.hold.pocket;
  const { pocket, cavity } = sewnPocket(panel, foot, seam);
  if (!pocket || !cavity) {
    find({
      severity: 'stop',
      code: 'MAGNET_DOES_NOT_FIT_POCKET',
      where: { pattern: panel.pattern, point: String(number), edge: foot.on },
      numbers: { room: 0, need: 0, pocket: size },
    });
    return null;
  }
  return { foot, pocket, cavity, piece: patchPiece(pocket, foot.at, foot.inward) };
}

/** A fastener goes through the cloth itself: no patch. */
const fastened = (foot: PanelFoot, inset: number, radius: number): Placed => ({
  foot,
  pocket: null,
  piece: null,
  cavity: { centre: insetFrom(foot, inset), radius },
});

function toPoint({ foot, pocket, cavity }: Placed, number: number, piece: string, pole: PoleOut): HoldPoint {
  return {
    number,
    kind: foot.kind,
    on: foot.on,
    s: foot.s,
    edgePoint: foot.at,
    inward: foot.inward,
    centre: cavity.centre,
    pocket,
    pocketPiece: piece,
    rule: foot.rule ?? null,
    byHand: foot.byHand,
    poleOut: pole,
    cavity,
  };
}

function pieceFor(outline: Outline, kind: 'corner' | 'edge', book: PatchBook): string {
  const known = book.patches.find((patch) => samePatch(patch.outline, outline));
  if (known) return known.piece;
  const piece = `K${book.patches.length + 1}`;
  book.patches.push({ piece, outline, kind });
  return piece;
}

function piecesOf(counts: ReadonlyMap<string, number>, book: PatchBook): readonly PocketPiece[] {
  return [...counts].map(([piece, count]) => {
    const { outline, kind } = book.patches.find((patch) => patch.piece === piece)!;
    return { piece, outline, kind, count };
  });
}

function reportFit(points: readonly HoldPoint[], panel: PanelPlan, magnet: Magnet, find: Find): void {
  const needed = faceRadius(magnet) + EASE;
  for (const point of points)
    if (point.cavity.radius < needed)
      find({
        severity: 'stop',
        code: 'MAGNET_DOES_NOT_FIT_POCKET',
        where: { pattern: panel.pattern, point: String(point.number), edge: point.on },
        numbers: { room: 2 * point.cavity.radius, need: 2 * needed, pocket: panel.choices.hold.pocket },
      });
}

/** Patches that lie over one another cannot both be sewn flat. */
function reportOverlap(
  points: readonly HoldPoint[],
  panel: PanelPlan,
  { inset, reach }: PanelRules,
  find: Find,
): void {
  const size = inset === null ? panel.choices.hold.pocket : 2 * reach;
  const total = length(panel.finished);
  for (const [index, point] of points.entries()) {
    const next = points[(index + 1) % points.length]!;
    if (next === point) continue;
    const along = (((next.s - point.s) % total) + total) % total;
    const apart = Math.min(along, Math.hypot(next.centre.x - point.centre.x, next.centre.y - point.centre.y));
    if (apart < size * 0.75)
      find({
        severity: 'doubt',
        code: 'HOLD_POINTS_OVERLAP',
        where: { pattern: panel.pattern, point: `${point.number} ${next.number}` },
        numbers: { apart, pocket: size },
      });
  }
}

function reportObstructions(
  points: readonly HoldPoint[],
  pattern: PatternPlan,
  opening: Opening,
  reach: number,
  find: Find,
): void {
  const place = pattern.members.find((member) => member.opening === opening.id)!.place;
  for (const point of points) {
    const centre = movePoint(place, point.centre);
    for (const zone of opening.obstructions) {
      const gap = distanceToBox(centre, zone);
      if (gap < reach)
        find({
          severity: 'doubt',
          code: 'HOLD_POINT_ON_OBSTRUCTION',
          where: { opening: opening.id, point: String(point.number), item: zone.id },
          numbers: { obstruction: zone.name, gap, reach },
        });
    }
  }
}

function distanceToBox(p: Point, box: { x: number; y: number; width: number; height: number }): number {
  const dx = Math.max(box.x - p.x, 0, p.x - box.x - box.width);
  const dy = Math.max(box.y - p.y, 0, p.y - box.y - box.height);
  return Math.hypot(dx, dy);
}
