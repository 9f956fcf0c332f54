import { mm, ok, type Result, refuse } from '@panewright/quantity';
import { crossingAngle, intersectTapes, type XY } from './intersectTapes.ts';
import type { MarkSurvey, NetworkRefusal, SurveyPoint } from './markSurvey.ts';

/** A tape short by this much (mm, plus three sigma) still counts as just meeting. */
const MEETING_SLACK = 1;
/** A third tape decides the side when it fits one place better by this many sigma. */
const CLEAR = 6;
/** More open pairs of sides than this are not tried out. */
const MOST_BRANCHES = 64;

interface Tape {
  readonly to: number;
  readonly value: number;
  readonly sigma: number;
}
type Places = readonly (XY | undefined)[];

/** Points reached by two tapes from one pair of placed points; each may lie left or right of that pair's line. */
interface OpenGroup {
  readonly pair: readonly [number, number];
  readonly members: readonly { readonly point: number; readonly options: readonly [XY, XY] }[];
}

/**
 * Approximate places by swinging tapes, in every arrangement that the sides given and the third tapes allow.
 *
 * @param linked points open to both sides are tried on either, for the tapes between them to tell; else all lie on one side
 * @returns one list of places for each arrangement still open; their order round the outline is not looked at here
 */
export function firstPlaces(
  survey: MarkSurvey,
  linked: boolean,
): Result<readonly (readonly XY[])[], NetworkRefusal> {
  const tapes = tapesOf(survey);
  const start: (XY | undefined)[] = survey.points.map(({ fixed }) => fixed);
  if (!start.some(Boolean)) {
    const base = baseLine(tapes);
    if (!base) return refuse({ code: 'NETWORK_POINTS_LOOSE', names: survey.points.map(({ name }) => name) });
    start[base.from] = { x: 0, y: 0 };
    start[base.to] = { x: base.length, y: 0 };
  }
  const finished: XY[][] = [];
  const pending: Places[] = [start];
  while (pending.length > 0 && finished.length + pending.length <= MOST_BRANCHES) {
    const grown = placeClear(survey, tapes, pending.pop()!);
    if (!grown.ok) return grown;
    const { places, group } = grown.value;
    if (places.every((place) => place !== undefined)) {
      finished.push(places as XY[]);
      continue;
    }
    if (!group) {
      const names = survey.points.filter((_, i) => !places[i]).map(({ name }) => name);
      return refuse({ code: 'NETWORK_POINTS_LOOSE', names });
    }
    const arranged = arrangements(survey.points, group, linked ? tapes : []);
    if (!arranged.ok) return arranged;
    pending.push(...arranged.value.map((chosen) => places.map((place, i) => chosen.get(i) ?? place)));
  }
  if (pending.length === 0) return ok(finished);
  const names = survey.points.filter((_, i) => !pending[0]![i]).map(({ name }) => name);
  return refuse({ code: 'NETWORK_MIRROR_AMBIGUOUS', names });
}

function tapesOf({ points, distances }: MarkSurvey): readonly (readonly Tape[])[] {
  const place = new Map(points.map(({ name }, i) => [name, i]));
  const tapes: Tape[][] = points.map(() => []);
  for (const { from, to, value, sigma } of distances) {
    const [i, j] = [place.get(from)!, place.get(to)!];
    if (tapes[i]!.some((tape) => tape.to === j)) continue;
    tapes[i]!.push({ to: j, value, sigma });
    tapes[j]!.push({ to: i, value, sigma });
  }
  return tapes;
}

/** The tape whose ends share most neighbours; the first of the list among equals. */
function baseLine(tapes: readonly (readonly Tape[])[]) {
  let best: { from: number; to: number; length: number; shared: number } | undefined;
  tapes.forEach((reached, from) => {
    for (const { to, value } of reached) {
      if (to < from) continue;
      const shared = tapes[to]!.filter((tape) => reached.some((other) => other.to === tape.to)).length;
      if (!best || shared > best.shared) best = { from, to, length: value, shared };
    }
  });
  return best;
}

/** Places every point that three tapes decide, again and again; then names the largest group left open. */
function placeClear(
  survey: MarkSurvey,
  tapes: readonly (readonly Tape[])[],
  from: Places,
): Result<{ readonly places: Places; readonly group: OpenGroup | undefined }, NetworkRefusal> {
  const places = [...from];
  for (;;) {
    const groups = new Map<
      string,
      { pair: readonly [number, number]; members: OpenGroup['members'][number][] }
    >();
    let placed = false;
    let apart: NetworkRefusal | undefined;
    for (const [point, reached] of tapes.entries()) {
      if (places[point]) continue;
      const held = reached.filter(({ to }) => places[to]).sort((a, b) => a.to - b.to);
      if (held.length < 2) continue;
      const swung = swing(survey, point, held, places);
      if (!swung.ok) {
        // Later places may reach the point by other tapes; the misfit then shows which one is wrong.
        apart ??= swung.refusal;
        continue;
      }
      const { pair, options, clear } = swung.value;
      if (clear) {
        places[point] = clear;
        placed = true;
      } else {
        const key = pair.join();
        const group = groups.get(key) ?? { pair, members: [] };
        group.members.push({ point, options });
        groups.set(key, group);
      }
    }
    if (placed) continue;
    const group = [...groups.values()].sort((a, b) => b.members.length - a.members.length)[0];
    if (!group && apart) return refuse(apart);
    return ok({ places, group });
  }
}

