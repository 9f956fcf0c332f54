import {
  defaultCatalogue,
  defaultGlazing,
  derive,
  emptyJob,
  type Job,
  type Opening,
  type TapeSurvey,
} from '@panewright/design';
import {
  eachSheet,
  LABEL_STOCKS,
  labelSheet,
  laysOf,
  type PaperName,
  piecesOf,
  type Sheet,
} from '@panewright/drawing';
import { layFiles, loadFonts, pieceFiles, sheetFiles } from '@panewright/render';

/** A job of many openings of so many sizes. Invented. */
function manyOpenings(count: number, sizes: number): Job {
  const opening = (index: number): Opening => {
    const kind = index % sizes;
    const [width, height] = [480 + 12 * (kind % 50), 320 + 25 * Math.floor(kind / 50)];
    const read = (of: TapeSurvey['readings'][number]['of'], value: number) => ({
      of,
      entered: String(Math.round(value * 100) / 100),
      unit: 'mm' as const,
    });
    const diagonal = Math.hypot(width, height);
    return {
      id: `W${index + 1}`,
      name: `Window ${index + 1}`,
      place: `deck ${1 + (index % 6)}, frame ${10 + (index % 40)}`,
      survey: {
        method: 'tape',
        diagonalsTo: 'sharp',
        readings: [
          ...[read('bottom', width), read('right', height), read('top', width), read('left', height)],
          ...[read('rising', diagonal), read('falling', diagonal)],
          ...(['radiusBottomLeft', 'radiusBottomRight', 'radiusTopRight', 'radiusTopLeft'] as const).map(
            (of) => read(of, 60),
          ),
        ],
      },
      glazing: defaultGlazing,
      ...{ exit: index % 50 === 0, driving: false, obstructions: [], choices: {}, notes: '' },
    };
  };
  return {
    ...emptyJob('many', `${count} windows`, 'mm'),
    openings: Array.from({ length: count }, (_, index) => opening(index)),
  };
}

/** The lay is not what is measured: a coarse one is soon found. */
const PLAN_BUDGET = 20;

/** Makes everything once, and says what took how long. */
export async function run(
  count: number,
  sizes: number,
  paper: PaperName,
  bytes: Parameters<typeof loadFonts>[0],
  clock: () => number,
  /** Time the processor spent on this process, ms: what it would take on a machine nobody shares. */
  busy: () => number,
  memory: () => number,
): Promise<readonly string[]> {
  const rows: string[] = [];
  const now = () => ({ wall: clock(), busy: busy() });
  type Time = ReturnType<typeof now>;
  const seconds = (time: number) => (time / 1000).toFixed(2);
  const row = (part: string, files: number, pages: number, from: Time, to: Time) =>
    rows.push(
      `| ${part} | ${files || ''} | ${pages || ''} | ${seconds(to.wall - from.wall)} | ${seconds(to.busy - from.busy)} |`,
    );
  const none = { wall: 0, busy: 0 };
  const begun = now();
  const job = manyOpenings(count, sizes);
  const plan = derive(job, defaultCatalogue, 1, PLAN_BUDGET);
  const planned = now();
  row(`plan (not counted below), then ${Math.round(memory() / 2 ** 20)} MB`, 0, 0, begun, planned);
  const fonts = loadFonts(bytes);
  const options = {
    ...{ paper, units: 'mm' as const, date: '2026-11-25', revision: '1', metrics: fonts.metrics },
    say: ({ code }: { readonly code: string }) => code,
  };
  const input = { plan, job, catalogue: defaultCatalogue, options };
  const render = { fonts, date: '2026-11-25', id: 'bench', author: 'bench', hpgl: {} };
  let size = 0;
  const parts = new Map<string, { files: number; pages: number; time: Time }>();
  const labels = labelSheet(input, { kind: 'shelf', stock: LABEL_STOCKS[0]! });
  let from = now();
  const make = async (sheet: Sheet) => {
    const files = await sheetFiles(sheet, render);
    size += files.reduce((sum, one) => sum + one.bytes.length, 0);
    const name = sheet.path.startsWith('patterns/P') ? 'patterns' : sheet.path;
    const part = parts.get(name) ?? { files: 0, pages: 0, time: none };
    part.files += files.length;
    part.pages += sheet.pages.length;
    const to = now();
    part.time = { wall: part.time.wall + to.wall - from.wall, busy: part.time.busy + to.busy - from.busy };
    parts.set(name, part);
    from = to;
  };
  for (const sheet of eachSheet(input)) await make(sheet);
  if (labels.ok) await make(labels.value);
  for (const [name, { files, pages, time }] of parts) row(name, files, pages, none, time);
  const before = now();
  const [pieces, lays] = [piecesOf(input), laysOf(input)];
  let cut = 0;
  const add = (files: readonly { readonly bytes: Uint8Array }[]) => {
    cut += files.length;
    for (const one of files) size += one.bytes.length;
  };
  for (const one of pieces) add(pieceFiles(one, render));
  for (const one of lays) add(layFiles(one, lays.length, render));
  const done = now();
  row('cut files: SVG, DXF, HP-GL', cut, 0, before, done);
  row(`all sheets and files, ${(size / 1e6).toFixed(0)} MB`, 0, 0, planned, done);
  return rows;
}
