import { defaultCatalogue, derive, type Job } from '@panewright/design';
import { type PieceDrawing, piecesOf, type SheetOptions } from '@panewright/drawing';
import { bounds, moveOutline, nearest, type Outline, point, shiftBy } from '@panewright/geometry';
import { pieceDxf, pieceHpgl } from '@panewright/render';
import DxfParser from 'dxf-parser';
import { readTraits, type Vertex } from '../packages/render/src/testing/bulges.ts';
import { plot } from '../packages/render/src/testing/plotter.ts';

type Row = readonly [what: string, by: string, found: string, wanted: string];

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly vertices?: readonly Vertex[];
}

/** How far the pieces' DXF and plotter files are off the plan, read by a library and by a plotter that share no code with the writers. */
export function run(job: Job): readonly Row[] {
  const plan = derive(job, defaultCatalogue, 1);
  const options = {
    paper: 'a4',
    units: job.units,
    date: '2026-11-25',
    revision: '1',
  } as unknown as SheetOptions;
  const pieces = piecesOf({ plan, job, catalogue: defaultCatalogue, options });
  const most = (off: (piece: PieceDrawing) => number) => Math.max(...pieces.map(off)).toFixed(4);
  const said = (of: string) => `${of} mm off the plan at most`;
  return [
    ...(['R12', 'AC1015'] as const).map(
      (version): Row => [
        `${pieces.length} pieces as DXF ${version}, corners and middles of arcs`,
        'dxf-parser 1.1.2',
        said(most((piece) => dxfOff(piece, version))),
        '0.01 mm',
      ],
    ),
    [
      `${pieces.length} pieces as HP-GL, every point a pen was at and the middles between`,
      'a plotter of our own that shares no code with the writer',
      said(most(hpglOff)),
      '0.025 mm',
    ],
  ];
}

function dxfOff(piece: PieceDrawing, version: 'R12' | 'AC1015'): number {
  const file = new DxfParser().parseSync(pieceDxf(piece, { version, centres: 'cross' })) as unknown as {
    readonly blocks: Readonly<Record<string, { readonly entities: readonly Entity[] }>>;
  };
  const cut = file.blocks[piece.name.toUpperCase()]!.entities.find(
    ({ layer, type }) => layer === '1' && type.endsWith('POLYLINE'),
  )!;
  return farthest(readTraits(cut.vertices!), piece.boundary);
}

function hpglOff(piece: PieceDrawing): number {
  const { minX, minY } = bounds(piece.boundary);
  const outline = moveOutline(shiftBy(10 - minX, 10 - minY), piece.boundary);
  const cut = plot(pieceHpgl(piece)).find(({ pen }) => pen === 2)!;
  const points = cut.points.flatMap((p, index) => {
    const q = cut.points[index + 1] ?? p;
    return [p, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }];
  });
  return farthest(points, outline);
}

const farthest = (points: readonly Vertex[], outline: Outline): number =>
  Math.max(...points.map(({ x, y }) => nearest(outline, point(x, y)).distance));
