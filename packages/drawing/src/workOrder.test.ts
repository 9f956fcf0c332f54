import { type Catalogue, defaultCatalogue, derive, type Job } from '@panewright/design';
import { expect, test } from 'vitest';
import { type Item, laySheet, type TextItem, workOrder } from './index.ts';
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

test('where pieces are kept together or lie one way, the work order and the lay say so, and else do not', () => {
  const look = inputFor({ ...smallJob(), openings: [] });
  const said = (job: Job, offcuts: Catalogue['offcuts'] = []) => {
    const catalogue = { ...defaultCatalogue, offcuts };
    const input = { ...look, job, catalogue, plan: derive(job, catalogue, 1, 300) };
    const all = [workOrder(input).pages[0]!, laySheet(input)!.pages[0]!];
    const text = all
      .map(({ items }) =>
        textsOf(items)
          .map((one) => one.text)
          .join(' '),
      )
      .join(' ');
    return [
      'turn none by a quarter',
      'lie one way of the cloth',
      'pockets of its own lay',
      'pockets of this lay',
    ].map((words) => text.includes(words));
  };
  const [first] = smallJob().openings;
  const openings = ['A', 'B', 'C', 'D', 'E', 'F'].map((id) => ({ ...first!, id }));
  const job = { ...smallJob(), openings, oneBatch: 'panel' as const };
  // In one lay nothing can be mixed.
  expect(said(job)).toEqual([false, false, false, false]);
  const from = { job: 'earlier', jobName: 'Earlier', lay: 'L1', date: '2026-11-01' };
  const [along, across] = [1700, 700];
  const rest = {
    ...{ id: 'a', name: 'Rest', fabric: 'mesh-black', along, across, place: '', worth: 1, notes: '' },
    from,
  };
  expect(said({ ...job, sameWay: true }, [rest])).toEqual([true, true, true, true]);
});
