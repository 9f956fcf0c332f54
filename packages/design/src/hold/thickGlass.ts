import { contactPull, magnetGrade } from '@panewright/magnets';
import { mm } from '@panewright/quantity';
import type { Magnet } from '../document/catalogue.ts';
import type { Fastener } from '../document/fasteners.ts';
import { bestChoice, type ChoiceInput, lowMarginFor, type MagnetChoice } from './choosing.ts';
import { faceOf } from './faceOf.ts';
import { fastenerStrength } from './fasteners.ts';
import { bodyOf } from './holdOpening.ts';
import type { Strength } from './margins.ts';
import { meeting } from './meeting.ts';
import { placing } from './placing.ts';
import { type SteelItem, steelStrength } from './steelStrength.ts';

/** What can hold a panel whose glass is too thick for the catalogue's magnets. Every figure is worked out for this panel. */
export type ThickGlassAnswer =
  /** A pair of the catalogue after all: more points, or another one. */
  | { readonly code: 'CATALOGUE_PAIR'; readonly choice: MagnetChoice }
  /** The smallest of the common sizes that would do, not in the catalogue; `pocket`: width of the patch it needs. */
  | {
      readonly code: 'LARGER_DISCS' | 'BLOCKS';
      readonly magnet: Magnet;
      readonly choice: MagnetChoice;
      readonly pocket: number;
      /** Snapped together without the glass, N: mind the fingers. */
      readonly touching: number;
    }
  /** A strip on the frame beside the glass: the magnet draws to it without the glass between. */
  | {
      readonly code: 'STEEL_ON_FRAME';
      readonly magnet: string;
      readonly steel: SteelItem;
      readonly gap: number;
      readonly points: number;
      readonly pull: number;
      readonly margin: number | 'unloaded';
    }
  | {
      readonly code: 'OTHER_FASTENER';
      readonly fastener: string;
      readonly points: number;
      readonly pull: number;
      readonly margin: number | 'unloaded';
    }
  /** It would be another fastener, but nobody has tried how much it holds. */
  | { readonly code: 'FASTENER_TO_BE_TRIED'; readonly fastener: string; readonly pullNeeded: number };

export interface ThickGlassInput {
  readonly choice: ChoiceInput;
  /** Pocket at a hold point for a patch of a stated width; null where the panel leaves none. */
  readonly pocketOf: (size: number) => ChoiceInput['pockets'] | null;
  /** Widest patch the shop would sew, mm. */
  readonly mostPocket: number;
  /** Cloth and film between the panel's magnet and a strip on the frame, mm. */
  readonly frameGap: number;
  readonly fasteners: readonly Fastener[];
}

/** Common sizes of the trade, mm, smallest first: diameter and thickness; width, height and thickness. */
const DISCS = [
  [20, 10],
  [25, 10],
  [30, 10],
  [35, 10],
  [40, 10],
  [40, 15],
  [50, 15],
  [60, 15],
] as const;
const BLOCKS = [
  [40, 20, 5],
  [50, 20, 6],
  [40, 20, 10],
  [60, 20, 10],
  [50, 30, 10],
  [60, 40, 10],
  [80, 40, 15],
] as const;
const GRADE = 'N45SH';
/** Patches are tried in steps of a quarter of an inch, from the smallest. Common practice, no source. */
const POCKET_STEP = 6.35;
const LEAST_POCKET = 50.8;
const CONTACT_GAP = mm(0.5);
/** Flat mild steel to be had anywhere, thinnest first. Sizes are common ones of the trade, prices invented. */
const FRAME_STRIPS: readonly SteelItem[] = [
  { id: 'strip-30x2', width: 30, thickness: 2, pricePerMetre: 480 },
  { id: 'strip-30x3', width: 30, thickness: 3, pricePerMetre: 620 },
  { id: 'strip-40x5', width: 40, thickness: 5, pricePerMetre: 1150 },
];

/**
 * What would hold where the catalogue's magnets do not: pairs that do after all, larger discs, blocks, steel on the frame
 * beside the glass, other fasteners. Nothing is offered that was not worked out to meet the margin; a fastener whose
 * strength is not known is offered to be tried, with the pull it would need.
 *
 * @accuracy as panelMargins: an estimate
 * @source as choosing, steelStrength, fastenerStrength
 */
export function thickGlassAnswers(input: ThickGlassInput): readonly ThickGlassAnswer[] {
  const known = bestChoice(input.choice);
  const sizes: readonly (ThickGlassAnswer | null)[] = [
    smallest(
      'LARGER_DISCS',
      DISCS.map(([d, t]) => discOf(d, t)),
      input,
    ),
    smallest(
      'BLOCKS',
      BLOCKS.map(([w, h, t]) => blockOf(w, h, t)),
      input,
    ),
    steelOnFrame(input),
    ...input.fasteners.map((item) => otherFastener(item, input)),
  ];
  return [
    ...(known ? [{ code: 'CATALOGUE_PAIR' as const, choice: known }] : []),
    ...sizes.filter((answer) => answer !== null),
  ];
}

const listed = { supplier: '', grade: GRADE, pack: { quantity: 1, price: 0 } };
const discOf = (diameter: number, thickness: number): Magnet => ({
  id: `disc-${diameter}x${thickness}`,
  name: `${diameter} × ${thickness} mm`,
  shape: { kind: 'disc', diameter, thickness },
  ...listed,
});
const blockOf = (width: number, height: number, thickness: number): Magnet => ({
  id: `block-${width}x${height}x${thickness}`,
  name: `${width} × ${height} × ${thickness} mm`,
  shape: { kind: 'block', width, height, thickness },
  ...listed,
});

