import { length, movePoint, type Outline, type Point } from '@panewright/geometry';
import type { Materials } from '../derive/materials.ts';
import { remember } from '../derive/remember.ts';
import type { Catalogue, Magnet } from '../document/catalogue.ts';
import type { Opening } from '../document/job.ts';
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
import { EASE, holdDetails } from './holdDetails.ts';
import { holdOpening } from './holdOpening.ts';
import type { Foot } from './holdPoints.ts';
import type { KeepOut } from './layout.ts';
import { keepOuts, panelLayout } from './panelLayout.ts';
import { type Cavity, cavityOf, patchAt, patchPiece, samePatch } from './pocket.ts';

/** Pocket patches of the whole job: a shape met before is the same piece. */
export interface PatchBook {
  readonly patches: { readonly piece: string; readonly outline: Outline; readonly kind: 'corner' | 'edge' }[];
}

export interface HoldInput {
  readonly pattern: PatternPlan;
  readonly panel: PanelPlan;
  readonly materials: Materials;
  readonly members: readonly { readonly opening: Opening; readonly plan: OpeningPlan }[];
}

/** A hold point before its patch is known by name. */
interface Placed {
  readonly foot: Foot;
  readonly pocket: Outline;
  readonly piece: Outline;
  readonly cavity: Cavity;
}

interface PlaceContext {
  readonly panel: PanelPlan;
  readonly habits: Catalogue['habits'];
  readonly zones: readonly KeepOut[];
  readonly reach: number;
}

/** Feet, pockets and cavities of a panel by its finished edge: all that does not depend on other panels or on the glass. */
const placed = remember(
  (_finished: Outline, { panel, habits, zones, reach }: PlaceContext, find) => {
    const { feet, edges, gaps } = panelLayout(
      panel,
      zones,
      reach,
      habits.pocketSeam,
      habits.patternTolerance,
    );
    return {
      edges,
      gaps,
      places: feet.map((foot, index) => place(foot, index + 1, panel, habits.pocketSeam, find)),
    };
  },
  (a, b) =>
    a.habits === b.habits &&
    a.panel.cut === b.panel.cut &&
    a.panel.band === b.panel.band &&
    a.panel.pattern === b.panel.pattern &&
    (['spacing', 'upTo', 'pocket'] as const).every(
      (key) => a.panel.choices.hold[key] === b.panel.choices.hold[key],
    ) &&
    sameZones(a.zones, b.zones) &&
    (a.zones.length === 0 || a.reach === b.reach),
);

const sameZones = (a: readonly KeepOut[], b: readonly KeepOut[]): boolean =>
  (a.length === 0 && b.length === 0) || JSON.stringify(a) === JSON.stringify(b);

/** Hold points of one panel with their pockets, and what each member's glass makes of them. */
export function holdPlan(input: HoldInput, catalogue: Catalogue, book: PatchBook, find: Find): HoldPlan {
  const { pattern, panel, materials } = input;
  const { habits } = catalogue;
  const zones = keepOuts(pattern, input.members);
  const reach = faceRadius(materials.outside);
  const made = placed(panel.finished, { panel, habits, zones, reach }, find);
  const { edges, gaps, places } = made;
  const counts = new Map<string, number>();
  const points = places.flatMap((one, index): HoldPoint[] => {
    if (!one) return [];
    const piece = pieceFor(one.piece, one.foot.kind, book);
    counts.set(piece, (counts.get(piece) ?? 0) + 1);
    return [toPoint(one, index + 1, piece)];
  });
  reportOverlap(points, panel, find);
  reportFit(points, panel, materials.outside, find);
  for (const member of input.members)
    reportObstructions(points, pattern, member.opening, materials.outside, find);
  const hung = { ...panel, mass: panelMass(panel, points, materials) };
  const openings = input.members.map(({ plan }): HoldOpening => {
    const { place } = pattern.members.find((member) => member.opening === plan.opening)!;
    const details = { points, places: made, panel: hung, place, materials, habits };
    return {
      ...holdOpening(plan, points, hung, materials, catalogue, find),
      ...holdDetails(plan, details),
    };
  });
  return { pattern: pattern.pattern, points, edges, pocketPieces: piecesOf(counts, book), openings, gaps };
}

function place(foot: Foot, number: number, panel: PanelPlan, seam: number, find: Find): Placed | null {
  const size = panel.choices.hold.pocket;
  // A bound panel's patch is cut flush with its cloth, under the binding; else it ends at the finished edge.
  const trim = panel.edging.kind === 'binding' ? panel.cut : panel.finished;
  const pocket = patchAt(trim, foot.at, foot.inward, size);
  const cavity = pocket ? cavityOf(pocket, panel.band ?? panel.finished, foot.at, foot.inward, seam) : null;
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

function toPoint({ foot, pocket, cavity }: Placed, number: number, pocketPiece: string): HoldPoint {
  return {
    number,
    kind: foot.kind,
    on: foot.on,
    s: foot.s,
    edgePoint: foot.at,
    inward: foot.inward,
    centre: cavity.centre,
    pocket,
    pocketPiece,
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

/** Radius of the circle a magnet's face needs to lie in, mm. */
export function faceRadius({ shape }: Magnet): number {
  return shape.kind === 'disc' ? shape.diameter / 2 : Math.hypot(shape.width, shape.height) / 2;
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
function reportOverlap(points: readonly HoldPoint[], panel: PanelPlan, find: Find): void {
  const size = panel.choices.hold.pocket;
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
  magnet: Magnet,
  find: Find,
): void {
  const place = pattern.members.find((member) => member.opening === opening.id)!.place;
  const reach = faceRadius(magnet);
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
