import type { ReactNode } from 'react';

/** A small drawing beside the words that say the same. It has no letters, so that it needs no language. */
function Help({ children }: { readonly children: ReactNode }) {
  return (
    <svg className="help-drawing" viewBox="0 0 160 84" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}

/** One corner of an opening: the tape ends where the straight sides would meet, or farthest over the rounding. */
export function DiagonalHelp({ to }: { readonly to: 'sharp' | 'round' }) {
  const end = to === 'sharp' ? { x: 132, y: 14 } : { x: 122, y: 21 };
  return (
    <Help>
      <path className="help-opening" d="M14 14H98A34 34 0 0 1 132 48V84H14Z" />
      <path className="help-line" d="M14 14H98A34 34 0 0 1 132 48V84" />
      <path className="help-thin" d="M98 14H146M132 48V2" />
      <path className="help-tape" d={`M20 84L${end.x} ${end.y}`} />
      <circle className="help-end" cx={end.x} cy={end.y} r={4.5} />
    </Help>
  );
}

/** A point of the edge, taped from two marks. */
export function MarksHelp() {
  return (
    <Help>
      <path className="help-line" d="M70 78C58 44 76 20 112 12S150 30 148 52" />
      <path className="help-tape" d="M14 20L80 26M14 72L80 26" />
      <path className="help-mark" d="M8 20H20M14 14V26M8 72H20M14 66V78" />
      <circle className="help-end" cx={80} cy={26} r={4.5} />
    </Help>
  );
}

/** Section, outside above: the cloth lies on the gasket, and so stands off the glass. */
export function StandOffHelp() {
  return (
    <Help>
      <rect className="help-opening" x={10} y={50} width={140} height={16} />
      <path className="help-line" d="M10 50H150M10 66H150" />
      <path className="help-solid" d="M10 26H30V70H10ZM130 26H150V70H130Z" />
      <path className="help-tape" d="M4 24.5H156" />
      <path className="help-thin help-arrow" d="M80 28V46M76 33L80 27L84 33M76 42L80 48L84 42" />
    </Help>
  );
}

/** Section, outside above: the marked pole of each magnet of a pair looks away from the glass, or to it. */
export function PolesHelp() {
  return (
    <Help>
      <rect className="help-opening" x={10} y={36} width={140} height={12} />
      <path className="help-line" d="M10 36H150M10 48H150" />
      <path className="help-line help-solid-light" d="M58 16H102V34H58ZM58 50H102V68H58Z" />
      <circle className="help-end" cx={80} cy={16} r={4.5} />
      <circle className="help-mark" cx={80} cy={68} r={4.5} />
      <path className="help-thin help-arrow" d="M80 10V4M76 8L80 3L84 8M80 74V80M76 76L80 81L84 76" />
      <path className="help-tape" d="M10 14H56M104 14H150" />
    </Help>
  );
}
