import {
  type MetrePerSecond,
  type Millimetre,
  MM_PER_INCH,
  metrePerSecond,
  mm,
  type Newton,
  newton,
  type Pascal,
  pascal,
  type Quantity,
} from './quantity.ts';

/** Mass of cloth by area. */
export type GramPerSquareMetre = Quantity<'g/m2'>;
/** Force along a line: seam strength, edge load. */
export type NewtonPerMetre = Quantity<'N/m'>;

const GRAM_PER_POUND = 453.59237;
const GRAM_PER_OUNCE = GRAM_PER_POUND / 16;
const SQUARE_METRE_PER_SQUARE_YARD = 0.9144 ** 2;
const NEWTON_PER_POUND_FORCE = (GRAM_PER_POUND / 1000) * 9.80665;

/** Inches to mm. @accuracy exact by definition @source sources.md#nist-sp811 */
export const fromInches = (inches: number): Millimetre => mm(inches * MM_PER_INCH);
/** mm to inches, unrounded. @source sources.md#nist-sp811 */
export const toInches = (length: Millimetre): number => length / MM_PER_INCH;
/** Yards to mm. @accuracy exact by definition @source sources.md#nist-sp811 */
export const fromYards = (yards: number): Millimetre => mm(yards * 914.4);
/** mm to yards, unrounded. @source sources.md#nist-sp811 */
export const toYards = (length: Millimetre): number => length / 914.4;
/** Ounces per square yard to g/m². @source sources.md#nist-sp811 */
export const fromOuncesPerSquareYard = (ounces: number): GramPerSquareMetre =>
  ((ounces * GRAM_PER_OUNCE) / SQUARE_METRE_PER_SQUARE_YARD) as GramPerSquareMetre;
/** g/m² to ounces per square yard. @source sources.md#nist-sp811 */
export const toOuncesPerSquareYard = (mass: GramPerSquareMetre): number =>
  (mass * SQUARE_METRE_PER_SQUARE_YARD) / GRAM_PER_OUNCE;
/** Pounds-force to newtons. @source sources.md#nist-sp811 */
export const fromPoundsForce = (pounds: number): Newton => newton(pounds * NEWTON_PER_POUND_FORCE);
/** Newtons to pounds-force. @source sources.md#nist-sp811 */
export const toPoundsForce = (force: Newton): number => force / NEWTON_PER_POUND_FORCE;
/** Pounds-force per inch to N/m. @source sources.md#nist-sp811 */
export const fromPoundsForcePerInch = (pounds: number): NewtonPerMetre =>
  ((pounds * NEWTON_PER_POUND_FORCE) / 0.0254) as NewtonPerMetre;
/** Pounds per square foot to Pa. @source sources.md#nist-sp811 */
export const fromPoundsPerSquareFoot = (pounds: number): Pascal =>
  pascal((pounds * NEWTON_PER_POUND_FORCE) / 0.3048 ** 2);
/** Miles per hour to m/s. @accuracy exact by definition @source sources.md#nist-sp811 */
export const fromMilesPerHour = (miles: number): MetrePerSecond => metrePerSecond(miles * 0.44704);
/** m/s to miles per hour. @source sources.md#nist-sp811 */
export const toMilesPerHour = (speed: MetrePerSecond): number => speed / 0.44704;
/** Knots to m/s: one nautical mile of 1852 m in an hour. @source sources.md#nist-sp811 */
export const fromKnots = (knots: number): MetrePerSecond => metrePerSecond((knots * 1852) / 3600);
/** m/s to knots. @source sources.md#nist-sp811 */
export const toKnots = (speed: MetrePerSecond): number => (speed * 3600) / 1852;
