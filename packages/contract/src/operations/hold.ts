import {
  defaultCatalogue,
  deriveShapes,
  heldPoints,
  job,
  panelHeld,
  USUAL_CLOTH,
  type WindMargins,
  windMargins,
} from '@panewright/design';
import { ok, refuse } from '@panewright/quantity';
import { z } from 'zod';
import { sayGap, sayWrongWay } from '../answers/answers.ts';
import { english } from '../answers/english/english.ts';
import { showOf } from '../answers/show.ts';
import { exampleJob } from '../examples.ts';
import { catalogueOrDefault } from './computations.ts';
import { heldPanelOf, panelOf } from './holdQuestions.ts';
import { obstructionName } from './obstructionName.ts';
import { computation } from './operation.ts';

const number = z.number();
const documents = { job: 'job', catalogue: 'catalogue' } as const;
const openingId = z.string().max(60).describe('an opening of the job, by its id');
const ends = z.strictObject({ low: z.nullable(number), high: z.nullable(number) });
const mode = z.enum(['pullOff', 'slip', 'peel']);

const row = z.strictObject({
  point: z.int(),
  on: z.string().describe('edge, or corner:NAME'),
  place: z.string().describe('the same in words'),
  next: z.nullable(number).describe('to the next point round the panel, mm'),
  why: z.string(),
  mode: mode.describe('how it would give first'),
  margin: z.strictObject({ low: z.nullable(number), value: z.nullable(number), high: z.nullable(number) }),
  letsGo: ends.describe('mean wind at which it may begin to give and at which it surely does, m/s'),
});

const slack = z
  .strictObject({ low: number, high: number, measured: z.boolean().describe('false: the usual one') })
  .describe('of the cloth between two points, as a ratio; margins of single points hang on it');

const openingRows = z.strictObject({
  opening: z.string(),
  pattern: z.string(),
  margin: z.nullable(z.strictObject({ low: number, value: number, high: number })),
  asked: number,
  letsGo: ends.describe('mean wind at which the whole panel comes off, m/s'),
  points: z.array(row),
  wrongWays: z
    .array(
      z.strictObject({
        turnedOver: z.boolean(),
        turn: number,
        meet: z.int(),
        drawn: z.int(),
        text: z.string(),
      }),
    )
    .describe('of a keyed panel: how it could be put on wrongly, and how many points would then pull'),
});

/** Every hold point of a job, with its margin and the wind at which it gives. */
export const holdPoints = computation({
  summary:
    'Every hold point of every opening: how far to the next and why, its margin, how it would give first and at which wind. Estimates.',
  input: z.strictObject({ job, catalogue: catalogueOrDefault }),
  output: z.strictObject({ wind: number, slack, openings: z.array(openingRows) }),
  documents,
  example: { job: exampleJob },
  run: (input, { messages = english }) => {
    const shop = input.catalogue ?? defaultCatalogue;
    const plan = deriveShapes(input.job, shop);
    const show = showOf(input.job, shop, messages.language);
    const openings = plan.openings.flatMap(({ opening }) => {
      const held = panelHeld(plan, shop, opening);
      if (!held.ok) return [];
      const { hold, own, load } = held.value;
      const points = heldPoints(held.value);
      const found = points.ok ? windMargins(points.value, load, []) : null;
      const margin = own.margin;
      return [
        {
          opening,
          pattern: hold.pattern,
          margin: margin ? { low: margin.low, value: margin.value.value, high: margin.high } : null,
          asked: shop.habits.windMargin,
          letsGo: found?.ok ? { ...found.value.letsGo } : { low: null, high: null },
          wrongWays: (hold.wrongWays ?? []).map((way) => ({
            ...way,
            text: sayWrongWay(way, hold.points.length, show, messages),
          })),
          points: hold.points.map(({ number: point, on }) => {
            const by = own.byPoint?.find((one) => one.point === point);
            const gap = hold.gaps?.find(({ from }) => from === point);
            return {
              point,
              on,
              place: messages.part(on),
              next: gap?.length ?? null,
              why: gap
                ? sayGap(gap, obstructionName(input.job, gap.obstruction, messages), show, messages)
                : '',
              mode: by?.mode ?? ('slip' as const),
              margin: { low: by?.low ?? null, value: by?.value ?? null, high: by?.high ?? null },
              letsGo: letsGoOf(found?.ok ? found.value : null, point),
            };
          }),
        },
      ];
    });
    const own = shop.habits.slack;
    const cloth = { ...(own ?? USUAL_CLOTH.slack), measured: own !== undefined };
    return ok({ wind: input.job.choices.weather.wind, slack: cloth, openings });
  },
});

