/**
 * Two points nearer than this are one point, in millimetres. A thousandth of what a cutter resolves, and a
 * million times the rounding error of a coordinate of some metres.
 */
export const SAME_POINT = 1e-6;

/** An arc that rises less than this above its chord is treated as its chord where curves are crossed, in mm. */
export const FLAT_RISE = 1e-5;

/** Two directions that differ by less than this, in radians, meet without a corner. */
export const TANGENT = 1e-6;

/**
 * Two directions that differ by less than this, in radians, are taken as meant to be one: coordinates rounded to
 * 0.001 mm turn the ends of a 5 mm arc by about 2e-4.
 */
export const MEANT_SMOOTH = 1e-3;

/** A gap that a smooth joint leaves after an offset is closed at its middle when it is no wider than this, in mm. */
export const SMOOTH_GAP = 2e-3;
