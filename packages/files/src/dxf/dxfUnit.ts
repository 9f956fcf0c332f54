import { ok, type Result, refuse } from '@panewright/quantity';
import type { FileRefusal, FileUnit } from '../fileRefusal.ts';

/** $INSUNITS. @source sources.md#dxf-reference */
const BY_CODE: ReadonlyMap<number, FileUnit> = new Map([
  [1, 'in'],
  [2, 'ft'],
  [4, 'mm'],
  [5, 'cm'],
  [6, 'm'],
  [10, 'yd'],
  [14, 'dm'],
]);

const BY_WORD: readonly (readonly [RegExp, FileUnit])[] = [
  [/^(?:mm|millimet(?:re|er)s?)\b/, 'mm'],
  [/^(?:cm|centimet(?:re|er)s?)\b/, 'cm'],
  [/^(?:m|met(?:re|er)s?)\b/, 'm'],
  [/^(?:in|inch(?:es)?)\b/, 'in'],
  [/^(?:ft|feet|foot)\b/, 'ft'],
];

const METRIC: readonly FileUnit[] = ['mm', 'cm', 'm'];
const IMPERIAL: readonly FileUnit[] = ['in', 'ft'];

export interface StatedUnit {
  readonly unit: FileUnit | undefined;
  readonly offered: readonly FileUnit[];
}

/**
 * The unit a DXF file states: by $INSUNITS, else by a comment `units: millimetres` at its head. $MEASUREMENT says only
 * whether the drawing is metric, so it orders what is offered and decides nothing.
 *
 * @refuses UNIT_NOT_READ for a unit such as a mile, or a number that stands for none
 */
export function dxfUnit(
  header: ReadonlyMap<string, string>,
  comments: readonly string[],
): Result<StatedUnit, FileRefusal> {
  const measurement = header.get('$MEASUREMENT');
  const offered = measurement === '0' ? [...IMPERIAL, ...METRIC] : [...METRIC, ...IMPERIAL];
  const stated = header.get('$INSUNITS');
  if (stated !== undefined && !/^\s*0\s*$/.test(stated)) {
    const unit = BY_CODE.get(Number(stated));
    return unit
      ? ok({ unit, offered })
      : refuse({ code: 'UNIT_NOT_READ', stated: `$INSUNITS ${stated.slice(0, 20)}` });
  }
  const said = comments.flatMap(
    (comment) => /^units?\s*[:=]\s*(.*)$/i.exec(comment)?.[1]?.toLowerCase() ?? [],
  );
  const words = said.flatMap((word) =>
    BY_WORD.filter(([pattern]) => pattern.test(word)).map(([, unit]) => unit),
  );
  return ok({ unit: words[0], offered });
}
