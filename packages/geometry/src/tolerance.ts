/**
 * Two points nearer than this are one point, in millimetres. A thousandth of what a cutter resolves, and a
 * million times the rounding error of a coordinate of some metres.
 */
export const SAME_POINT = 1e-6;

/** An arc that rises less than this above its chord is treated as its chord where curves are crossed, in mm. */
export const FLAT_RISE = 1e-5;

/** Two directions that differ by less than this, in radians, meet without a corner. */
export const TANGENT = 1e-6;
