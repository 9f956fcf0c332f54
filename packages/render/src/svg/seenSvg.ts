import type { SeenPart } from '@panewright/drawing';
import { escapeXml } from './xml.ts';

const rounded = (value: number): string => String(Number(value.toFixed(2)));

interface Dot {
  readonly x: number;
  readonly y: number;
}

const pathOf = (rings: readonly (readonly Dot[])[]): string =>
  rings.map((ring) => `M${ring.map(({ x, y }) => `${rounded(x)} ${rounded(y)}`).join('L')}Z`).join('');

/**
 * A finished panel as an SVG picture in real millimetres on a plain ground, a little of it round the panel.
 *
 * @source sources.md#svg2-paths
 */
export function seenSvg(parts: readonly SeenPart[], title: string): string {
  const dots = parts.flatMap(({ rings }) => rings.flat());
  const [xs, ys] = [dots.map(({ x }) => x), dots.map(({ y }) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const pad = 0.06 * (right - left);
  const [width, height] = [right - left + 2 * pad, high - low + 2 * pad];
  const onPage = ({ x, y }: Dot): Dot => ({ x: x - left + pad, y: high + pad - y });
  const size = `width="${rounded(width)}mm" height="${rounded(height)}mm" viewBox="0 0 ${rounded(width)} ${rounded(height)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size}>`,
    `<title>${escapeXml(title)}</title>`,
    `<rect width="${rounded(width)}" height="${rounded(height)}" fill="${GROUND}"/>`,
    ...parts.map((part) => element(part.part === 'opening' ? glass(part) : part, width, onPage)),
    '</svg>\n',
  ].join('\n');
}

/** The opening as panes: what is behind an open cloth. */
const glass = ({ part, rings }: SeenPart): SeenPart => ({
  part,
  rings,
  fill: { colour: '#7f929b', share: 1 },
});

/** The wall round it. */
const GROUND = '#c9cfd2';

function element(part: SeenPart, width: number, onPage: (dot: Dot) => Dot): string {
  const [weight, dashes] = [width / 700, [width / 120, width / 170]];
  const rings = part.rings.map((ring) => ring.map(onPage));
  const fill = part.fill
    ? `fill="${part.fill.colour}" fill-opacity="${rounded(part.fill.share)}" fill-rule="evenodd"`
    : 'fill="none"';
  const line = part.line
    ? ` stroke="${part.line.colour}" stroke-width="${rounded(weight)}"${part.line.dashed ? ` stroke-dasharray="${dashes.map(rounded).join(' ')}"` : ''}`
    : '';
  return `<path class="${part.part}" d="${pathOf(rings)}" ${fill}${line}/>`;
}
