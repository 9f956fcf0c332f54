import { parseLength } from '@panewright/quantity';
import type { z } from 'zod';
import { isZero } from './isZero.ts';
import { lengthBetween, requiredLabel, unitName } from './primitives.ts';

export const entered = requiredLabel(40).describe('as read off the tape, e.g. 24 3/8');
export const unit = unitName.describe('the unit meant where the entry names none');
export const sigma = lengthBetween(0.05, 50).optional().describe('standard deviation of this reading, mm');

/** Says what is wrong with an entry that is no length, at the entry. */
export function mustBeLength(
  value: { readonly entered: string; readonly unit: 'in' | 'mm' },
  context: z.RefinementCtx,
  mayBeZero: boolean,
): void {
  const length = parseLength(value.entered, value.unit);
  if (!length.ok && !(mayBeZero && isZero(value.entered)))
    context.addIssue({
      code: 'custom',
      path: ['entered'],
      message: `“${value.entered}” is not a length`,
      params: { refusal: length.refusal },
    });
}
