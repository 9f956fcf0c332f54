import { type Magnet, type WrapFilm, wrapSize } from '@panewright/design';
import { moveOutline, type Outline, point, type Rigid } from '@panewright/geometry';
import { type Block, innerWidth, paragraph, space, stack } from '../block.ts';
import { corrected } from '../correction.ts';
import { correctionWords } from '../correctionWords.ts';
import { fineLengthText } from '../figures.ts';
import { CAPITAL, INK, STYLE } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { pageFrame } from '../pageFrame.ts';
import { sheetPaper } from '../paper.ts';
import { circle, group, lineAt, outlinePath, rectangle } from '../path.ts';
import type { GroupItem, Item, Page, Sheet } from '../sheet.ts';
import { text } from '../text.ts';
import type { Words } from '../words.ts';
import { wordsOf } from '../wordsOf.ts';
import { materialsNamed } from '../work/materialsOf.ts';
import { bar } from './bar.ts';
import { checkSizes } from './checkSizes.ts';
import { nested } from './nested.ts';

/** Clear way between copies, mm: room for the shears. */
const GAP = 4;
const FOOT = 12;
/** A patch wanted less often than this has its one template on the sheet of pocket patches, and no sheet here. */
const FEW = 3;

/** A small piece that is cut many times. */
interface Template {
  readonly title: string;
  readonly note: string;
  /** How many the job needs. */
  readonly count: number;
  readonly outline: Outline;
  /** Drawn on each copy, at its place. */
  readonly marks: (place: Rigid) => readonly GroupItem[];
}

/**
 * Pocket patches and pieces of wrap film at full size, each on sheets of its own with as many nested copies as a page
 * holds: to cut through the paper, or to draw round. One full page of each where `templateCopies` is not given, and
 * never more than the job needs. Undefined where the job has neither.
 *
 * @returns patches too large for the paper are left to the sheet of pocket patches, which tiles them
 */
export function templateSheet(input: SheetInput): Sheet | undefined {
  const words = wordsOf(input.options);
  const templates = [...pocketTemplates(input, words), ...filmTemplates(input, words)];
  if (templates.length === 0) return undefined;
  const paper = sheetPaper(input.options.paper, input.options.units);
  const title = words.template.title();
  const frame = pageFrame(input, title, 'upright', paper);
  const width = innerWidth(frame);
  const drawn = templates.flatMap((one) => {
    const head = headOf(one, input, width, words);
    const room = { width, height: frame.height - frame.top - frame.bottom - head('').height - FOOT };
    const places = nested(one.outline, room, GAP);
    if (places.length === 0) return [];
    const wanted = Math.min(one.count, input.options.templateCopies ?? places.length);
    return Array.from({ length: Math.ceil(wanted / places.length) }, (_, page) => {
      const on = places.slice(0, Math.min(places.length, wanted - page * places.length));
      const said = words.template.copies(on.length, one.count);
      return [
        ...head(said).draw(frame.left, frame.height - frame.top),
        ...on.flatMap((place) => copy(one, lifted(place, frame.left, frame.bottom + FOOT))),
        ...scaleBar(input, frame.left, frame.bottom),
      ];
    });
  });
  if (drawn.length === 0) return undefined;
  const pages = drawn.map(
    (items, index): Page => ({
      ...{ label: '', width: frame.width, height: frame.height },
      items: [...frame.furniture(index + 1, drawn.length), ...items],
    }),
  );
  return {
    path: `patterns/templates-${paper}`,
    title: `${title}: ${input.job.name}`,
    symbols: {},
    pages: pages.map((page) => corrected(page, input.options.correction)),
  };
}

const lifted = (place: Rigid, x: number, y: number): Rigid => ({
  ...place,
  shift: point(place.shift.x + x, place.shift.y + y),
});

const copy = (one: Template, place: Rigid): readonly Item[] => [
  group('cut', [outlinePath(moveOutline(place, one.outline), { line: STYLE.cut })]),
  ...one.marks(place),
];

function headOf(one: Template, input: SheetInput, width: number, words: Words): (copies: string) => Block {
  const { metrics } = input.options;
  const small = { capital: CAPITAL.small, colour: INK.soft };
  const notes = [one.note, words.template.note(), ...correctionWords(input.options, words)].join(' ');
  return (copies) =>
    stack([
      ...paragraph(one.title, width, metrics, { capital: CAPITAL.heading, face: 'bold' }),
      ...paragraph(copies, width, metrics),
      ...paragraph(notes, width, metrics, small),
      space(3),
    ]);
}

