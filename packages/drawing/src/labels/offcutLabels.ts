import type { Catalogue, Offcut } from '@panewright/design';
import { ok, type Result } from '@panewright/quantity';
import { sizeText } from '../figures.ts';
import type { SheetOptions } from '../options.ts';
import type { Sheet } from '../sheet.ts';
import { catalogueName } from '../words/catalogueNames.ts';
import { wordsOf } from '../wordsOf.ts';
import { type LabelContent, type LabelOptions, type LabelRefusal, labelPages } from './labelPages.ts';
import { qrCode } from './qrCode.ts';

/** What is asked of the sheets besides the offcuts. */
export type OffcutLabelOptions = Pick<SheetOptions, 'units' | 'metrics' | 'language' | 'words'>;

/**
 * A label for each offcut kept in stock: name, size, cloth, where it lies, what it was left by and when. The code holds
 * the same in lines of text, the offcut's id last, so that a phone reads it without a network.
 *
 * @refuses LABEL_START_OUT_OF_RANGE, LABEL_COPIES_OUT_OF_RANGE, LABEL_TOO_SMALL_FOR_CODE
 */
export function offcutLabels(
  offcuts: readonly Offcut[],
  { fabrics }: Pick<Catalogue, 'fabrics'>,
  options: OffcutLabelOptions,
  label: Omit<LabelOptions, 'kind' | 'link'>,
): Result<Sheet, LabelRefusal> {
  const words = wordsOf(options);
  const contents = offcuts.map((offcut): LabelContent => {
    const { name, fabric, along, across, place, from, batch = '' } = offcut;
    const named = fabrics.find(({ id }) => id === fabric)?.name ?? fabric;
    const cloth = catalogueName(named, options.language ?? 'en');
    const size = words.label.alongAcross(sizeText(along, across, options.units));
    const lines = [
      size,
      cloth,
      batch === '' ? '' : words.label.batch(batch),
      place,
      [from.jobName, from.date].filter((one) => one !== '').join(', '),
    ].filter((one) => one.trim() !== '');
    return { name, lines, code: qrCode([name, size, cloth, offcut.id].join('\n')) };
  });
  const pages = labelPages(contents, options.metrics, { ...label, kind: 'shelf' });
  if (!pages.ok) return pages;
  return ok({ path: 'offcut-labels', title: words.label.offcuts(), symbols: {}, pages: pages.value });
}
