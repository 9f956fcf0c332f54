import type { ReactNode } from 'react';
import {
  bounds,
  type HoldPlan,
  moveOutline,
  movePoint,
  type Opening,
  type PanelPlan,
  type PatternMember,
  type PatternPlan,
} from '../contract.ts';
import { Drawing } from '../drawing/Drawing.tsx';
import { Obstructions } from '../drawing/Obstructions.tsx';
import { motionTransform, outlinePath } from '../drawing/outlinePath.ts';
import { type Box, boxAround, type View, type XY } from '../drawing/view.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly panel: PanelPlan;
  readonly pattern: PatternPlan;
  readonly member: PatternMember;
  readonly obstructions: Opening['obstructions'];
  /** Hold points and pockets are drawn where given. */
  readonly hold?: HoldPlan | undefined;
  readonly stale: boolean;
  /** Stands over the drawing in place of the plain numbers. */
  readonly marks?: ((view: View) => ReactNode) | undefined;
  /** In place of the key of lines. */
  readonly caption?: ReactNode;
  /** Number of the hold point that is pointed at. */
  readonly active?: number | null;
}

const PAD = { x: 64, top: 54, bottom: 54 };
const NARROW_PAD = { x: 52, top: 24, bottom: 54 };

/** The panel as it sits on its opening, seen from outside: cloth, finished edge, band, stitch line, hold points. */
export function PanelDrawing({
  panel,
  pattern,
  member,
  obstructions,
  hold,
  stale,
  marks,
  caption,
  active,
}: Props) {
  const w = useWords();
  const label = hold ? w.drawing.hold(panel.pattern, hold.points.length) : w.drawing.panel(panel.pattern);
  const finished = bounds(moveOutline(member.place, panel.finished));
  return (
    <Drawing
      box={boxAround([moveOutline(member.place, panel.cut)])}
      label={label}
      pad={PAD}
      narrowPad={NARROW_PAD}
      stale={stale}
      caption={caption ?? <PanelKey panel={panel} />}
      {...(marks ? { over: marks } : {})}
    >
      {(view) => (
        <>
          <g transform={view.world}>
            <g transform={motionTransform(member.place)}>
              <path d={outlinePath(panel.cut)} className="cut-line" />
              <path d={outlinePath(panel.finished)} className="panel-face" />
              {panel.band ? (
                <path d={`${outlinePath(panel.finished)}${outlinePath(panel.band)}`} className="panel-band" />
              ) : null}
              <path d={outlinePath(panel.finished)} className="finished-line" />
              {panel.stitch.map((line) => (
                <path key={outlinePath(line)} d={outlinePath(line)} className="stitch-line" />
              ))}
              <path d={outlinePath(pattern.outline)} className="traced-line" />
              {hold?.points.map((point) => (
                <g key={point.number}>
                  {point.pocket && (
                    <path
                      d={outlinePath(point.pocket)}
                      className={`pocket-line${active === point.number ? ' pocket-active' : ''}`}
                    />
                  )}
                  <circle
                    cx={point.centre.x}
                    cy={point.centre.y}
                    r={point.cavity.radius}
                    className="magnet-line"
                  />
                </g>
              ))}
            </g>
            <Obstructions obstructions={obstructions} />
          </g>
          <Sizes view={view} box={finished} width={finished.width} height={finished.height} />
          {(marks ? [] : (hold?.points ?? [])).map((point) => (
            <PointNumber
              key={point.number}
              number={point.number}
              at={view.at(movePoint(member.place, point.centre))}
            />
          ))}
        </>
      )}
    </Drawing>
  );
}

function PanelKey({ panel }: { readonly panel: PanelPlan }) {
  const w = useWords();
  const key = w.panels.key;
  const lines: readonly (readonly [string, string])[] = [
    ['traced', key.traced],
    ['finished', key.finished],
    ...(panel.stitch.length > 0 ? ([['stitch', key.stitch]] as const) : []),
    ['cut', key.cut],
  ];
  return (
    <span className="drawing-key">
      {lines.map(([line, name]) => (
        <span key={line}>
          <svg width={26} height={8} aria-hidden="true">
            <path d="M0 4H26" className={`${line}-line`} />
          </svg>{' '}
          {name}
        </span>
      ))}
    </span>
  );
}

interface SizesProps {
  readonly view: View;
  readonly box: Box;
  readonly width: number;
  readonly height: number;
}

/** Finished width below and height beside. */
function Sizes({ view, box, width, height }: SizesProps) {
  const units = useUnits();
  const a = view.at({ x: box.minX, y: box.minY });
  const b = view.at({ x: box.maxX, y: box.maxY });
  return (
    <g className="sizes">
      <path
        d={`M${a.x} ${a.y + 22}H${b.x}M${a.x} ${a.y + 17}v10M${b.x} ${a.y + 17}v10`}
        className="size-line"
      />
      <text x={(a.x + b.x) / 2} y={a.y + 42} textAnchor="middle">
        {showLength(width, units)}
      </text>
      <path
        d={`M${b.x + 22} ${a.y}V${b.y}M${b.x + 17} ${a.y}h10M${b.x + 17} ${b.y}h10`}
        className="size-line"
      />
      <text
        x={b.x + 40}
        y={(a.y + b.y) / 2}
        textAnchor="middle"
        transform={`rotate(-90 ${b.x + 40} ${(a.y + b.y) / 2})`}
      >
        {showLength(height, units)}
      </text>
    </g>
  );
}

function PointNumber({ number, at }: { readonly number: number; readonly at: XY }) {
  return (
    <g className="point-number">
      <circle cx={at.x} cy={at.y} r={11} />
      <text x={at.x} y={at.y} textAnchor="middle" dominantBaseline="central">
        {number}
      </text>
    </g>
  );
}
