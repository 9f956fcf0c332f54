import type { StackSection } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength, showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import type { HoldView } from './useHoldView.ts';

/** Sections through the stack, to scale: at a corner and along an edge, where they differ. */
export function StackSections({ view }: { readonly view: HoldView }) {
  const w = useWords();
  const t = w.holding.section;
  const { corner, edge } = view.held.sections;
  const same = Math.abs(corner.gap - edge.gap) < 0.005;
  return (
    <section>
      <h3>{t.title}</h3>
      {corner.curved ? <p className="needs">{t.curved}</p> : null}
      <Section section={same ? edge : corner} title={same ? '' : t.corner} />
      {same ? <p className="about">{t.same}</p> : <Section section={edge} title={t.edge} />}
    </section>
  );
}

/** In dots: the whole width, where the drawing begins and how wide it is, one line of words, and the room above. */
const WIDTH = 560;
const LEFT = 24;
const DRAWN = 210;
const LINE = 22;
const TOP = 26;

function Section({ section, title }: { readonly section: StackSection; readonly title: string }) {
  const w = useWords();
  const t = w.holding.section;
  const units = useUnits();
  const gap = showLength(section.gap, units, 32);
  const scale = scaleOf(section);
  const rows = labelPlaces(section, scale);
  const height = Math.max(TOP + section.total * scale, (rows.at(-1) ?? 0) + LINE / 2) + 26;
  const bottom = TOP + section.total * scale;
  const unsure = section.gapHigh - section.gapLow > 0.05;
  return (
    <figure className="section">
      <figcaption>
        {title ? `${title}. ` : ''}
        <b>{t.gap(gap)}</b>
        {unsure
          ? ` (${t.between(showLength(section.gapLow, units, 32), showLength(section.gapHigh, units, 32))})`
          : ''}
      </figcaption>
      <svg
        viewBox={`0 0 ${WIDTH} ${height}`}
        className="stack"
        role="img"
        aria-label={t.label(title || t.title, gap)}
      >
        <text x={LEFT + DRAWN / 2} y={16} textAnchor="middle">
          {t.outside}
        </text>
        <text x={LEFT + DRAWN / 2} y={bottom + 18} textAnchor="middle">
          {t.inside}
        </text>
        <Gap section={section} scale={scale} />
        {section.layers.map((layer, k) => {
          const wide = layer.width === null ? DRAWN : Math.min(DRAWN, layer.width * scale);
          const [y, tall] = [TOP + layer.from * scale, layer.thickness * scale];
          const row = rows[k]!;
          return (
            // Layers have no name of their own; their order is what they are.
            <g key={k} className={`layer layer-${layer.kind}`}>
              <rect x={LEFT + (DRAWN - wide) / 2} y={y} width={wide} height={tall} />
              <path
                d={`M${LEFT + (DRAWN + wide) / 2} ${y + tall / 2}L${LEFT + DRAWN + 30} ${row}h8`}
                className="size-line"
              />
              <text x={LEFT + DRAWN + 44} y={row} dominantBaseline="central">
                {`${t.layers[layer.kind] ?? layer.kind}, ${showSmall(layer.thickness)}`}
              </text>
            </g>
          );
        })}
      </svg>
    </figure>
  );
}

/** Dots for a millimetre: as large as the width allows, and no taller than a page bears. */
function scaleOf({ layers, total }: StackSection): number {
  const widest = Math.max(...layers.map(({ width }) => width ?? 0), 1);
  return Math.min(DRAWN / (1.5 * widest), 260 / Math.max(total, 1), 11);
}

/** Where each layer's words stand: beside it, pushed down where another stands there. */
function labelPlaces({ layers }: StackSection, scale: number): readonly number[] {
  const rows: number[] = [];
  for (const { from, to } of layers) {
    const wanted = TOP + ((from + to) / 2) * scale;
    rows.push(Math.max(wanted, (rows.at(-1) ?? Number.NEGATIVE_INFINITY) + LINE));
  }
  return rows;
}

/** The gap between the magnets, measured at the left of the drawing. */
function Gap({ section: { layers }, scale }: { readonly section: StackSection; readonly scale: number }) {
  const between = layers.filter((layer) => layer.between);
  const from = TOP + (between[0]?.from ?? 0) * scale;
  const to = TOP + (between.at(-1)?.to ?? 0) * scale;
  return <path d={`M8 ${from}V${to}M3 ${from}h10M3 ${to}h10`} className="section-gap" />;
}