/** The first size, in its smallest pocket, that meets the margin with both magnets alike. */
function smallest(
  code: 'LARGER_DISCS' | 'BLOCKS',
  magnets: readonly Magnet[],
  input: ThickGlassInput,
): ThickGlassAnswer | null {
  for (const magnet of magnets) {
    const pocket = pocketFor(magnet, input);
    if (!pocket) continue;
    const one = { ...input.choice, magnets: [magnet], steel: [], pockets: pocket.pockets };
    const { weightOf } = one;
    const heavy: Partial<ChoiceInput> = weightOf
      ? { weightOf: (points, outside) => weightOf(points, outside, pocket.size) }
      : {};
    const choice = bestChoice({ ...one, ...heavy, placing: { ...one.placing, apart: pocket.size } });
    if (choice) return { code, magnet, choice, pocket: pocket.size, touching: touchingOf(magnet) };
  }
  return null;
}

function pocketFor(magnet: Magnet, { pocketOf, mostPocket }: ThickGlassInput) {
  const face = faceOf(magnet);
  for (let size = LEAST_POCKET; size <= mostPocket; size += POCKET_STEP) {
    const pockets = pocketOf(size);
    if (pockets?.every((pocket) => meeting({ ...pocket, outside: face, inside: face }).ok))
      return { size, pockets };
  }
  return null;
}

function touchingOf(magnet: Magnet): number {
  const grade = magnetGrade(magnet.grade);
  if (!grade.ok) throw new Error(`${magnet.grade} is not a grade`);
  const remanence = grade.value.remanence.high;
  const body = bodyOf(magnet);
  const pull = contactPull(
    { a: body, b: body, remanenceA: remanence, remanenceB: remanence, gap: CONTACT_GAP },
    CONTACT_GAP,
  );
  if (!pull.ok) throw new Error(pull.refusal.code);
  return pull.value;
}

/** The panel's layout with one strength all round, and its low margin with the weight of its magnets, if any. */
function held(
  strength: Strength,
  { choice }: ThickGlassInput,
  { spacing, upTo }: { readonly spacing: number; readonly upTo: number },
  reach: number,
  outside: Magnet | null,
) {
  const { points } = placing({ ...choice.placing, reach, spacing, upTo });
  const margin = lowMarginFor(
    points.map(({ kind, centre }, k) => ({ number: k + 1, kind, ...choice.inOpening(centre), strength })),
    choice,
    outside,
  );
  return { points: points.length, margin };
}

const meets = (margin: number | 'unloaded', asked: number): boolean =>
  margin === 'unloaded' || margin >= asked;

/** Layouts up to so many times denser than the shop's spacing are tried on a strip. */
const DENSEST = 4;

/** The catalogue magnet that holds on a strip beside the glass with the fewest points, then the least pull. */
function steelOnFrame(input: ThickGlassInput): ThickGlassAnswer | null {
  const { choice, frameGap } = input;
  const { hottest, friction } = choice;
  const answers = choice.magnets.flatMap((magnet) => {
    // The thinnest strip that is not full of the magnet's flux.
    for (const steel of FRAME_STRIPS) {
      const found = steelStrength({ outside: magnet, steel, gap: frameGap, hottest, friction });
      if (!found.ok) continue;
      const best = fewestOnStrip(found.value, input, magnet);
      const pull: number = found.value.pull.low;
      const answer = { code: 'STEEL_ON_FRAME', magnet: magnet.id, steel, gap: frameGap } as const;
      return best ? [{ ...answer, ...best, pull }] : [];
    }
    return [];
  });
  return answers.sort((a, b) => a.points - b.points || a.pull - b.pull)[0] ?? null;
}

function fewestOnStrip(strength: Strength, input: ThickGlassInput, magnet: Magnet) {
  const { spacing, upTo } = input.choice.placing;
  for (let dense = 1; dense <= DENSEST; dense++) {
    const gaps = { spacing: spacing / dense, upTo: upTo / dense };
    const one = held(strength, input, gaps, strength.face / 2, magnet);
    if (meets(one.margin, input.choice.asked)) return one;
  }
  return null;
}

function otherFastener(item: Fastener, input: ThickGlassInput): ThickGlassAnswer | null {
  const found = fastenerStrength(item, item.spacing);
  const base = { fastener: item.id };
  if (!found.ok) return { code: 'FASTENER_TO_BE_TRIED', ...base, pullNeeded: pullNeeded(item, input) };
  const { points, margin } = held(found.value, input, gapsOf(item), item.face / 2, null);
  if (!meets(margin, input.choice.asked)) return null;
  return { code: 'OTHER_FASTENER', ...base, points, pull: found.value.pull.low, margin };
}

const gapsOf = ({ spacing }: Fastener) => ({ spacing, upTo: spacing });

/** Pull, with as much along the surface, that would just meet the margin at the fastener's own spacing, N. */
function pullNeeded(item: Fastener, input: ThickGlassInput): number {
  // Hook and loop is told by the millimetre of its length.
  const length = item.kind === 'hookAndLoop' ? (item.laid === 'pads' ? item.length : item.spacing) : 1;
  const enough = (pull: number) => {
    const ends = { low: pull / length, high: pull / length };
    const strength = { by: 'shop', pull: ends, along: ends, tested: '' } as const;
    const found = fastenerStrength({ ...item, strength }, item.spacing);
    if (!found.ok) throw new Error(found.refusal.code);
    const { margin } = held(found.value, input, gapsOf(item), item.face / 2, null);
    return meets(margin, input.choice.asked);
  };
  let high = 1;
  while (high < 4000 && !enough(high)) high *= 2;
  let low = 0;
  while (high - low > 0.01 * high) {
    const middle = (low + high) / 2;
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}
