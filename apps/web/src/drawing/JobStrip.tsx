import { memo, type RefObject, useEffect } from 'react';
import { Link } from 'wouter';
import type { Finding, Opening, OpeningPlan, OpeningShape } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showSize } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { outlinePath } from './outlinePath.ts';
import { useWidth } from './useSize.ts';
import { boxAround, fitView } from './view.ts';

/** Height of the drawn row in dots, and the widest one opening may become. */
const ROW = 88;
const WIDEST = 190;
/** What an opening takes at least for its words, and what stands around each; all in dots. */
const WORDS = 118;
const AROUND = 20;
const BUTTON = 120;

/** One scale for all: as large as the row allows, smaller where the whole job then fits into it. */
function rowScale(shapes: readonly OpeningShape[], width: number): number {
  const tallest = Math.max(1, ...shapes.map((shape) => shape.height.value));
  const widest = Math.max(1, ...shapes.map((shape) => shape.width.value));
  const most = Math.min((ROW - 8) / tallest, WIDEST / widest);
  const taken = (scale: number) =>
    shapes.reduce((sum, shape) => sum + Math.max(WORDS, shape.width.value * scale + 8) + AROUND, BUTTON);
  for (let scale = most; scale > most / 2; scale *= 0.97) if (taken(scale) <= width) return scale;
  return most;
}

interface StripProps {
  readonly openings: readonly Opening[];
  readonly plans: readonly OpeningPlan[];
  readonly findings: readonly Finding[];
  readonly selected: string | null;
  readonly href: (opening: string) => string;
  readonly add: () => void;
  /** Where the openings are shown in place. */
  readonly elevations: string;
}

/** The whole job as one row of openings, drawn to one scale. */
export function JobStrip({ openings, plans, findings, selected, href, add, elevations }: StripProps) {
  const w = useWords();
  const { ref: row, width } = useWidth<HTMLElement>(1200);
  useShown(row, selected);
  const shapes = plans.flatMap((plan) => (plan.shape ? [plan.shape] : []));
  const scale = rowScale(shapes, width);
  const planOf = new Map(plans.map((plan) => [plan.opening, plan]));
  const [stops, doubts] = [placesOf(findings, 'stop'), placesOf(findings, 'doubt')];
  return (
    <nav ref={row} className="strip" aria-label={w.strip.label}>
      <ul>
        {openings.map((opening) => (
          <StripOne
            key={opening.id}
            opening={opening}
            shape={planOf.get(opening.id)?.shape ?? null}
            scale={scale}
            href={href(opening.id)}
            chosen={opening.id === selected}
            mark={stops.has(opening.id) ? 'stop' : doubts.has(opening.id) ? 'doubt' : null}
          />
        ))}
        <li className="strip-end">
          <Link href={elevations}>{w.elevations.link}</Link>
          <button type="button" className="strip-add" aria-label={w.strip.add} onClick={add}>
            <span aria-hidden="true">＋</span> {w.app.add}
          </button>
        </li>
      </ul>
    </nav>
  );
}

const placesOf = (
  findings: readonly Finding[],
  severity: Finding['severity'],
): ReadonlySet<string | undefined> =>
  new Set(findings.filter((one) => one.severity === severity).map((one) => one.where.opening));

interface OneProps {
  readonly opening: Opening;
  readonly shape: OpeningShape | null;
  readonly scale: number;
  readonly href: string;
  readonly chosen: boolean;
  readonly mark: 'stop' | 'doubt' | null;
}

/** One opening of the row; drawn again only where something of its own changed, be there two hundred. */
const StripOne = memo(function StripOne({ opening, shape, scale, href, chosen, mark }: OneProps) {
  const w = useWords();
  const units = useUnits();
  return (
    <li>
      <Link
        href={href}
        title={opening.place || undefined}
        className={`strip-one${mark ? ' strip-needs' : ''}`}
        aria-current={chosen ? 'true' : undefined}
      >
        <StripShape shape={shape} scale={scale} />
        <span className="strip-name">
          <b>{opening.id}</b> {opening.name}
        </span>
        <span className="strip-size">
          {shape ? showSize(shape.width.value, shape.height.value, units) : w.strip.notMeasured}
          {opening.exit ? `, ${w.strip.exit}` : ''}
        </span>
        {mark ? <span className="strip-mark">{w.strip[mark]}</span> : null}
      </Link>
    </li>
  );
});

/** Moves the row sideways, and only the row, so that the chosen opening can be seen. */
function useShown(row: RefObject<HTMLElement | null>, selected: string | null): void {
  useEffect(() => {
    const chosen = selected === null ? null : row.current?.querySelector<HTMLElement>('[aria-current]');
    if (!row.current || !chosen) return;
    const [frame, one] = [row.current.getBoundingClientRect(), chosen.getBoundingClientRect()];
    if (one.left < frame.left || one.right > frame.right)
      row.current.scrollLeft += one.left - frame.left - (frame.width - one.width) / 2;
  }, [row, selected]);
}

function StripShape({ shape, scale }: Pick<OneProps, 'shape' | 'scale'>) {
  if (!shape)
    return (
      <svg width={64} height={ROW} aria-hidden="true" className="strip-shape">
        <rect x={8} y={ROW - 52} width={48} height={48} rx={8} className="line-sketch" />
      </svg>
    );
  const box = boxAround([shape.outline]);
  const width = Math.max(28, (box.maxX - box.minX) * scale + 8);
  const height = (box.maxY - box.minY) * scale + 8;
  const view = fitView(box, width, height, { x: 4, top: 4, bottom: 4 });
  return (
    <svg width={width} height={ROW} aria-hidden="true" className="strip-shape">
      <g transform={`translate(0 ${ROW - height}) ${view.world}`}>
        <path d={outlinePath(shape.outline)} className="opening-line" />
      </g>
    </svg>
  );
}
