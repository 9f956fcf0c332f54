import type { WrongWayWords } from './words.ts';

/** The words of one language for the ways a panel can be put on wrongly. */
interface Parts {
  readonly along: string;
  readonly half: string;
  readonly turned: (by: string) => string;
  readonly side: string;
  readonly top: string;
  readonly over: (by: string) => string;
  /** Said after a turn in which only some of the points meet. */
  readonly shifted: string;
  readonly tells: (way: string, drawn: string, all: string, push: string) => string;
}

/** A turn within so many degrees of none or of half is called that. */
const NEAR = 5;

/** The sentence of one language, from its words. */
export const wrongWayWords =
  (t: Parts): WrongWayWords =>
  ({ turnedOver, turn, meet, drawn }, points, show) => {
    const degrees = Math.abs((180 / Math.PI) * turn);
    const by = `${show.number(degrees, 0)}°`;
    const [none, half, other] = turnedOver ? [t.side, t.top, t.over(by)] : ['', t.half, t.turned(by)];
    const turned = degrees < NEAR ? none : degrees > 180 - NEAR ? half : other;
    const way = turned === '' ? t.along : `${turned}${meet < points ? t.shifted : ''}`;
    const count = (value: number) => show.number(value, 0);
    return t.tells(way, count(drawn), count(points), count(meet - drawn));
  };
