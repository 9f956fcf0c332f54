import { type KeyboardEvent, type PointerEvent, useState } from 'react';
import { useStore } from 'zustand';
import {
  changeByHand,
  type Edge,
  filmPointAt,
  type HandChange,
  isSharp,
  mm,
  type OutlineSurvey,
  type PhotoView,
  type Pixel,
  pixelOf,
  surveyOutline,
} from '../contract.ts';
import { arrowWay } from '../drawing/arrowKeys.ts';
import { showNumber, showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { along, edgePixels, edgesOf, handOf, outwardBetween, outwardOnPhoto } from './edgePixels.ts';
import type { PhotoScale } from './PhotoSheet.tsx';
import type { PhotoWork } from './photoWork.ts';

interface Props {
  readonly work: PhotoWork;
  readonly view: PhotoView;
  readonly size: PhotoScale;
}

/** Millimetres a press of an arrow key moves an edge; with Shift the larger. */
const NUDGE = { fine: 0.1, coarse: 1 } as const;

/** The outline over the photo, as camera and lens show it: each edge and sharp corner can be dragged and nudged. */
export function OutlineOverlay({ work, view, size }: Props) {
  const { history, at, chosen } = useStore(work.store);
  const [dragged, setDragged] = useState<OutlineSurvey | null>(null);
  const traced = history[0]!;
  const survey = dragged ?? history[at]!;
  const outline = surveyOutline(survey);
  const all = edgesOf(outline);
  const handle: HandleProps = {
    ...{ work, view, size, traced, survey },
    show: (change, hand) => {
      const tried = changeByHand(history[at]!, traced, change, hand);
      if (tried.ok) setDragged(tried.value);
      return tried.ok;
    },
    settle: () => setDragged(null),
  };
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: each of its parts has a name of its own
    <svg
      className="photo-over"
      width={size.width}
      height={size.height}
      viewBox={`0 0 ${size.width} ${size.height}`}
    >
      {all.map((edge, k) => (
        // Edges keep their order and number whatever is moved.
        <EdgeHandle key={k} {...handle} edge={edge} index={k} chosen={chosen === k} />
      ))}
      {all.map((edge, k) =>
        isSharp(outline, k) ? (
          <CornerHandle key={k} {...handle} edge={edge} index={k} count={all.length} />
        ) : null,
      )}
    </svg>
  );
}

interface HandleProps extends Props {
  readonly traced: OutlineSurvey;
  readonly survey: OutlineSurvey;
  /** Shows a change without making it; false where its neighbours cannot follow. */
  readonly show: (change: HandChange, hand: number) => boolean;
  readonly settle: () => void;
}

/** Dots from the picture's corner to pixels of the photo, whose first pixel has its centre at 0. */
const pixelAt = (event: PointerEvent, { scale }: PhotoScale): Pixel => {
  const box = (event.currentTarget as Element).closest('svg')!.getBoundingClientRect();
  return { x: (event.clientX - box.left) / scale - 0.5, y: (event.clientY - box.top) / scale - 0.5 };
};
const dotsOf = ({ x, y }: Pixel, { scale }: PhotoScale) => ({ x: (x + 0.5) * scale, y: (y + 0.5) * scale });

/** Follows a pointer from its press to its release; `move` is told the change so far, `end` the last one that could be. */
function useDrag(
  { work, size, show, settle }: HandleProps,
  changeOf: (from: Pixel, to: Pixel) => HandChange | undefined,
  hand: number,
) {
  const [drag, setDrag] = useState<{ readonly from: Pixel; readonly last: HandChange | null } | null>(null);
  return {
    onPointerDown: (event: PointerEvent) => {
      event.currentTarget.setPointerCapture(event.pointerId);
      setDrag({ from: pixelAt(event, size), last: null });
    },
    onPointerMove: (event: PointerEvent) => {
      if (!drag) return;
      const change = changeOf(drag.from, pixelAt(event, size));
      if (change && show(change, hand)) setDrag({ from: drag.from, last: change });
    },
    onPointerUp: () => {
      if (drag?.last) work.change(drag.last, hand);
      setDrag(null);
      settle();
    },
    onPointerCancel: () => {
      setDrag(null);
      settle();
    },
  };
}

