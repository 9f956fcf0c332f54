declare const unit: unique symbol;

/** A number that carries its unit in its type. At run time it is the bare number. */
export type Quantity<U extends string> = number & { readonly [unit]: U };

export type Millimetre = Quantity<'mm'>;
export type SquareMillimetre = Quantity<'mm2'>;
export type Radian = Quantity<'rad'>;
export type Tesla = Quantity<'T'>;
export type Newton = Quantity<'N'>;
export type Pascal = Quantity<'Pa'>;
export type Gram = Quantity<'g'>;
export type Minute = Quantity<'min'>;
export type Celsius = Quantity<'C'>;
export type MetrePerSecond = Quantity<'m/s'>;
/** Integer minor units of the catalogue's currency (cents). */
export type Money = Quantity<'money'>;

/** These state a unit and check nothing. Foreign numbers are parsed once, at the document's schema. */
export const mm = (value: number) => value as Millimetre;
export const mm2 = (value: number) => value as SquareMillimetre;
export const radian = (value: number) => value as Radian;
export const tesla = (value: number) => value as Tesla;
export const newton = (value: number) => value as Newton;
export const pascal = (value: number) => value as Pascal;
export const gram = (value: number) => value as Gram;
export const minute = (value: number) => value as Minute;
export const celsius = (value: number) => value as Celsius;
export const metrePerSecond = (value: number) => value as MetrePerSecond;
export const money = (value: number) => value as Money;

/** One international inch, exactly (1959 agreement; sources.md#nist-sp811). */
export const MM_PER_INCH = 25.4;
