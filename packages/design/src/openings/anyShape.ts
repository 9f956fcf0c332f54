import { bounds, type Outline, type Point, point } from '@panewright/geometry';
import { type Figure, figure, type OriginCode } from '../plan/figure.ts';
import type { OpeningCorner, OpeningShape } from '../plan/plan.ts';
import { nameParts } from './nameParts.ts';

/** How well each segment of an outline is known, mm, in the outline's order. */
export interface EdgeSpread {
  readonly sigma: number;
  readonly radiusSigma?: number;
}

interface Known {
  readonly inputs: readonly string[];
  readonly by: OriginCode;
  readonly spread: readonly EdgeSpread[];
  readonly sizeSigma?: { readonly width: number; readonly height: number } | undefined;
}

/**
 * The shape of an opening of any outline: names for its edges and corners, its size, its spread.
 *
 * The size's standard deviation, where it was not stated, is that of the two outermost edges taken as independent.
 */
export function anyShape(
  outline: Outline,
  known: Known,
): Omit<OpeningShape, 'readings' | 'misclosure' | 'redundancy'> {
  const { inputs, by, spread } = known;
  const { edgeNames, corners } = nameParts(outline);
  const box = bounds(outline);
  const outermost = (at: (p: Point) => number) =>
    Math.hypot(
      sigmaAt(outline, spread, at),
      sigmaAt(outline, spread, (p) => -at(p)),
    );
  const size = (value: number, sigma: number): Figure =>
    figure(value, 'mm', 'measured', by, inputs, { sigma });
  return {
    outline,
    edgeNames,
    width: size(box.width, known.sizeSigma?.width ?? outermost((p) => p.x)),
    height: size(box.height, known.sizeSigma?.height ?? outermost((p) => p.y)),
    corners: corners.map(({ name, corner, at }): OpeningCorner => {
      const radiusSigma = corner.round ? spread[corner.segment]!.radiusSigma : undefined;
      return {
        name,
        at,
        radius: figure(
          corner.radius,
          'mm',
          'measured',
          by,
          inputs,
          radiusSigma === undefined ? {} : { sigma: radiusSigma },
        ),
        outOfSquare: 90 - (corner.turn * 180) / Math.PI,
      };
    }),
    sigma: Math.max(...spread.map(({ sigma }) => sigma)),
  };
}

/** Spread of the segment that reaches farthest in a direction. */
function sigmaAt(outline: Outline, spread: readonly EdgeSpread[], reach: (p: Point) => number): number {
  let farthest = -Infinity;
  let sigma = 0;
  let from = outline.segments.at(-1)!.to;
  outline.segments.forEach((segment, k) => {
    const box = bounds({ segments: [segment, { kind: 'line', to: from }] });
    const corners = [point(box.minX, box.minY), point(box.maxX, box.maxY)];
    const most = Math.max(...corners.map(reach));
    // Of two that reach as far (a corner's two edges) the less known counts.
    if (most > farthest + 1e-6) [farthest, sigma] = [most, spread[k]!.sigma];
    else if (most > farthest - 1e-6) sigma = Math.max(sigma, spread[k]!.sigma);
    from = segment.to;
  });
  return sigma;
}
