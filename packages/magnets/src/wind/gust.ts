import { type Millimetre, mm, ok, type Quantity, type Result, refuse } from '@panewright/quantity';

export type Second = Quantity<'s'>;

/** A gust of so many seconds, against a mean over so many, at a height over ground of a roughness. */
export interface GustSite {
  /** Standard deviation over mean speed, a true ratio: about 0.25 in land, 0.20 off land, 0.15 off sea, 0.10 at sea. */
  readonly turbulence: number;
  readonly gust: Second;
  readonly mean: Second;
  readonly height: Millimetre;
}

export type GustRefusal = {
  readonly code: 'GUST_OUT_OF_RANGE';
  readonly figure: 'turbulence' | 'gust' | 'mean' | 'height';
  readonly value: number;
  readonly least: number;
  readonly most: number;
};

const RANGES = {
  turbulence: [0.05, 0.4],
  gust: [1, 60],
  mean: [60, 3600],
  height: [2000, 100_000],
} as const;

/**
 * Gust factor: the highest gust in the averaging time over the mean. A forecast or Beaufort value is a mean:
 * multiply it by this, then square for the pressure.
 *
 * @returns a true ratio, 1 or more
 * @range turbulence 0.05-0.4, gust 1-60 s, mean 60-3600 s, height 2-100 m
 * @accuracy within 0.01 of the table in the guideline as recalled
 * @refuses GUST_OUT_OF_RANGE
 * @source sources.md#wmo-td-1555
 */
export function gustFactor(site: GustSite): Result<number, GustRefusal> {
  for (const figure of ['turbulence', 'gust', 'mean', 'height'] as const) {
    const [least, most] = RANGES[figure];
    const value: number = site[figure];
    if (!(value >= least && value <= most))
      return refuse({ code: 'GUST_OUT_OF_RANGE', figure, value, least, most });
  }
  const Tu = 3.13 * (site.height / 1000) ** 0.2;
  const ratio = Tu / site.gust;
  const nu = (0.007 + 0.213 * ratio ** 0.654) / Tu;
  const filtered = 1 - 0.193 * (ratio + 0.1) ** -0.68;
  const a = Math.sqrt(2 * Math.log(3600 * nu));
  const hourly = 1 + (a + 0.577 / a) * filtered * site.turbulence;
  const reference = 0.2193 * Math.log(Math.log10(site.mean)) + 0.7242;
  return ok(Math.max(1, hourly * reference));
}

/** A 3-second gust over a 10-minute mean, 10 m up. */
export const usualGust = (turbulence: number): GustSite => ({
  turbulence,
  gust: 3 as Second,
  mean: 600 as Second,
  height: mm(10_000) as Millimetre,
});
