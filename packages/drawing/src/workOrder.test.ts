import { expect, test } from 'vitest';
import { type Item, type TextItem, workOrder } from './index.ts';
import { inputFor, smallJob } from './testing/jobs.ts';

const textsOf = (items: readonly Item[]): readonly TextItem[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item] : item.kind === 'group' ? textsOf(item.items) : []));

test('the work order has a front page and a page for each pattern, with every caution whole on the front', () => {
  const bound = inputFor({ ...smallJob(), openings: smallJob().openings.slice(0, 2) });
  for (const paper of ['a4', 'letter'] as const)
    for (const language of ['en', 'de', 'es'] as const) {
      const order = workOrder({ ...bound, options: { ...bound.options, paper, language } });
      expect({ paper, language, pages: order.pages.length }).toEqual({
        ...{ paper, language, pages: 1 + bound.plan.patterns.length },
      });
    }
  const [front, page] = workOrder(bound).pages.map(({ items }) => textsOf(items).map(({ text }) => text));
  expect(front!.join(' ')).toContain('Two swallowed magnets can kill.');
  expect(page!.join(' ')).not.toContain('Two swallowed magnets');
  // Each step where a hand is at magnets or a hot knife says so in short and names the caution on the front.
  const number = front![front!.findIndex((text) => text.startsWith('MAGNETS_PINCH')) - 1];
  const short = page!.filter((text) => text.startsWith('Magnets pinch') && text.endsWith(`no. ${number}.`));
  expect(short).toHaveLength(2);
  for (const step of ['Put in ', 'Prepare ']) {
    const from = page!.findIndex((text) => text.startsWith(step));
    const next = page!.findIndex((text, index) => index > from && text === 'min');
    const until = page!.findIndex((text, index) => index > next && text === 'min');
    expect(page!.slice(from, until).some((text) => text.startsWith('Magnets pinch'))).toBe(true);
  }
  expect(page!.some((text) => text.startsWith('Hot knife: acid fumes'))).toBe(true);
});
