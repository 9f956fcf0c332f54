/** An answer, or a refusal that says by code and numbers why there is none. Faults of ours throw instead. */
export type Result<T, R extends { readonly code: string }> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: R };

export const ok = <T>(value: T) => ({ ok: true, value }) as const;
export const refuse = <const R extends { readonly code: string }>(refusal: R) =>
  ({ ok: false, refusal }) as const;
