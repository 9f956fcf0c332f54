import { type Point, point } from '@panewright/geometry';
import { STYLE } from '../ink.ts';
import { line } from '../path.ts';
import type { Item } from '../sheet.ts';

/** A bar of known length to lay a rule against: end ticks tall, steps short. Its ends are the ticks' middles. */
export function bar(from: Point, length: number, step: number): readonly Item[] {
  const steps = Math.round(length / step);
  const ticks = Array.from({ length: steps + 1 }, (_, index) => {
    const x = from.x + (length * index) / steps;
    const tall = index === 0 || index === steps ? 4 : 2;
    return line(point(x, from.y), point(x, from.y + tall), STYLE.measure);
  });
  return [line(from, point(from.x + length, from.y), STYLE.measure), ...ticks];
}