function swing(survey: MarkSurvey, point: number, held: readonly Tape[], places: Places) {
  const name = (i: number) => survey.points[i]!.name;
  let best: { pair: readonly [number, number]; options: readonly [XY, XY]; angle: number } | undefined;
  for (const [i, a] of held.entries()) {
    for (const b of held.slice(i + 1)) {
      const options = meeting(places[a.to]!, places[b.to]!, a, b);
      if (!options) continue;
      const angle = crossingAngle(options[0], places[a.to]!, places[b.to]!);
      if (!best || angle > best.angle) best = { pair: [a.to, b.to], options, angle };
    }
  }
  if (!best) {
    const [a, b] = held as [Tape, Tape];
    return refuse({
      code: 'NETWORK_TAPES_DO_NOT_MEET',
      name: name(point),
      to: [name(a.to), name(b.to)],
      lengths: [mm(a.value), mm(b.value)],
      between: mm(far(places[a.to]!, places[b.to]!)),
    });
  }
  const misfit = (at: XY) =>
    held.reduce((sum, { to, value, sigma }) => sum + ((far(at, places[to]!) - value) / sigma) ** 2, 0);
  const [left, right] = best.options.map(misfit) as [number, number];
  const decided = Math.abs(Math.sqrt(left) - Math.sqrt(right)) > CLEAR && held.length > 2;
  return ok({ ...best, clear: decided ? best.options[left < right ? 0 : 1] : undefined });
}

const far = (a: XY, b: XY) => Math.hypot(b.x - a.x, b.y - a.y);

/** Tapes that miss by no more than their own error are drawn out to meet on the line. */
function meeting(A: XY, B: XY, a: Tape, b: Tape): readonly [XY, XY] | undefined {
  const between = far(A, B);
  const slack = MEETING_SLACK + 3 * Math.hypot(a.sigma, b.sigma);
  const short = between - (a.value + b.value);
  if (short > 0 && short < slack) {
    return intersectTapes(A, B, a.value + short / 2 + 1e-9, b.value + short / 2 + 1e-9);
  }
  const over = Math.abs(a.value - b.value) - between;
  if (over > 0 && over < slack) {
    const give = (Math.sign(a.value - b.value) * over) / 2;
    return intersectTapes(A, B, a.value - give, b.value + give);
  }
  return intersectTapes(A, B, a.value, b.value);
}

/**
 * With sides given, the open ones follow their neighbours round the ring. With none, a member taped to others of its group
 * is put on either side, for those tapes then tell where the others lie; where no tapes are told of, all left or all right.
 */
function arrangements(
  points: readonly SurveyPoint[],
  { members }: OpenGroup,
  tapes: readonly (readonly Tape[])[],
): Result<readonly ReadonlyMap<number, XY>[], NetworkRefusal> {
  const given = members.map(({ point }) => points[point]!.side);
  const choose = (sides: readonly ('left' | 'right')[]) =>
    new Map(members.map(({ point, options }, k) => [point, options[sides[k] === 'left' ? 0 : 1]]));
  if (given.every((side) => side === undefined)) {
    const seed = mostLinked(members, tapes);
    if (seed) return ok(seed.options.map((place) => new Map([[seed.point, place]])));
    return ok([choose(members.map(() => 'left')), choose(members.map(() => 'right'))]);
  }
  const near = (k: number, step: 1 | -1) => {
    for (let i = 1; i < members.length; i++) {
      const side = given[(k + i * step + i * members.length) % members.length];
      if (side) return side;
    }
    return undefined;
  };
  const sides = given.map((side, k) => side ?? (near(k, 1) === near(k, -1) ? near(k, 1) : undefined));
  const open = members.filter((_, k) => sides[k] === undefined);
  if (open.length > 0) {
    return refuse({ code: 'NETWORK_MIRROR_AMBIGUOUS', names: open.map(({ point }) => points[point]!.name) });
  }
  return ok([choose(sides as ('left' | 'right')[])]);
}

/** The member with most tapes to others of its group; undefined where no two are taped to each other. */
function mostLinked(members: OpenGroup['members'], tapes: readonly (readonly Tape[])[]) {
  const links = ({ point }: OpenGroup['members'][number]) =>
    (tapes[point] ?? []).filter(({ to }) => members.some((other) => other.point === to)).length;
  const best = members.reduce((most, member) => (links(member) > links(most) ? member : most));
  return links(best) > 0 ? best : undefined;
}
