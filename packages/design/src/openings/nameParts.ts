import { bounds, edges, type Outline, type Point, point } from '@panewright/geometry';
import { type Corner, cornersAndSides, type Side } from '../panels/cornersAndEdges.ts';

interface NamedCorner {
  readonly name: string;
  readonly corner: Corner;
  /** Where the edges beside it would meet, were it sharp. */
  readonly at: Point;
}

const SIDE_NAMES = ['bottom', 'right', 'top', 'left'] as const;
const CORNER_NAMES = ['bottomLeft', 'bottomRight', 'topRight', 'topLeft'] as const;

/**
 * Names for the segments and corners of any outline. A side is bottom, right, top or left where it alone faces that way
 * (within 45 degrees), else `side` and its number; a corner arc is `corner:` and its corner's name. Numbers run
 * anticlockwise from the corner nearest the bottom left. An outline without corners is one side.
 */
export function nameParts(outline: Outline): {
  readonly edgeNames: readonly string[];
  readonly corners: readonly NamedCorner[];
} {
  const found = cornersAndSides(outline);
  const first = nearestBottomLeft(outline, found.corners);
  const turned = <T>(list: readonly T[]): readonly T[] => [...list.slice(first), ...list.slice(0, first)];
  const [corners, sides] = [turned(found.corners), turned(found.sides)];
  const facing = sides.map(facingOf);
  const sideNames = facing.map((way, k) =>
    way !== null && facing.filter((other) => other === way).length === 1 ? SIDE_NAMES[way]! : `side${k + 1}`,
  );
  const four = sides.length === 4 && SIDE_NAMES.every((name, k) => sideNames[k] === name);
  const named = corners.map((corner, k) => ({
    name: four ? CORNER_NAMES[k]! : String(k + 1),
    corner,
    at: sharpPoint(corner),
  }));
  const edgeNames = edges(outline).map(() => 'side1');
  sides.forEach((side, k) => {
    for (const segment of side.segments) edgeNames[segment] = sideNames[k]!;
  });
  for (const { name, corner } of named) if (corner.round) edgeNames[corner.segment] = `corner:${name}`;
  return { edgeNames, corners: named };
}

function nearestBottomLeft(outline: Outline, corners: readonly Corner[]): number {
  const { minX, minY } = bounds(outline);
  const far = ({ at }: Corner) => Math.hypot(at.x - minX, at.y - minY);
  return corners.reduce((best, corner, k) => (far(corner) < far(corners[best]!) ? k : best), 0);
}

/** Quarter turns from facing down, anticlockwise; null for a side that ends where it begins. */
function facingOf({ from, to }: Side): number | null {
  const [dx, dy] = [to.at.x - from.at.x, to.at.y - from.at.y];
  if (Math.hypot(dx, dy) < 1e-6) return null;
  return (Math.round(Math.atan2(dy, dx) / (Math.PI / 2)) + 4) % 4;
}

function sharpPoint({ at, inward, turn, radius, round }: Corner): Point {
  if (!round || Math.abs(turn) > 0.95 * Math.PI) return at;
  const out = radius / Math.cos(turn / 2) - radius;
  const way = turn > 0 ? inward + Math.PI : inward;
  return point(at.x + out * Math.cos(way), at.y + out * Math.sin(way));
}
