/**
 * Where a number came from, so that a person can trace it.
 * `measured`: from a reading; `chosen`: set in the job; `catalogue`: from the shop's catalogue; `computed`: worked out from
 * the inputs named; `estimate`: worked out, but never measured; `custom`: common practice of the trade, no source.
 */
export interface Origin {
  readonly status: 'measured' | 'chosen' | 'catalogue' | 'computed' | 'estimate' | 'custom';
  /** How it was worked out, as a code the doors have words for. */
  readonly by: OriginCode;
  /** Document paths or plan items it was worked out from, e.g. `openings.W1`, `catalogue.bindings.b22`. */
  readonly inputs: readonly string[];
  /** Key in docs/sources.md, where a published formula or table is behind it. */
  readonly source?: string;
}

export type OriginCode =
  | 'leastSquares'
  | 'acceptedOutline'
  | 'offset'
  | 'outlineLength'
  | 'outlineArea'
  | 'bindingLength'
  | 'hemWidth'
  | 'equalGaps'
  | 'stackSum'
  | 'pairForce'
  | 'holdMargin'
  | 'massPerArea'
  | 'lay'
  | 'stripCut'
  | 'count'
  | 'threadLength'
  | 'wrapSize'
  | 'tapeLength'
  | 'stripLength'
  | 'wholePacks'
  | 'standardMinutes'
  | 'jobCost'
  | 'markup'
  | 'tax';

export type FigureUnit = 'mm' | 'mm2' | 'count' | 'min' | 'money' | 'N' | 'g' | 'ratio' | 'm/s';

/** A number a person will act on, with its unit, its spread where known, and its origin. */
export interface Figure {
  readonly value: number;
  readonly unit: FigureUnit;
  /** Standard deviation, in the same unit. */
  readonly sigma?: number;
  readonly from: Origin;
}

export const figure = (
  value: number,
  unit: FigureUnit,
  status: Origin['status'],
  by: OriginCode,
  inputs: readonly string[],
  more: { readonly source?: string; readonly sigma?: number } = {},
): Figure => ({
  value,
  unit,
  ...(more.sigma === undefined ? {} : { sigma: more.sigma }),
  from: { status, by, inputs, ...(more.source === undefined ? {} : { source: more.source }) },
});
