import { type Finding, refusalNumbers } from '@panewright/design';
import type { OutlineRefusal } from '@panewright/geometry';
import { joinWords, type Show } from '../show.ts';
import { partsOf, sayPart } from './readings.ts';

type Numbers = Finding<'SURVEY_IMPOSSIBLE'>['numbers'];
type Say = (n: Numbers, show: Show) => string;

const names = (text: string | number | undefined) =>
  joinWords(
    String(text ?? '')
      .split(' ')
      .filter(Boolean),
    'und',
  );
/** Runs, joints, tapes and segments are counted from 1. */
const nth = (index: string | number | undefined) => String(Number(index) + 1);

const ofTape: Readonly<Record<string, Say>> = {
  TAPE_READINGS_INSUFFICIENT: (n) =>
    `die Messungen legen die Form nicht fest; es fehlt ${joinWords(partsOf(n.wouldHelp), 'oder')}`,
  TAPE_SIDES_CANNOT_CLOSE: (n, show) =>
    `${sayPart(n.longest)} mit ${show.length(n.length)} ist länger, als ${joinWords(partsOf(n.others), 'und')} zusammen reichen (${show.length(n.reach)})`,
  TAPE_RADII_TOO_LARGE: (n, show) =>
    `die zwei Rundungen brauchen ${show.length(n.taken)} der Strecke „${sayPart(n.side)}“, die ${show.length(n.length)} lang ist`,
  TAPE_NOT_CONVEX: (n) => `die Ecke ${sayPart(n.corner)} würde nach innen zeigen`,
  TAPE_VALUE_NOT_POSITIVE: (n, show) => `${sayPart(n.of)} ist mit ${show.length(n.value)} angegeben`,
  TAPE_RADIUS_NOT_POSITIVE: (n, show) =>
    `der Radius ${sayPart(n.corner)} ergibt sich zu ${show.length(n.radius)}`,
};

const ofMarks: Readonly<Record<string, Say>> = {
  NETWORK_TOO_FEW_POINTS: (n) =>
    `${n.points} Marken und Punkte sind zu wenige: mindestens zwei Marken und drei Punkte`,
  NETWORK_NAME_TWICE: (n) => `zwei Stellen heißen ${n.name}`,
  NETWORK_NAME_UNKNOWN: (n) =>
    `Maßband ${nth(n.index)} endet an ${n.name}, und so heißt keine Marke und kein Punkt`,
  NETWORK_DISTANCE_TO_ITSELF: (n) => `Maßband ${nth(n.index)} beginnt und endet an ${n.name}`,
  NETWORK_DISTANCE_NOT_POSITIVE: (n, show) => `Maßband ${nth(n.index)} zeigt ${show.length(n.value)}`,
  NETWORK_SIGMA_NOT_POSITIVE: (n, show) =>
    `die Streuung von Maßband ${nth(n.index)} ist ${show.number(n.sigma, 3)} mm`,
  NETWORK_ONE_POINT_FIXED: (n) => `nur von ${n.name} ist der Ort bekannt`,
  NETWORK_POINTS_LOOSE: (n) =>
    `für ${names(n.names)} steht der Ort nicht fest: Jeder Punkt braucht Maße zu zwei bekannten Marken oder Punkten`,
  NETWORK_TAPES_DO_NOT_MEET: (n, show) =>
    `die Maße zu ${n.name} treffen sich nicht: ${show.length(n['lengths.0'])} und ${show.length(n['lengths.1'])} von ${names(n.to)}, die ${show.length(n.between)} auseinander liegen`,
  NETWORK_MIRROR_AMBIGUOUS: (n) =>
    `für ${names(n.names)} ist offen, auf welcher Seite der Linie zwischen den Marken sie liegen: angeben, oder zu einem Nachbarn messen`,
  NETWORK_ORDER_CLOCKWISE: () =>
    'die Punkte laufen im Uhrzeigersinn: von außen gesehen gegen den Uhrzeigersinn aufführen',
  OUTLINE_TOO_FEW_RUNS: (n) => `${n.runs} Strecke ist zu wenig: Erst zwei schließen einen Umriss`,
  OUTLINE_POINT_UNKNOWN: (n) =>
    `Strecke ${nth(n.run)} nennt ${n.name}, und so heißt keine Marke und kein Punkt`,
  OUTLINE_RUN_UNDETERMINED: (n) => `Strecke ${nth(n.run)} hat ${n.points} Punkte und braucht ${n.need}`,
  OUTLINE_LINES_JOIN_SMOOTHLY: (n) =>
    `Strecke ${nth(n.joint)} und die vor ihr sind beide gerade und können nicht glatt ineinander übergehen`,
  OUTLINE_RADIUS_NOT_POSITIVE: (n, show) =>
    `der Radius vor Strecke ${nth(n.joint)} ist mit ${show.length(n.radius)} angegeben`,
  OUTLINE_RADII_TOO_LARGE: (n, show) =>
    `die Rundungen an den Enden von Strecke ${nth(n.run)} brauchen ${show.length(n.taken)} von ${show.length(n.length)}`,
  OUTLINE_DOES_NOT_CLOSE: () =>
    'die Strecken schließen keinen Umriss: gegen den Uhrzeigersinn aufführen, jede vom Ende der vorigen an',
};

const ofOutline: Readonly<Record<string, Say>> = {
  OUTLINE_EMPTY: () => 'der Umriss hat keine Kanten',
  SEGMENT_NOT_FINITE: (n) => `Kante ${nth(n.where)} hat eine Zahl, die keine ist`,
  BULGE_ZERO: (n) => `Kante ${nth(n.where)} ist ein Bogen ohne Krümmung`,
  SEGMENT_TOO_SHORT: (n) => `Kante ${nth(n.where)} hat keine Länge`,
  OUTLINE_CROSSES_ITSELF: (n, show) =>
    `die Kanten ${nth(n['where.0'])} und ${nth(n['where.1'])} kreuzen sich bei ${show.length(n['at.x'])}, ${show.length(n['at.y'])}`,
  OUTLINE_CLOCKWISE: () => 'der Umriss läuft im Uhrzeigersinn',
};

/** What each refusal of a survey says of it. */
export function impossibleSurvey(f: Finding<'SURVEY_IMPOSSIBLE'>, show: Show): string {
  const say = { ...ofTape, ...ofMarks, ...ofOutline }[f.numbers.refusal];
  return say ? say(f.numbers, show) : 'aus den Messungen ergibt sich keine eindeutige Form';
}

/** What is wrong with segments that are no outline. */
export function impossibleOutline(refusal: OutlineRefusal, show: Show): string {
  return ofOutline[refusal.code]!(refusalNumbers(refusal), show);
}
