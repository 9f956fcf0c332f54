import { ok, type Pascal, pascal, type Result, refuse } from '@panewright/quantity';
import { screenLossRange } from './screenLoss.ts';

/** Where on the glass: local suction is stronger at corners. */
export type PanelZone = 'field' | 'corner';

export interface LoadRange {
  readonly low: Pascal;
  readonly high: Pascal;
}

export type LoadRefusal =
  | {
      readonly code: 'OPENNESS_OUT_OF_RANGE';
      readonly openFraction: number;
      readonly least: number;
      readonly most: number;
    }
  | { readonly code: 'PRESSURE_NEGATIVE'; readonly pressure: Pascal };

/** A dense screen may drag more than a plate of its size, so up to here openness earns nothing. */
export const NO_DISCOUNT_UP_TO = 0.1;
/** Suction at a corner against the field of the pane. */
const CORNER = 1.4;

/** Drag of a free porous panel on its whole area; past K = 4, where the formula falls, held at the solid value. */
const porousDrag = (loss: number) => (loss >= 4 ? 1 : loss / (1 + loss / 4) ** 2);

/**
 * Load that lifts a screen off its pane, per area of the whole panel: dynamic pressure times a coefficient of 1,
 * up to 1.4 at a corner. A free panel more than 10 % open earns a discount by its loss coefficient; a denser
 * one earns none.
 *
 * @param openFraction open area over all, 0 to 0.8
 * @param pressure dynamic pressure of the gust
 * @returns Pa, low and high
 * @accuracy an estimate: no measured load of a mesh on a sealed pane was found. Test one screen by fan or drive.
 * @refuses OPENNESS_OUT_OF_RANGE, PRESSURE_NEGATIVE
 * @source sources.md#taylor-1944, #marchand-2024, #screen-on-pane
 */
export function screenLoad(
  openFraction: number,
  pressure: Pascal,
  zone: PanelZone,
): Result<LoadRange, LoadRefusal> {
  if (!(openFraction >= 0 && openFraction <= 0.8)) {
    return refuse({ code: 'OPENNESS_OUT_OF_RANGE', openFraction, least: 0, most: 0.8 });
  }
  if (!(pressure >= 0 && Number.isFinite(pressure))) return refuse({ code: 'PRESSURE_NEGATIVE', pressure });
  let low = 1;
  let high = 1;
  if (openFraction > NO_DISCOUNT_UP_TO) {
    const loss = screenLossRange(openFraction);
    if (!loss.ok) throw new Error(`an openness of ${openFraction} passed one check and not the other`);
    low = porousDrag(loss.value.low);
    high = porousDrag(loss.value.high);
  }
  return ok({
    low: pascal(low * pressure),
    high: pascal(high * pressure * (zone === 'corner' ? CORNER : 1)),
  });
}
