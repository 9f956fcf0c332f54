import type { ReactNode } from 'react';
import type { UnitName } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useWords } from '../text/useWords.ts';
import { Grid, gridStep } from './Grid.tsx';
import { useWidth } from './useSize.ts';
import { type Box, fitView, type Padding, type View } from './view.ts';

interface DrawingProps {
  readonly box: Box;
  readonly label: string;
  /** Height over width of the sheet; the drawing is fitted into it. */
  readonly tall?: number;
  readonly leastHeight?: number;
  readonly pad?: Padding;
  /** The same on a narrow screen. */
  readonly narrowPad?: Padding;
  readonly stale?: boolean;
  readonly caption?: ReactNode;
  /** Its parts are handled, so that they are not one picture. */
  readonly handled?: boolean;
  /** Drawn in SVG, after the squared ground. */
  readonly children: (view: View) => ReactNode;
  /** Laid over the drawing in HTML: entries at the place where they were measured. */
  readonly over?: (view: View) => ReactNode;
}

const PAD: Padding = { x: 28, top: 28, bottom: 28 };
const NARROW_PAD: Padding = { x: 16, top: 20, bottom: 20 };
/** Below this width, in dots, entries stand below the drawing (see drawing.css: 34rem). */
const NARROW = 578;

/** A sheet of squared paper with a drawing fitted to it. */
export function Drawing({
  box,
  label,
  tall = 0.72,
  leastHeight = 240,
  pad = PAD,
  narrowPad = NARROW_PAD,
  stale,
  caption,
  handled,
  children,
  over,
}: DrawingProps) {
  const w = useWords();
  const units: UnitName = useUnits();
  const { ref, width } = useWidth<HTMLDivElement>(640);
  const height = Math.max(leastHeight, Math.round(width * tall));
  const view = fitView(box, width, height, width < NARROW ? narrowPad : pad);
  return (
    <figure className={`drawing${stale ? ' drawing-stale' : ''}`}>
      <div ref={ref} className="drawing-sheet">
        {/* Before the drawing, though it lies over it: the entries come first by the keys, then what is taken hold of. */}
        {over ? <div className="drawing-over">{over(view)}</div> : null}
        <svg
          width={width}
          height={height}
          viewBox={`0 0 ${width} ${height}`}
          role={handled ? 'group' : 'img'}
          aria-label={label}
        >
          <Grid view={view} units={units} />
          {children(view)}
        </svg>
      </div>
      <figcaption>
        <span>{stale ? <strong className="needs">{w.drawing.stale}</strong> : caption}</span>
        <span className="drawing-scale">{w.drawing.grid(gridStep(view, units).name)}</span>
      </figcaption>
    </figure>
  );
}