function scaleBar(input: SheetInput, left: number, low: number): Item[] {
  const sizes = checkSizes(input.options.units);
  const at = point(left + sizes.tileBar + 3, low + 0.4);
  return [
    group('measure', bar(point(left, low), sizes.tileBar, sizes.step)),
    group('text', [text(sizes.tileBarText, at, input.options.metrics, { capital: CAPITAL.small })]),
  ];
}

function pocketTemplates({ plan }: SheetInput, words: Words): readonly Template[] {
  return (plan.cutting?.pieces ?? [])
    .filter(({ kind, count }) => kind === 'pocket' && count >= FEW)
    .map(
      (piece): Template => ({
        title: words.pocket.name(piece.piece, piece.count),
        note: words.template.pocketNote(),
        count: piece.count,
        outline: piece.outline,
        marks: (place) => [group('mark', [tick(place)])],
      }),
    );
}

/** Middle of a patch's straight side, which runs along its own x axis. */
function tick(place: Rigid): Item {
  const flip = place.mirrored ? -1 : 1;
  const [cos, sin] = [Math.cos(place.angle), Math.sin(place.angle)];
  const at = (x: number, y: number) =>
    ({ x: cos * flip * x - sin * y + place.shift.x, y: sin * flip * x + cos * y + place.shift.y }) as const;
  const [a, b] = [at(0, 0), at(0, 5)];
  return lineAt(a.x, a.y, b.x, b.y, STYLE.mark);
}

/** One for each size of wrap: every pair of inside magnet and film that the panels use. */
function filmTemplates(input: SheetInput, words: Words): readonly Template[] {
  const { plan, catalogue } = input;
  if (plan.cutting === null) return [];
  const found = new Map<string, { magnet: Magnet; film: WrapFilm; count: number }>();
  for (const { pattern, members } of plan.patterns) {
    const panel = plan.panels.find((one) => one.pattern === pattern);
    const points = plan.hold.find((one) => one.pattern === pattern)?.points.length ?? 0;
    if (panel === undefined || points === 0) continue;
    const { inside, wrapFilm } = materialsNamed(panel.choices, catalogue);
    if (inside === undefined || wrapFilm === undefined) continue;
    const key = `${inside.id} ${wrapFilm.id}`;
    const count = (found.get(key)?.count ?? 0) + points * members.length;
    found.set(key, { magnet: inside, film: wrapFilm, count });
  }
  return [...found.values()].map((one) => filmTemplate(one.magnet, one.film, one.count, input, words));
}

function filmTemplate(
  magnet: Magnet,
  film: WrapFilm,
  count: number,
  input: SheetInput,
  words: Words,
): Template {
  const { units, language } = input.options;
  const { stripWidth: width, cutLength: length } = wrapSize(magnet, film);
  const corners = [point(width, 0), point(width, length), point(0, length), point(0, 0)];
  const [first, ...rest] = corners.map((to) => ({ kind: 'line', to }) as const);
  const outline: Outline = { segments: [first!, ...rest] };
  const size = `${fineLengthText(width, units, language)} × ${fineLengthText(length, units, language)}`;
  return {
    title: words.template.film(film.name, count),
    note: words.template.filmNote(magnet.name, size),
    count,
    outline,
    marks: (place) => {
      const own = (one: Outline) => moveOutline(place, one);
      const [a, b] = own({
        segments: [
          { kind: 'line', to: point(0, length / 2) },
          { kind: 'line', to: point(width, length / 2) },
        ],
      }).segments.map(({ to }) => to) as [(typeof corners)[number], (typeof corners)[number]];
      return [
        group('stitch', [lineAt(a.x, a.y, b.x, b.y, STYLE.stitch)]),
        group('hold', [outlinePath(own(magnetFace(magnet, width / 2, length / 4)), { line: STYLE.pocket })]),
      ];
    },
  };
}

/** The magnet's face on the film, its longer side along the strip. */
function magnetFace({ shape }: Magnet, x: number, y: number): Outline {
  if (shape.kind === 'disc') {
    const { segments } = circle(point(x, y), shape.diameter / 2, {});
    return { segments: segments as unknown as Outline['segments'] };
  }
  const [wide, high] = [Math.min(shape.width, shape.height), Math.max(shape.width, shape.height)];
  const { segments } = rectangle({ x: x - wide / 2, y: y - high / 2, width: wide, height: high }, {});
  return { segments: segments as unknown as Outline['segments'] };
}
