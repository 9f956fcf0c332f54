import { point } from '@panewright/geometry';
import { type Paper, type ReferenceSheet, referenceSheets, type SheetMarker } from '@panewright/photo';
import { type Block, paragraph, space, stack } from '../block.ts';
import { CAPITAL, INK, WEIGHT } from '../ink.ts';
import { group, lineAt, rectangle } from '../path.ts';
import type { FontMetrics, Item, Page, Sheet } from '../sheet.ts';
import { text } from '../text.ts';
import { type Language, wordsOf } from '../wordsOf.ts';

export interface ReferenceOptions {
  readonly paper: Paper;
  readonly metrics: FontMetrics;
  readonly language?: Language;
}

/** Ink that is measured is black; nothing else stands nearer to a marker than this, mm: its white rim is part of it. */
const RIM = 6;
const BLACK = INK.black;

/**
 * The four sheets that are printed, laid about a traced film and photographed with it: four markers each with their
 * numbers and places, and two bars to measure the printer by. Printed without any correction.
 *
 * @returns a sheet of four pages, landscape
 */
export function referencePages({ paper, metrics, language }: ReferenceOptions): Sheet {
  const words = wordsOf(language === undefined ? {} : { language });
  return {
    path: `reference-sheets-${paper.toLowerCase()}`,
    title: words.reference.title(),
    symbols: {},
    pages: referenceSheets(paper).map((sheet) => page(sheet, metrics, words)),
    ...(language === undefined ? {} : { language }),
  };
}

type Words = ReturnType<typeof wordsOf>;

function page(sheet: ReferenceSheet, metrics: FontMetrics, words: Words): Page {
  const { width, height } = sheet.size;
  const solid = { weight: WEIGHT.thin, colour: BLACK };
  const ink: Item[] = [
    ...sheet.markers.flatMap(({ black }) => black.map((one) => rectangle(one, { fill: BLACK }))),
    ...[...sheet.bars.map(({ from, to }) => [from, to] as const), ...sheet.ticks].map(([from, to]) =>
      lineAt(from.x, from.y, to.x, to.y, solid),
    ),
  ];
  return {
    label: `${sheet.index + 1}`,
    width,
    height,
    items: [
      group('mark', ink),
      group('text', [
        ...sheet.markers.flatMap((marker) => markerWords(marker, metrics)),
        ...notes(sheet, metrics, words),
      ]),
    ],
  };
}

/** The marker's number on the side of the sheet's middle, and its corners' numbers outside of its rim. */
function markerWords({ id, corners }: SheetMarker, metrics: FontMetrics): Item[] {
  const [topLeft, topRight, , bottomLeft] = corners;
  const x = (topLeft.x + topRight.x) / 2;
  const upper = id % 4 <= 1;
  const capital = CAPITAL.lead;
  const y = upper ? bottomLeft.y - RIM - capital : topLeft.y + RIM;
  const small = CAPITAL.small;
  return [
    text(`${id}`, point(x, y), metrics, { capital, face: 'bold', anchor: 'middle' }),
    ...corners.map((corner, k) => {
      const left = k === 0 || k === 3 ? -1 : 1;
      const up = k <= 1 ? RIM - 1 : 1 - RIM - small;
      return text(`${k}`, point(corner.x + left * RIM, corner.y + up), metrics, {
        ...{ capital: small, anchor: 'middle', colour: INK.soft },
      });
    }),
  ];
}

/** What the sheet is and how it is used, in the four fields between markers and bars. */
function notes(sheet: ReferenceSheet, metrics: FontMetrics, words: Words): Item[] {
  const { size, markers } = sheet;
  const [x, y] = [size.width / 2, size.height / 2];
  const inner = markers[0]!.corners[1].x + RIM + 5;
  const width = x - 5 - inner;
  const say = (what: string, capital: number = CAPITAL.small, face: 'regular' | 'bold' = 'regular') =>
    paragraph(what, width, metrics, { capital, face });
  const places = markers.map(({ id, corners: [, , , low] }) => words.reference.place(id, low.x, low.y));
  const fields: readonly (readonly [number, number, readonly Block[]])[] = [
    [
      inner,
      size.height - 14,
      [
        ...say(words.reference.sheet(sheet.index + 1), CAPITAL.lead, 'bold'),
        space(2),
        ...say(words.reference.print(), CAPITAL.body),
      ],
    ],
    [x + 5, size.height - 14, [...say(words.reference.places()), ...places.flatMap((one) => say(one))]],
    [inner, y - 9, say(words.reference.rule(), CAPITAL.body)],
    [x + 5, y - 9, say(words.reference.lay(), CAPITAL.body)],
  ];
  return [
    ...fields.flatMap(([left, top, blocks]) => [...stack(blocks).draw(left, top)]),
    text(words.reference.bar('x', 200), point(x + 28, y + 2.5), metrics, {
      ...{ capital: CAPITAL.small, anchor: 'middle', face: 'bold' },
    }),
    text(words.reference.bar('y', 150), point(x - 2.5, y + 28), metrics, {
      ...{ capital: CAPITAL.small, anchor: 'middle', face: 'bold', turn: Math.PI / 2 },
    }),
  ];
}
