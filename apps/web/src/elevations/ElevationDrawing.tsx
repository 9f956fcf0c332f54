import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { Elevation, Finding, Opening, OpeningPlan } from '../contract.ts';
import { arrowStep, arrowWay } from '../drawing/arrowKeys.ts';
import { Drawing } from '../drawing/Drawing.tsx';
import { outlinePath } from '../drawing/outlinePath.ts';
import { boxAround, type View, type XY } from '../drawing/view.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly side: Elevation;
  readonly openings: readonly Opening[];
  readonly plans: readonly OpeningPlan[];
  readonly findings: readonly Finding[];
  /** An image under the drawing, for as long as the page is open; it is not kept. */
  readonly photo: string | null;
  readonly move: (opening: string, to: XY) => void;
  readonly href: (opening: string) => string;
}

/** A side with its openings in place: numbered, what needs the maker marked, to be dragged or moved by arrow keys. */
export function ElevationDrawing({ side, openings, plans, findings, photo, move, href }: Props) {
  const w = useWords();
  const box = {
    minX: Math.min(0, ...side.parts.map(({ x }) => x)),
    minY: Math.min(0, ...side.parts.map(({ y }) => y)),
    maxX: Math.max(side.width, ...side.parts.map(({ x, width }) => x + width)),
    maxY: Math.max(side.height, ...side.parts.map(({ y, height }) => y + height)),
  };
  return (
    <Drawing box={box} label={w.elevations.drawing(side.name, side.places.length)} tall={0.5} handled>
      {(view) => (
        <>
          {photo ? <Photo photo={photo} side={side} view={view} /> : null}
          <g transform={view.world}>
            <rect width={side.width} height={side.height} rx={60} className="side-body" />
            {side.parts.map(({ kind, x, y, width, height }, index) => (
              <rect
                // A part is known by its place in the list.
                key={index}
                {...{ x, y, width, height }}
                rx={kind === 'round' ? width / 2 : 20}
                ry={kind === 'round' ? height / 2 : 20}
                className="side-part"
              />
            ))}
          </g>
          {side.places.map((place) => {
            const opening = openings.find(({ id }) => id === place.opening);
            if (!opening) return null;
            return (
              <Placed
                key={place.opening}
                opening={opening}
                plan={plans.find((one) => one.opening === place.opening)}
                at={place}
                needs={needsOf(findings, place.opening)}
                view={view}
                move={(to) => move(place.opening, to)}
                href={href(place.opening)}
              />
            );
          })}
        </>
      )}
    </Drawing>
  );
}

const needsOf = (findings: readonly Finding[], opening: string): boolean =>
  findings.some(
    ({ where, severity }) => where.opening === opening && (severity === 'stop' || severity === 'doubt'),
  );

function Photo({
  photo,
  side,
  view,
}: {
  readonly photo: string;
  readonly side: Elevation;
  readonly view: View;
}) {
  const { x, y } = view.at({ x: 0, y: side.height });
  return (
    <image
      href={photo}
      x={x}
      y={y}
      width={side.width * view.scale}
      height={side.height * view.scale}
      preserveAspectRatio="none"
      opacity={0.45}
    />
  );
}

interface PlacedProps {
  readonly opening: Opening;
  readonly plan: OpeningPlan | undefined;
  readonly at: XY;
  readonly needs: boolean;
  readonly view: View;
  readonly move: (to: XY) => void;
  readonly href: string;
}

/** What an opening takes before it is measured, mm. */
const [SKETCH_WIDE, SKETCH_HIGH] = [500, 350];

function Placed({ opening, plan, at, needs, view, move, href }: PlacedProps) {
  const w = useWords();
  const units = useUnits();
  const [, go] = useLocation();
  const [dragged, setDragged] = useState<XY | null>(null);
  const from = useRef<{ readonly pointer: XY; readonly at: XY } | null>(null);
  const place = dragged ?? at;
  const shape = plan?.shape?.outline;
  const box = shape ? boxAround([shape]) : { minX: 0, minY: 0, maxX: SKETCH_WIDE, maxY: SKETCH_HIGH };
  const [x, y] = [place.x - box.minX, place.y - box.minY];
  const label = view.at({ x: place.x + (box.maxX - box.minX) / 2, y: place.y + (box.maxY - box.minY) / 2 });
  const whereTo = (event: PointerEvent): XY | null => {
    if (!from.current) return null;
    const { pointer, at: start } = from.current;
    return {
      x: Math.round(start.x + (event.clientX - pointer.x) / view.scale),
      y: Math.round(start.y - (event.clientY - pointer.y) / view.scale),
    };
  };
  const step = arrowStep(units, true);
  const press = (event: KeyboardEvent) => {
    const way = arrowWay(event.key);
    if (event.key === 'Enter') go(href);
    else if (way && !event.altKey) move({ x: at.x + way.x * step, y: at.y - way.y * step });
    else return;
    event.preventDefault();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: an HTML button cannot stand inside a drawing
    <g
      role="button"
      tabIndex={0}
      aria-label={w.elevations.placed(w.openings.title(opening.id, opening.name), needs)}
      className={`side-opening${needs ? ' side-needs' : ''}`}
      onKeyDown={press}
      onDoubleClick={() => go(href)}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        from.current = { pointer: { x: event.clientX, y: event.clientY }, at };
      }}
      onPointerMove={(event) => {
        const to = whereTo(event);
        if (to) setDragged(to);
      }}
      onPointerUp={(event) => {
        const to = whereTo(event);
        from.current = null;
        setDragged(null);
        if (to && (to.x !== Math.round(at.x) || to.y !== Math.round(at.y))) move(to);
      }}
      onPointerCancel={() => {
        from.current = null;
        setDragged(null);
      }}
    >
      <g transform={`${view.world} translate(${x} ${y})`}>
        {shape ? (
          <path d={outlinePath(shape)} className="side-outline" />
        ) : (
          <rect width={SKETCH_WIDE} height={SKETCH_HIGH} rx={40} className="side-outline line-sketch" />
        )}
      </g>
      <text x={label.x} y={label.y} textAnchor="middle" dominantBaseline="central">
        {opening.id}
        {needs ? ' !' : ''}
      </text>
    </g>
  );
}
