import { mirrorAbout, movePoint, type Point } from '@panewright/geometry';
import type { PoleOut } from '@panewright/magnets';
import type { PolePlan } from './poles.ts';

/** One thing to do, in order; the sheet has the words. A dot is a spot of paint on one face. */
export type MarkingStep =
  /** Dot either face of one magnet: it tests all the others. */
  | { readonly code: 'DOT_TEST_MAGNET' }
  /** Let the rest draw onto its dotted face in one stack; all now face one way. Dot the free face of each as it comes off. */
  | { readonly code: 'STACK_AND_DOT'; readonly magnets: number }
  /** Wrap and sew in so that the dot shows on the face away from the glass, or lies against it. */
  | { readonly code: 'SEW_IN'; readonly point: number; readonly dot: 'out' | 'toGlass' }
  /** Fix inside so that the dot shows to the room, or lies against the glass. */
  | { readonly code: 'FIX_INSIDE'; readonly point: number; readonly dot: 'toRoom' | 'toGlass' }
  /** Before sewing shut: hold each inside magnet to its pocket; it must draw. */
  | { readonly code: 'CHECK_DRAWS'; readonly point: number };

export interface SheetPoint {
  readonly point: number;
  readonly at: Point;
  /** Pole on the face that is seen from this side. */
  readonly pole: PoleOut;
  readonly dot: boolean;
}

export interface MarkingPlan {
  readonly steps: readonly MarkingStep[];
  /** As seen from outside, in the opening's frame: the panel's magnets. */
  readonly outside: readonly SheetPoint[];
  /** As seen from inside, left for right: the inside magnets. */
  readonly inside: readonly SheetPoint[];
}

/**
 * How to mark magnets with one test magnet and no meter. The dot is on the pole the first point of the panel has outside.
 *
 * @param centres in the opening's frame, seen from outside
 * @param middle x of the upright line the inside view is mirrored about, mm
 * @source unlike poles draw together, so in a stack all like faces look one way
 */
export function markingPlan(centres: readonly Point[], poles: PolePlan, middle: number): MarkingPlan {
  const dotted = poles.panelOut[0];
  const mirror = mirrorAbout(middle);
  const steps: MarkingStep[] = [
    { code: 'DOT_TEST_MAGNET' },
    { code: 'STACK_AND_DOT', magnets: 2 * centres.length },
    ...poles.panelOut.map(
      (pole, k): MarkingStep => ({
        code: 'SEW_IN',
        point: k + 1,
        dot: pole === dotted ? 'out' : 'toGlass',
      }),
    ),
    ...poles.insideOut.map(
      (pole, k): MarkingStep => ({
        code: 'FIX_INSIDE',
        point: k + 1,
        dot: pole === dotted ? 'toRoom' : 'toGlass',
      }),
    ),
    ...centres.map((_, k): MarkingStep => ({ code: 'CHECK_DRAWS', point: k + 1 })),
  ];
  const sheet = (faces: readonly PoleOut[], at: (p: Point) => Point) =>
    centres.map((centre, k) => ({
      point: k + 1,
      at: at(centre),
      pole: faces[k]!,
      dot: faces[k] === dotted,
    }));
  return {
    steps,
    outside: sheet(poles.panelOut, (p) => p),
    inside: sheet(poles.insideOut, (p) => movePoint(mirror, p)),
  };
}

export type SheetFault =
  | { readonly code: 'PAIR_REPELS'; readonly point: number }
  | { readonly code: 'SHEETS_DISAGREE'; readonly point: number; readonly apart: number };

/**
 * Whether the two sheets tell of the same pairs: laid back to back each inside magnet falls behind its panel's, with unlike
 * poles facing through the glass.
 *
 * @returns what is wrong, empty where nothing is
 * @source mirror images; unlike poles draw together
 */
export function checkSheets({ outside, inside }: MarkingPlan, middle: number): readonly SheetFault[] {
  const mirror = mirrorAbout(middle);
  return outside.flatMap((point): SheetFault[] => {
    const behind = inside.find((other) => other.point === point.point);
    const back = behind && movePoint(mirror, behind.at);
    const apart = back ? Math.hypot(back.x - point.at.x, back.y - point.at.y) : Number.POSITIVE_INFINITY;
    if (apart > 1e-6) return [{ code: 'SHEETS_DISAGREE', point: point.point, apart }];
    // Each is seen by the face away from the glass: alike there means alike through the glass.
    return behind!.pole === point.pole ? [{ code: 'PAIR_REPELS', point: point.point }] : [];
  });
}
