import {
  effectiveRemanence,
  magnetGrade,
  remanenceAt,
  type SteelRefusal,
  steelPull,
  USUAL_COATING,
  USUAL_TOLERANCES,
} from '@panewright/magnets';
import { celsius, mm, newton, ok, type Result, refuse, type Tesla } from '@panewright/quantity';
import type { Magnet } from '../document/catalogue.ts';
import { bodyOf } from './holdOpening.ts';
import type { Range, Strength, StrengthRefusal } from './margins.ts';

/** A flat steel strip a magnet is drawn to, across the glass or on the frame beside it. */
export interface SteelItem {
  readonly id: string;
  /** mm */
  readonly width: number;
  readonly thickness: number;
  /** In minor units, for one metre. */
  readonly pricePerMetre: number;
}

/** A magnet across a gap from steel, hot. */
export interface MagnetAcrossSteel {
  readonly outside: Magnet;
  readonly steel: SteelItem;
  readonly gap: number;
  readonly hottest: number;
  readonly friction: Range;
}

/** A strip no wider than its magnet gathers less than a wide plate; one twice as wide about as much (estimate). */
const NARROW_SHARE = 0.5;

/**
 * Strength of a magnet drawn to a steel strip: the wide plate's pull with its tolerances set against it at the low end, and
 * less for a narrow strip. Along the strip nothing draws it back, so only friction holds.
 *
 * @returns newtons
 * @accuracy an estimate: the pull of a wide plate is the most a strip can do
 * @refuses GRADE_UNKNOWN, PULL_REFUSED (with the steel's own refusal by code)
 * @source sources.md#steel-strip-share, as steelPull
 */
export function steelStrength(across: MagnetAcrossSteel): Result<Strength, StrengthRefusal> {
  const grade = magnetGrade(across.outside.grade);
  if (!grade.ok)
    return refuse({ code: 'GRADE_UNKNOWN', magnet: across.outside.id, grade: across.outside.grade });
  const pulls = [-1, 0, 1].map((end) => pullAt(across, grade.value.remanence.design, end));
  for (const pull of pulls)
    if (!pull.ok) return refuse({ code: 'PULL_REFUSED', gap: across.gap, refusal: pull.refusal.code });
  const [low, nominal, high] = pulls.map((pull) => (pull.ok ? pull.value : 0)) as [number, number, number];
  const { shape } = across.outside;
  const face = shape.kind === 'disc' ? shape.diameter : Math.min(shape.width, shape.height);
  const share = Math.min(1, NARROW_SHARE * (across.steel.width / face));
  return ok({
    pull: {
      nominal: newton(nominal * (share + 1) * 0.5),
      low: newton(low * share),
      high: newton(high),
      sources: [],
    },
    breakAway: {
      low: newton(low * share * across.friction.low),
      high: newton(high * across.friction.high),
    },
    face: mm(face),
    friction: across.friction,
  });
}

/** With the gap and the remanence at the bad end (-1), as stated (0) or at the good end (1). */
function pullAt(
  { outside, steel, gap, hottest }: MagnetAcrossSteel,
  remanence: Tesla,
  end: number,
): Result<number, SteelRefusal> {
  const body = bodyOf(outside);
  const hot = remanenceAt(remanence, celsius(hottest));
  const kept = effectiveRemanence(body, hot) * (1 + end * USUAL_TOLERANCES.remanence);
  const pull = steelPull({
    magnet: body,
    remanence: kept as Tesla,
    gap: mm(gap + USUAL_COATING - end * USUAL_TOLERANCES.gap),
    strip: { thickness: mm(steel.thickness), width: mm(steel.width) },
  });
  return pull.ok ? ok(pull.value.most) : pull;
}