function letsGoOf(found: WindMargins | null, point: number) {
  const ends = found?.points.find((one) => one.point === point)?.letsGo;
  return { low: ends?.low ?? null, high: ends?.high ?? null };
}

const weakest = z.strictObject({ point: z.int(), low: z.nullable(number), high: z.nullable(number) });

/** Margin against wind of one panel. */
export const windMargin = computation({
  summary:
    'Margin of one opening’s panel, and of its weakest hold point, against mean wind, and where each lets go. Estimates.',
  input: z.strictObject({
    job,
    catalogue: catalogueOrDefault,
    opening: openingId,
    winds: z.optional(z.array(z.number().min(0).max(60)).max(400).describe('mean winds, m/s')),
  }),
  output: z.strictObject({
    opening: z.string(),
    wind: number.describe('asked of the job, m/s'),
    asked: number,
    letsGo: ends,
    points: z.array(z.strictObject({ point: z.int(), letsGo: ends })),
    curve: z.array(
      z.strictObject({
        wind: number,
        whole: z.strictObject({ low: number, value: number, high: number }),
        weakest,
      }),
    ),
  }),
  documents,
  example: { job: exampleJob, opening: 'W1', winds: [0, 5.5, 10] },
  run: (input) => {
    const shop = input.catalogue ?? defaultCatalogue;
    const found = heldPanelOf(input.job, shop, input.opening);
    if (!found.ok) return found;
    const { points, held } = found.value;
    const winds = input.winds ?? usualWinds(held.load.gustFactor);
    const margins = windMargins(points, held.load, winds);
    if (!margins.ok)
      return refuse({ code: 'HOLD_REFUSED', opening: input.opening, refusal: margins.refusal });
    const known = (ratio: number | 'unloaded') => (ratio === 'unloaded' ? null : ratio);
    return ok({
      opening: input.opening,
      wind: held.load.wind,
      asked: shop.habits.windMargin,
      letsGo: { ...margins.value.letsGo },
      points: margins.value.points.map(({ point, letsGo }) => ({ point, letsGo: { ...letsGo } })),
      curve: margins.value.curve.map(({ wind, whole, weakest: least }) => ({
        wind,
        whole: { low: whole.low, value: whole.value, high: whole.high },
        weakest: { point: least.weakest, low: known(least.low), high: known(least.high) },
      })),
    });
  },
});

/** From calm to 20 m/s, or as far as the gusts that are looked at. */
const usualWinds = (gust: number): readonly number[] =>
  Array.from({ length: 41 }, (_, k) => (k * Math.min(20, 100 / gust)) / 40);

const layer = z.strictObject({
  kind: z.string(),
  thickness: number,
  from: number,
  to: number,
  width: z.nullable(number),
  between: z.boolean(),
});
const section = z.strictObject({
  place: z.enum(['corner', 'edge']),
  layers: z.array(layer),
  gap: number,
  gapLow: number,
  gapHigh: number,
  total: number,
  curved: z.boolean(),
});

/** Sections through the stack of one opening. */
export const stackSections = computation({
  summary:
    'Section through the layers at a corner and along an edge of one opening, to scale, from the outside in.',
  input: z.strictObject({ job, catalogue: catalogueOrDefault, opening: openingId }),
  output: z.strictObject({ opening: z.string(), corner: section, edge: section }),
  documents,
  example: { job: exampleJob, opening: 'W1' },
  run: (input) => {
    const held = panelOf(input.job, input.catalogue ?? defaultCatalogue, input.opening);
    if (!held.ok) return held;
    const { corner, edge } = held.value.sections;
    const plain = (one: typeof corner) => ({ ...one, layers: one.layers.map((part) => ({ ...part })) });
    return ok({ opening: input.opening, corner: plain(corner), edge: plain(edge) });
  },
});
