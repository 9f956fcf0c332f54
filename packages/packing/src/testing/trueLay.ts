import { type Instance, type Layout, pack, verifyLay } from '@panewright/packing';
import { expect } from 'vitest';

/** The lay that `pack` gives, once the checker that shares no code with it has found it true. */
export function trueLay(instance: Instance, budget: number, seed = 1): Layout {
  const result = pack(instance, budget, seed);
  if (!result.ok) throw new Error(result.refusal.code);
  expect(verifyLay(instance, result.value)).toEqual({ ok: true, value: result.value });
  return result.value;
}
