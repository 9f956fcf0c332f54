import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { Pixel } from '../contract.ts';
import { arrowWay } from '../drawing/arrowKeys.ts';
import { useWords } from '../text/useWords.ts';
import type { PhotoScale } from './PhotoSheet.tsx';
import type { PhotoWork } from './photoWork.ts';

/** Dots the cross goes at a press of an arrow key; with Shift the larger. */
const STEP = { fine: 4, coarse: 32 } as const;
/** A press that moves less than this is a tap, more is a look round, dots. */
const STILL = 8;

/** Points on the line, set by tapping, or by a cross that the keys move. */
export function TapOverlay({ work, size }: { readonly work: PhotoWork; readonly size: PhotoScale }) {
  const w = useWords();
  const taps = useStore(work.store, (state) => state.taps) ?? [];
  const { scale, width, height } = size;
  const [cross, setCross] = useState<Pixel>({ x: width / 2, y: height / 2 });
  const pressed = useRef<Pixel | null>(null);
  const add = ({ x, y }: Pixel) => work.set({ taps: [...taps, { x: x / scale - 0.5, y: y / scale - 0.5 }] });
  const dotsAt = (event: PointerEvent): Pixel => {
    const box = event.currentTarget.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const press = (event: KeyboardEvent) => {
    const way = arrowWay(event.key);
    const step = event.shiftKey ? STEP.coarse : STEP.fine;
    if (way)
      setCross({
        x: Math.min(width, Math.max(0, cross.x + way.x * step)),
        y: Math.min(height, Math.max(0, cross.y + way.y * step)),
      });
    else if (event.key === 'Enter') add(cross);
    else if (event.key === 'Backspace') work.set({ taps: taps.slice(0, -1) });
    else return;
    event.preventDefault();
  };
  const dots = taps.map(({ x, y }) => ({ x: (x + 0.5) * scale, y: (y + 0.5) * scale }));
  return (
    // A place for a pointer and for keys at once: no role of HTML fits, so it is called what it is.
    <svg
      className="photo-over photo-tapping"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="application"
      aria-label={w.photo.taps.region}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: as an application it takes the keys
      tabIndex={0}
      onKeyDown={press}
      onPointerDown={(event) => {
        pressed.current = dotsAt(event);
      }}
      onPointerUp={(event) => {
        const [from, to] = [pressed.current, dotsAt(event)];
        pressed.current = null;
        if (!from || Math.hypot(to.x - from.x, to.y - from.y) > STILL) return;
        setCross(to);
        add(to);
      }}
    >
      <polygon points={dots.map(({ x, y }) => `${x},${y}`).join(' ')} className="photo-taps" />
      {dots.map(({ x, y }, k) => (
        // Points are known by their place in the order.
        <g key={k}>
          <circle cx={x} cy={y} r={5} className="photo-joint" />
          <text x={x + 9} y={y - 9} className="photo-label">
            {k + 1}
          </text>
        </g>
      ))}
      <path d={`M${cross.x - 14} ${cross.y}h28M${cross.x} ${cross.y - 14}v28`} className="photo-cross" />
    </svg>
  );
}
