import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { Corners } from '../contract.ts';
import { arrowWay } from '../drawing/arrowKeys.ts';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly corners: Corners;
  /** Of the photo, in its own dots. */
  readonly width: number;
  readonly height: number;
  readonly set: (corners: Corners) => void;
}

/** Four handles on a photo, dragged with the pointer or moved with the arrow keys; with Shift in larger steps. */
export function CornerHandles({ corners, width, height, set }: Props) {
  const w = useWords();
  const held = useRef<number | null>(null);
  const put = (index: number, x: number, y: number) => {
    const within = (value: number, most: number) => Math.min(most, Math.max(0, value));
    const moved = { x: within(x, width), y: within(y, height) };
    set(corners.map((one, at) => (at === index ? moved : one)) as unknown as Corners);
  };
  const move = (event: PointerEvent<SVGGElement>, index: number) => {
    if (held.current !== index) return;
    const svg = event.currentTarget.ownerSVGElement!;
    const box = svg.getBoundingClientRect();
    put(
      index,
      ((event.clientX - box.left) / box.width) * width,
      ((event.clientY - box.top) / box.height) * height,
    );
  };
  const key = (event: KeyboardEvent<SVGGElement>, index: number) => {
    const way = arrowWay(event.key);
    if (!way) return;
    event.preventDefault();
    const step = (event.shiftKey ? 0.02 : 0.002) * width;
    put(index, corners[index]!.x + way.x * step, corners[index]!.y + way.y * step);
  };
  const radius = width / 45;
  return (
    <>
      {corners.map(({ x, y }, index) => (
        // biome-ignore lint/a11y/useSemanticElements: a handle lies in the drawing, where no button can
        <g
          key={w.picture.corners[index]}
          role="button"
          tabIndex={0}
          aria-label={w.picture.corners[index]}
          aria-roledescription={w.picture.handle}
          className="photo-corner"
          onKeyDown={(event) => key(event, index)}
          onPointerDown={(event) => {
            held.current = index;
            event.currentTarget.setPointerCapture(event.pointerId);
          }}
          onPointerMove={(event) => move(event, index)}
          onPointerUp={() => {
            held.current = null;
          }}
        >
          <circle cx={x} cy={y} r={radius} />
          <path
            d={`M${x - radius / 2} ${y}h${radius}M${x} ${y - radius / 2}v${radius}`}
            strokeWidth={radius / 8}
          />
        </g>
      ))}
    </>
  );
}
