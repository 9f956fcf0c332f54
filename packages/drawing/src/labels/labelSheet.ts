import { ok, type Result } from '@panewright/quantity';
import { dateText } from '../figures.ts';
import { inLanguage } from '../inLanguage.ts';
import type { SheetInput } from '../options.ts';
import type { Sheet } from '../sheet.ts';
import { wordsOf } from '../wordsOf.ts';
import { type LabelContent, type LabelOptions, type LabelRefusal, labelPages } from './labelPages.ts';
import { qrCode } from './qrCode.ts';

/**
 * Labels for every panel of the job on sheets of labels, each with a QR code.
 *
 * @returns a sheet; one without pages where the job has no panel yet
 * @refuses LABEL_START_OUT_OF_RANGE, LABEL_COPIES_OUT_OF_RANGE, LABEL_TOO_SMALL_FOR_CODE
 */
export function labelSheet(asked: SheetInput, options: LabelOptions): Result<Sheet, LabelRefusal> {
  const input = inLanguage(asked);
  const { kind } = options;
  const pages = labelPages(contents(input, options), input.options.metrics, options);
  if (!pages.ok) return pages;
  const title = wordsOf(input.options).label.title(kind);
  return ok({
    path: `labels-${kind}`,
    title: `${title}: ${input.job.name}`,
    symbols: {},
    pages: pages.value,
  });
}

/** What each label says, opening by opening. */
function contents(input: SheetInput, { link }: LabelOptions): readonly LabelContent[] {
  const { plan, job, options } = input;
  const words = wordsOf(options);
  return plan.openings.flatMap((opening): LabelContent[] => {
    const pattern = plan.patterns.find(({ members }) =>
      members.some((one) => one.opening === opening.opening),
    );
    const member = pattern?.members.find((one) => one.opening === opening.opening);
    if (!pattern || !member || !plan.panels.some((one) => one.pattern === pattern.pattern)) return [];
    const panel = { job: job.id, opening: opening.opening, revision: options.revision };
    return [
      {
        name: opening.name,
        lines: [
          words.label.panel(pattern.pattern, member.turnedOver),
          opening.place,
          job.name,
          words.page.made(dateText(options.date, options.language), options.revision),
          input.catalogue.shop.name,
        ].filter((one) => one.trim() !== ''),
        code: qrCode(link?.(panel) ?? Object.values(panel).join('\n')),
      },
    ];
  });
}
