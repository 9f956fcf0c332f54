import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { bounds, drawPlaces, type LaidPlace, type LayPlan, point } from '../contract.ts';
import { arrowStep, arrowWay } from '../drawing/arrowKeys.ts';
import { Drawing } from '../drawing/Drawing.tsx';
import { outlinePath } from '../drawing/outlinePath.ts';
import type { View, XY } from '../drawing/view.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { KeptClear } from './KeptClear.tsx';
import { nextTurn, pieceOf, putDown, snapped, turned } from './layEdits.ts';
import type { LayOnPage } from './useLay.ts';

const PAD = { x: 40, top: 34, bottom: 48 };
const NARROW_PAD = { x: 12, top: 16, bottom: 48 };
/** Dots within which a dragged piece is drawn to an edge. */
const REACH = 7;

interface Props {
  readonly lay: LayPlan;
  readonly page: LayOnPage;
  readonly stale: boolean;
}

interface Drag {
  readonly index: number;
  readonly from: { readonly x: number; readonly y: number };
  readonly to: LaidPlace;
  readonly moved: boolean;
}

/** Pieces on the roll, its cut end at the left, selvages marked; each can be chosen, dragged, turned and held. */
export function LayDrawing({ lay, page, stale }: Props) {
  const w = useWords();
  const units = useUnits();
  const { frame, places, drawn } = page;
  const inChain = ({ piece, copy }: (typeof drawn)[number]) =>
    lay.chain?.copies.some((one) => one.piece === piece && one.copy === copy) ?? false;
  const drag = useDrag(page);
  const shown = drag.now
    ? drawn.map((one, k) => (k === drag.now!.index ? (drawPlaces(frame, [drag.now!.to])[0] ?? one) : one))
    : drawn;
  const end = Math.max(lay.length.value, ...shown.map(({ outline }) => bounds(outline).maxX));
  const down = drag.now?.moved ? putDown(frame, places, drawn, drag.now.index, drag.now.to) : null;
  return (
    <Drawing
      box={{ minX: 0, minY: 0, maxX: Math.max(lay.length.value, end), maxY: lay.rollWidth }}
      label={w.drawing.lay(lay.lay, showLength(lay.length.value, units))}
      tall={0.56}
      pad={PAD}
      narrowPad={NARROW_PAD}
      stale={stale}
      handled
      caption={down ? page.sayOf(down) : w.cutting.spacing(showLength(lay.spacing, units))}
    >
      {(view) => (
        <>
          <g transform={view.world}>
            <Roll lay={lay} end={end} />
            <KeptClear places={page.frame.reserved ?? []} rollWidth={page.frame.rollWidth} end={end} />
          </g>
          {shown.map(({ piece, copy, outline }, k) => {
            const place = places[k]!;
            const kind = pieceOf(frame, place)?.kind ?? 'panel';
            const name = page.nameOf(place);
            const state = down && drag.now?.index === k ? ` piece-${down.kind}` : '';
            return (
              // biome-ignore lint/a11y/useSemanticElements: a button element cannot stand within a drawing
              <g
                key={`${piece}.${copy}`}
                role="button"
                tabIndex={k === (page.chosen ?? 0) ? 0 : -1}
                aria-pressed={page.chosen === k}
                aria-label={labelOf(w, name, place, units)}
                className={`laid${page.chosen === k ? ' laid-chosen' : ''}${state}`}
                onFocus={() => page.chosen !== k && page.choose(k)}
                onKeyDown={(event) => onKey(event, page, k, units)}
                {...drag.handlers(k, view)}
              >
                <path
                  d={outlinePath(outline)}
                  transform={view.world}
                  className={`piece piece-${kind}${place.held ? ' piece-held' : ''}${inChain(shown[k]!) ? ' piece-chain' : ''}`}
                />
                {place.held ? <Pin at={view.at(pinAt(outline))} /> : null}
              </g>
            );
          })}
          {shown.map(({ piece, copy, outline }, k) => {
            const { of } = places[k]!;
            return of.kind === 'panel' ? (
              <PieceName key={`${piece}.${copy}`} at={view.at(middleOf(outline))} name={of.opening} />
            ) : null;
          })}
          <g transform={view.world}>
            <line
              x1={lay.leastLength}
              x2={lay.leastLength}
              y1={0}
              y2={lay.rollWidth}
              className="least-line"
            />
          </g>
          <Chain lay={lay} shown={shown} view={view} />
          <Length view={view} lay={lay} text={showLength(lay.length.value, units)} />
        </>
      )}
    </Drawing>
  );
}

function labelOf(w: ReturnType<typeof useWords>, name: string, place: LaidPlace, units: 'in' | 'mm'): string {
  return w.lay.pieceAt(name, showLength(place.x, units), showLength(place.y, units), place.held);
}

