import type { CornerName, LineChoice, Ruler, Tape, TappedLine } from '@panewright/photo';
import { ok, type Result, refuse } from '@panewright/quantity';
import type { Refusal } from '../refusal.ts';

/** Reads `MARKER.CORNER-MARKER.CORNER=MM`: `9.1-12.0=1323.9` is from marker 9's corner 1 to marker 12's corner 0. */
export function readTapeText(text: string): Result<Tape, Refusal> {
  const match = /^\s*(\d{1,3})\.(\d)\s*-\s*(\d{1,3})\.(\d)\s*=\s*(\d+(?:\.\d+)?)\s*$/.exec(text);
  if (!match) return refuse({ code: 'TAPE_TEXT_UNREADABLE', text });
  const [, a, b, c, d, length] = match.map(Number);
  const end = (marker: number, corner: number): CornerName => ({ marker, corner });
  return ok({ from: end(a!, b!), to: end(c!, d!), length: length! });
}

/** Reads `XxY`, both in mm. */
export function readRulerText(text: string): Result<Ruler, Refusal> {
  const match = /^\s*(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)\s*$/.exec(text);
  return match
    ? ok({ x: Number(match[1]), y: Number(match[2]) })
    : refuse({ code: 'RULER_TEXT_UNREADABLE', text });
}

const NUMBER = String.raw`\d{1,6}(?:\.\d+)?`;
const TAPS = new RegExp(
  String.raw`^\s*(?:(\d{1,2})\s*:)?\s*(${NUMBER},${NUMBER}(?:\s+${NUMBER},${NUMBER})*)\s*$`,
);

/** Reads `PHOTO:X,Y X,Y X,Y`: pixels on the line, in order round it, of the photo so numbered from 1 (the first, if left out). */
export function readTapsText(text: string): Result<TappedLine, Refusal> {
  const match = TAPS.exec(text);
  if (!match) return refuse({ code: 'TAPS_TEXT_UNREADABLE', text });
  const points = match[2]!.split(/\s+/).map((pair) => {
    const [x, y] = pair.split(',').map(Number);
    return { x: x!, y: y! };
  });
  return ok({ photo: Number(match[1] ?? 1) - 1, points });
}

const LINES: readonly string[] = ['darkest', 'inner', 'outer'] satisfies readonly LineChoice[];

/** Reads which of two parallel lines is meant. */
export const readLineText = (text: string): Result<LineChoice, Refusal> =>
  LINES.includes(text) ? ok(text as LineChoice) : refuse({ code: 'LINE_TEXT_UNREADABLE', text });