function EdgeHandle(
  props: HandleProps & { readonly edge: Edge; readonly index: number; readonly chosen: boolean },
) {
  const { work, view, size, traced, survey, edge, index, chosen } = props;
  const w = useWords();
  const hand = handOf(view, edge, size.scale);
  const drag = useDrag(
    props,
    (from, to) => {
      const outward = outwardBetween(view, edge, from, to);
      return outward === undefined ? undefined : { kind: 'edge', edge: index, outward: mm(outward) };
    },
    hand,
  );
  const press = (event: KeyboardEvent) => {
    const step = event.shiftKey ? NUDGE.coarse : NUDGE.fine;
    const way = arrowWay(event.key);
    const out = outwardOnPhoto(view, edge);
    const along = way ? way.x * out.x + way.y * out.y : 0;
    if (Math.abs(along) < 0.4) return;
    event.preventDefault();
    work.change({ kind: 'edge', edge: index, outward: mm(Math.sign(along) * step) }, hand);
  };
  const dots = edgePixels(view, edge).map((pixel) => dotsOf(pixel, size));
  const path = `M${dots.map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}`;
  const segment = survey.segments[index]!;
  const moved = movedBy(traced, edge, index);
  return (
    <g
      className={`photo-edge${chosen ? ' photo-chosen' : ''}${segment.byHand ? ' photo-hand' : ''}`}
      role="slider"
      tabIndex={0}
      aria-label={w.photo.view.edge(index + 1, edge.kind)}
      aria-valuenow={Number(moved.toFixed(1))}
      aria-valuemin={-1000}
      aria-valuemax={1000}
      aria-valuetext={`${w.photo.view.state(showSmall(moved), showSmall(1.96 * segment.sigma))}${segment.byHand ? `, ${w.photo.view.hand}` : ''}`}
      onKeyDown={press}
      onFocus={() => work.set({ chosen: index })}
      {...drag}
    >
      <path d={path} className="photo-grip" />
      <path d={path} className="photo-halo" />
      <path d={path} className="photo-line" />
      <EdgeLabel
        view={view}
        size={size}
        edge={edge}
        index={index}
        known={1.96 * segment.sigma}
        chosen={chosen}
      />
    </g>
  );
}

/** How far an edge's middle lies outside of where it was traced, mm. */
function movedBy(traced: OutlineSurvey, edge: Edge, index: number): number {
  const was = along(edgesOf(surveyOutline(traced))[index]!, 0.5);
  const now = along(edge, 0.5);
  const length = Math.hypot(edge.to.x - edge.from.x, edge.to.y - edge.from.y);
  return ((now.x - was.x) * (edge.to.y - edge.from.y) - (now.y - was.y) * (edge.to.x - edge.from.x)) / length;
}

interface LabelProps {
  readonly view: PhotoView;
  readonly size: PhotoScale;
  readonly edge: Edge;
  readonly index: number;
  readonly known: number;
  readonly chosen: boolean;
}

/** Dots that a number with its ± takes beside an edge. */
const LABEL_ROOM = 76;

/** The edge's number beside its middle; of the chosen one how well it is known too, and of all where there is room. */
function EdgeLabel({ view, size, edge, index, known, chosen }: LabelProps) {
  const middle = pixelOf(view, along(edge, 0.5));
  if (!middle) return null;
  const { x, y } = dotsOf(middle, size);
  const out = outwardOnPhoto(view, edge);
  const roomy = size.width > 560 && edge.length / size.width < 5;
  const text =
    chosen || (roomy && edge.length > 250) ? `${index + 1} ± ${showNumber(known, 1)}` : `${index + 1}`;
  // Beside an upright edge the words stand wholly on its outer side, or on its inner where the picture ends.
  const upright = Math.abs(out.x) > 0.7;
  const room = out.x > 0 ? size.width - x : x;
  const side = Math.sign(out.x) * (room > LABEL_ROOM ? 1 : -1);
  const anchor = upright ? (side > 0 ? 'start' : 'end') : 'middle';
  const left = upright ? x + 10 * side : Math.min(size.width - 30, Math.max(30, x));
  const top = Math.min(size.height - 8, Math.max(16, y + 20 * out.y + 5));
  return (
    <text x={left} y={top} textAnchor={anchor} className="photo-label">
      {text}
    </text>
  );
}

function CornerHandle(
  props: HandleProps & { readonly edge: Edge; readonly index: number; readonly count: number },
) {
  const { work, view, size, edge, index, count } = props;
  const w = useWords();
  const hand = handOf(view, edge, size.scale);
  const corner = pixelOf(view, edge.to);
  const shifted = (by: Pixel): HandChange | undefined => {
    const to = corner && filmPointAt(view, { x: corner.x + by.x, y: corner.y + by.y });
    return to && { kind: 'corner', edge: index, to };
  };
  const drag = useDrag(props, (from, to) => shifted({ x: to.x - from.x, y: to.y - from.y }), hand);
  if (!corner) return null;
  const press = (event: KeyboardEvent) => {
    const way = arrowWay(event.key);
    const next = way && filmPointAt(view, { x: corner.x + way.x, y: corner.y + way.y });
    if (!next) return;
    event.preventDefault();
    const length = Math.hypot(next.x - edge.to.x, next.y - edge.to.y);
    const step = (event.shiftKey ? NUDGE.coarse : NUDGE.fine) / length;
    const to = {
      x: edge.to.x + (next.x - edge.to.x) * step,
      y: edge.to.y + (next.y - edge.to.y) * step,
    };
    work.change({ kind: 'corner', edge: index, to }, hand);
  };
  const { x, y } = dotsOf(corner, size);
  return (
    // biome-ignore lint/a11y/useSemanticElements: within a drawing there is no button
    <g
      className="photo-edge"
      role="button"
      tabIndex={0}
      aria-label={w.photo.view.corner(index + 1, ((index + 1) % count) + 1)}
      onKeyDown={press}
      {...drag}
    >
      <circle cx={x} cy={y} r={16} className="photo-grip-round" />
      <circle cx={x} cy={y} r={6} className="photo-joint" />
    </g>
  );
}
