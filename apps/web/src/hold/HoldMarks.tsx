import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import {
  type HoldPoint,
  invert,
  movePoint,
  nearest,
  nearestEdgePlace,
  placeAlong,
  point,
  pointAt,
  type Rigid,
  type UnitName,
} from '../contract.ts';
import { arrowStep, arrowWay } from '../drawing/arrowKeys.ts';
import type { View, XY } from '../drawing/view.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength, showNumber } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import type { PointRef } from './handEdits.ts';
import type { HandPlacing } from './useHandPlacing.ts';
import type { HoldView, PointView } from './useHoldView.ts';

interface Props {
  readonly view: View;
  readonly place: Rigid;
  readonly held: HoldView;
  readonly hand: HandPlacing | null;
  readonly active: number | null;
  readonly setActive: (number: number | null) => void;
}

/** The margin as it stands beneath a point: a figure, or a dash where nothing is asked. */
export const marginText = (low: number | null): string =>
  low === null ? '—' : low >= 10 ? '10+' : showNumber(low, 2);

/** The hold points over the drawing: how each stands by its shape, colour and number; each slides along its edge. */
export function HoldMarks({ view, place, held, hand, active, setActive }: Props) {
  return (
    <div className="hold-marks">
      {held.points.map((one, index) => {
        const plan = held.held.hold.points[index]!;
        const ref = hand && hand.elsewhere === null ? (hand.refs[index] ?? null) : null;
        const common = { point: one, plan, view, place, active: active === one.number, setActive };
        const key = plan.rule ? `${plan.rule.on} ${plan.rule.index}` : `by hand ${one.number}`;
        return ref && hand ? (
          <SlidingMark key={key} {...common} held={held} hand={hand} pointRef={ref} />
        ) : (
          <StillMark key={key} {...common} />
        );
      })}
    </div>
  );
}

interface MarkProps {
  readonly point: PointView;
  readonly plan: HoldPoint;
  readonly view: View;
  readonly place: Rigid;
  readonly active: boolean;
  readonly setActive: Props['setActive'];
}

const markClass = ({ point: one, active }: Pick<MarkProps, 'point' | 'active'>): string =>
  `hold-mark hold-${one.standing}${active ? ' hold-active' : ''}`;

function StillMark({ point: one, plan, view, place, active, setActive }: MarkProps) {
  const at = view.at(movePoint(place, plan.centre));
  return (
    <div
      className={markClass({ point: one, active })}
      style={{ left: at.x, top: at.y }}
      onPointerEnter={() => setActive(one.number)}
      onPointerLeave={() => setActive(null)}
    >
      <MarkFace point={one} />
    </div>
  );
}

interface SlidingProps extends MarkProps {
  readonly held: HoldView;
  readonly hand: HandPlacing;
  readonly pointRef: PointRef;
}

