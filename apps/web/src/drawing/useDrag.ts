import { type PointerEvent, useRef } from 'react';
import type { View, XY } from './view.ts';

interface Drag {
  readonly view: View;
  /** Where the thing is, mm. */
  readonly at: XY;
  /** Told where it would be, mm, reckoned from where the drag began. */
  readonly go: (to: XY) => void;
  readonly end: () => void;
}

/** What a part of a drawing needs to be dragged in the drawing's own millimetres. */
export function useDrag({ view, at, go, end }: Drag) {
  const from = useRef<{ readonly pointer: XY; readonly at: XY } | null>(null);
  const stop = () => {
    if (!from.current) return;
    from.current = null;
    end();
  };
  return {
    onPointerDown: (event: PointerEvent<Element>) => {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      from.current = { pointer: { x: event.clientX, y: event.clientY }, at };
    },
    onPointerMove: (event: PointerEvent<Element>) => {
      if (!from.current) return;
      const { pointer, at: start } = from.current;
      go({
        x: start.x + (event.clientX - pointer.x) / view.scale,
        y: start.y - (event.clientY - pointer.y) / view.scale,
      });
    },
    onPointerUp: stop,
    onPointerCancel: stop,
  };
}