function middleOf(outline: Parameters<typeof bounds>[0]) {
  const box = bounds(outline);
  return point((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);
}

const pinAt = (outline: Parameters<typeof bounds>[0]) => {
  const box = bounds(outline);
  return point(box.minX + (box.maxX - box.minX) * 0.5, box.minY + (box.maxY - box.minY) * 0.78);
};

const PieceName = ({ at, name }: { readonly at: XY; readonly name: string }) => (
  <text x={at.x} y={at.y} textAnchor="middle" dominantBaseline="central" className="piece-name">
    {name}
  </text>
);

/** Shows without colour that a piece is held. */
const Pin = ({ at }: { readonly at: XY }) => <circle cx={at.x} cy={at.y} r={4} className="piece-pin" />;

function Roll({ lay, end }: { readonly lay: LayPlan; readonly end: number }) {
  return (
    <>
      <rect x={0} y={0} width={end} height={lay.rollWidth} className="roll" />
      {lay.selvage > 0
        ? [0, lay.rollWidth - lay.selvage].map((y) => (
            <rect key={y} x={0} y={y} width={end} height={lay.selvage} className="selvage" />
          ))
        : null}
    </>
  );
}

/** From the cut end through the pieces that set the length, to the end of the lay. */
function Chain({ lay, shown, view }: ChainProps) {
  const boxes = (lay.chain?.copies ?? []).flatMap(({ piece, copy }) => {
    const one = shown.find((other) => other.piece === piece && other.copy === copy);
    return one ? [bounds(one.outline)] : [];
  });
  if (boxes.length === 0) return null;
  const at = (x: number, y: number) => {
    const p = view.at({ x, y });
    return `${p.x} ${p.y}`;
  };
  // Across each piece below its name; a step where the next lies at another height.
  const through = boxes.map((box) => {
    const y = box.minY + 0.3 * (box.maxY - box.minY);
    return `L${at(box.minX, y)}L${at(box.maxX, y)}`;
  });
  return <path d={`M${through.join('').slice(1)}`} className="chain-line" />;
}

interface ChainProps {
  readonly lay: LayPlan;
  readonly shown: LayOnPage['drawn'];
  readonly view: View;
}

function Length({ view, lay, text }: { readonly view: View; readonly lay: LayPlan; readonly text: string }) {
  const end = view.at({ x: lay.length.value, y: 0 });
  const start = view.at({ x: 0, y: 0 });
  return (
    <>
      <path
        d={`M${start.x} ${start.y + 16}H${end.x}M${start.x} ${start.y + 11}v10M${end.x} ${start.y + 11}v10`}
        className="size-line"
      />
      <text x={(start.x + end.x) / 2} y={start.y + 36} textAnchor="middle">
        {text}
      </text>
    </>
  );
}

/** Dragging by mouse, pen or finger; a finger drags only the piece already chosen, so that the page still scrolls. */
function useDrag(page: LayOnPage) {
  const [now, setNow] = useState<Drag | null>(null);
  const latest = useRef<Drag | null>(null);
  const set = (drag: Drag | null) => {
    latest.current = drag;
    setNow(drag);
  };
  const handlers = (index: number, view: View) => ({
    onPointerDown: (event: PointerEvent<SVGGElement>) => {
      const wasChosen = page.chosen === index;
      event.currentTarget.focus({ preventScroll: true });
      if (event.button !== 0 || (event.pointerType === 'touch' && !wasChosen)) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      set({ index, from: { x: event.clientX, y: event.clientY }, to: page.places[index]!, moved: false });
    },
    onPointerMove: (event: PointerEvent<SVGGElement>) => {
      const drag = latest.current;
      if (!drag || drag.index !== index) return;
      const [dx, dy] = [event.clientX - drag.from.x, event.clientY - drag.from.y];
      if (!drag.moved && Math.hypot(dx, dy) < 3) return;
      const place = page.places[index]!;
      const free = { ...place, x: place.x + dx / view.scale, y: place.y - dy / view.scale };
      const to = snapped(page.frame, page.drawn, index, free, REACH / view.scale);
      set({ ...drag, to, moved: true });
    },
    onPointerUp: () => {
      const drag = latest.current;
      set(null);
      if (drag?.moved) page.put(drag.index, drag.to);
    },
    onPointerCancel: () => set(null),
  });
  return { now, handlers };
}

/** The next piece, or the one before, is chosen by having the focus. */
function focusBeside(from: Element, next: boolean): void {
  const all = [...(from.parentElement?.querySelectorAll<SVGGElement>('.laid') ?? [])];
  const at = all.indexOf(from as SVGGElement);
  all[(at + (next ? 1 : all.length - 1)) % all.length]?.focus();
}

function onKey(event: KeyboardEvent<SVGGElement>, page: LayOnPage, index: number, units: 'in' | 'mm'): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const place = page.places[index]!;
  const step = arrowStep(units, event.shiftKey);
  const way = arrowWay(event.key);
  const key = event.key.toLowerCase();
  if (key === 'n' || key === 'p') focusBeside(event.currentTarget, key === 'n');
  else if (way) page.put(index, { ...place, x: place.x + way.x * step, y: place.y - way.y * step });
  else if (key === 'r') page.put(index, turned(page.frame, place, { turn: nextTurn(page.frame, place) }));
  else if (key === 'f') page.put(index, turned(page.frame, place, { flipped: !place.flipped }));
  else if (key === 'h') page.hold((one, k) => (k === index ? !one.held : one.held));
  else return;
  event.preventDefault();
}