/** A point to be dragged along its edge, or moved by the arrow keys. */
function SlidingMark({ held, hand, pointRef, ...mark }: SlidingProps) {
  const { point: one, plan, view, place, setActive } = mark;
  const w = useWords();
  const units = useUnits();
  const { panel } = held.held;
  const drag = useRef<{ readonly ref: PointRef; readonly hand: HandPlacing; readonly grip: XY } | null>(null);
  const [dragged, setDragged] = useState<XY | null>(null);
  const home = view.at(movePoint(place, plan.centre));
  const shown = dragged ?? home;
  const toPanel = ({ x, y }: XY) => {
    const origin = view.at({ x: 0, y: 0 });
    return movePoint(invert(place), point((x - origin.x) / view.scale, (origin.y - y) / view.scale));
  };
  const begin = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.focus();
    const pointer = pointerAt(event);
    // The whole drag is reckoned from where it began, so that it is one change however often it is drawn.
    drag.current = { ref: pointRef, hand, grip: { x: pointer.x - home.x, y: pointer.y - home.y } };
    setActive(one.number);
  };
  const go = (event: PointerEvent<HTMLElement>) => {
    const from = drag.current;
    if (!from) return;
    const pointer = pointerAt(event);
    const at = toPanel({ x: pointer.x - from.grip.x, y: pointer.y - from.grip.y });
    const to = snapped(nearestEdgePlace(panel, at), units);
    if (!to || from.hand.move(from.ref, to)) return;
    const on = pointAt(panel.finished, nearest(panel.finished, at).s as never);
    const depth = Math.hypot(plan.centre.x - plan.edgePoint.x, plan.centre.y - plan.edgePoint.y);
    const off = Math.hypot(at.x - on.x, at.y - on.y) || 1;
    const t = depth / off;
    setDragged(view.at(movePoint(place, point(on.x + (at.x - on.x) * t, on.y + (at.y - on.y) * t))));
  };
  const end = () => {
    if (!drag.current) return;
    drag.current = null;
    setDragged(null);
    hand.settle();
  };
  const press = (event: KeyboardEvent<HTMLElement>) => {
    if (event.key === 'Delete' || event.key === 'Backspace') hand.remove(pointRef);
    else if (event.key === 'Home' && pointRef.rule) hand.toRule(pointRef);
    else {
      const way = arrowWay(event.key);
      if (!way) return;
      // To the right or up goes on along the edge, to the left or down back.
      const to = placeAlong(panel, pointRef.place, (way.x - way.y) * arrowStep(units, event.shiftKey));
      if (to) hand.move(pointRef, to);
    }
    event.preventDefault();
  };
  const standing = w.holding.standing[one.standing];
  const heard = w.holding.hand.heard(
    showLength(pointRef.place.at, units),
    marginText(one.margin?.low ?? null),
    standing,
  );
  return (
    <div
      role="slider"
      tabIndex={0}
      aria-label={w.holding.hand.point(one.number, one.place)}
      aria-valuemin={0}
      aria-valuemax={Math.round(pointRef.place.length)}
      aria-valuenow={Math.round(pointRef.place.at)}
      aria-valuetext={heard}
      className={`${markClass(mark)} hold-slides`}
      style={{ left: shown.x, top: shown.y }}
      onPointerDown={begin}
      onPointerMove={go}
      onPointerUp={end}
      onPointerCancel={end}
      onPointerEnter={() => setActive(one.number)}
      onPointerLeave={() => drag.current ?? setActive(null)}
      onFocus={() => setActive(one.number)}
      onBlur={() => {
        setActive(null);
        hand.settle();
      }}
      onKeyDown={press}
    >
      <MarkFace point={one} />
    </div>
  );
}

/** In the dots of the drawing the mark lies over. */
function pointerAt(event: PointerEvent<HTMLElement>): XY {
  const frame = event.currentTarget.offsetParent?.getBoundingClientRect();
  return { x: event.clientX - (frame?.left ?? 0), y: event.clientY - (frame?.top ?? 0) };
}

/** To the nearest sixteenth of an inch or millimetre along the edge. */
function snapped(place: ReturnType<typeof nearestEdgePlace>, units: UnitName) {
  if (!place) return null;
  const step = arrowStep(units, false);
  const at = Math.min(Math.max(0, Math.round(place.at / step) * step), place.length);
  return { ...place, at, t: place.t - place.at + at };
}

/** Number in its shape, margin beneath it. */
function MarkFace({ point: one }: { readonly point: PointView }) {
  return (
    <>
      <span className="hold-number">{one.number}</span>
      <span className="hold-margin">{marginText(one.margin?.low ?? null)}</span>
    </>
  );
}

/** What the shapes and numbers say, below the drawing. */
export function MarksKey({ asked }: { readonly asked: number }) {
  const w = useWords();
  const key = w.holding.marksKey;
  const kinds = [
    ['holds', key.holds(showNumber(asked, 1))],
    ['doubtful', key.doubtful],
    ['gives', key.gives],
  ] as const;
  return (
    <span className="drawing-key">
      {kinds.map(([kind, text]) => (
        <span key={kind}>
          <span className={`hold-mark hold-${kind} hold-key`} aria-hidden="true">
            <span className="hold-number">1</span>
          </span>{' '}
          {text}
        </span>
      ))}
      <span>{key.number}</span>
    </span>
  );
}
