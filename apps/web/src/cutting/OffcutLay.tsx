import type { CutPiece, LayPlan } from '../contract.ts';
import { Drawing } from '../drawing/Drawing.tsx';
import { outlinePath } from '../drawing/outlinePath.ts';
import { FigureList } from '../fields/FigureList.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { showPercent, showSize } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { KeptClear } from './KeptClear.tsx';

interface Props {
  readonly lay: LayPlan & { readonly offcut: NonNullable<LayPlan['offcut']> };
  readonly pieces: readonly CutPiece[];
  readonly stale: boolean;
}

const PAD = { x: 40, top: 34, bottom: 34 };

/** Pieces on an offcut of the stock. */
export function OffcutLay({ lay, pieces, stale }: Props) {
  const w = useWords();
  const units = useUnits();
  const { name, place, along, across } = lay.offcut;
  const size = showSize(along, across, units);
  const pieceOf = (id: string) => pieces.find(({ piece }) => piece === id);
  return (
    <section className="stage">
      <div className="stage-drawing">
        <Drawing
          box={{ minX: 0, minY: 0, maxX: along, maxY: across }}
          label={w.drawing.lay(lay.lay, size)}
          tall={0.5}
          pad={PAD}
          stale={stale}
        >
          {(view) => (
            <g transform={view.world}>
              <rect x={0} y={0} width={along} height={across} className="roll" />
              <KeptClear places={lay.reserved} rollWidth={across} end={along} />
              {lay.placements.map(({ piece, copy, outline }) => (
                <path
                  key={`${piece}.${copy}`}
                  d={outlinePath(outline)}
                  className={`piece piece-${pieceOf(piece)?.kind ?? 'panel'}`}
                />
              ))}
            </g>
          )}
        </Drawing>
      </div>
      <div className="stage-side">
        <h3>{w.offcut.layOn(lay.lay, name)}</h3>
        <FigureList
          rows={[
            [w.offcut.size, size],
            [w.offcut.where, place],
            [w.offcut.pieces, piecesOn()],
            [w.cutting.density, showPercent(lay.density)],
          ]}
        />
        <p className="about">{w.offcut.measure}</p>
      </div>
    </section>
  );

  /** Each panel by its opening, and pockets of one kind once, with how many. */
  function piecesOn(): string {
    const counts = new Map<string, number>();
    for (const { piece, copy } of lay.placements) {
      const called = nameOf(pieceOf(piece), copy);
      counts.set(called, (counts.get(called) ?? 0) + 1);
    }
    return [...counts].map(([called, count]) => (count > 1 ? `${called} × ${count}` : called)).join(', ');
  }

  function nameOf(piece: CutPiece | undefined, copy: number): string {
    if (!piece) return '';
    return piece.kind === 'panel' ? (piece.openings[copy] ?? '') : w.cutting.pocketOf(piece.piece);
  }
}
