import { joinWords } from '../show.ts';
import type { FindingWords } from '../words.ts';
import { impossibleSurvey } from './impossibleSurvey.ts';
import { partsOf, sayCause, sayPart } from './readings.ts';
import { opening } from './where.ts';

/** What the survey of an opening has to say. */
export const surveyFindings = {
  READING_MISSING: (f, show) => ({
    what: `${opening(f, show)}: Es fehlt ${joinWords(partsOf(f.numbers.readings), 'und')}.`,
    why: 'Vier Seiten, vier Radien und eine Diagonale legen die Form fest; fehlt eines, wäre sie geraten.',
    do: 'Nachmessen. Eine scharfe Ecke hat den Radius 0.',
  }),
  OUTLINE_MISSING: (f, show) => ({
    what: `${opening(f, show)}: noch kein Umriss.`,
    why: '',
    do:
      f.numbers.from === 'photo'
        ? 'Die Folie mit dem Umriss fotografieren und den gefundenen Umriss übernehmen.'
        : 'Eine Zeichnung oder eine Punktetabelle wählen und einen Umriss daraus übernehmen.',
  }),
  READING_SUSPECT: (f, show) => {
    const { of, entered, corrected, confidence, cause, orOf, orEntered } = f.numbers;
    const slip = sayCause(cause);
    const or =
      orOf === undefined
        ? ''
        : ` Es kann auch „${sayPart(orOf)}“ sein, abgelesen als ${show.text(orEntered)}.`;
    return {
      what: `${opening(f, show)}: „${sayPart(of)}“, abgelesen als ${show.text(entered)}, passt nicht zu den anderen Messungen; ${show.length(corrected)} würde passen.${or}`,
      why: `${slip === '' ? 'Kein üblicher Ablesefehler erklärt es' : `Vielleicht: ${slip}`} (Sicherheit ${confidence > 0.99 ? 'über 99 %' : show.percent(confidence)}, eine Schätzung).`,
      do: `„${sayPart(of)}“ vor dem Zuschnitt noch einmal messen.`,
    };
  },
  READINGS_DISAGREE: (f, show) => ({
    what: `${opening(f, show)}: Die Messungen schließen nicht, es bleiben ${show.fine(f.numbers.misclosure)}; das ist mehr, als ihre Streuung erklärt.`,
    why: 'Keine einzelne Messung fällt als falsch auf.',
    do: 'Die Diagonalen und die längsten Strecken noch einmal messen.',
  }),
  SURVEY_IMPOSSIBLE: (f, show) => ({
    what: `${opening(f, show)}: Eine solche Form gibt es nicht: ${impossibleSurvey(f, show)}.`,
    why: 'Mindestens eine Messung ist falsch oder gehört zu einem anderen Teil der Öffnung.',
    do: 'Die Eingaben mit den Notizen vergleichen, dann neu messen.',
  }),
  NO_CHECK_READING: (f, show) => ({
    what: `${opening(f, show)}: Nichts prüft die Messungen.`,
    why: 'Bei gerade so vielen Messungen, wie die Form braucht, fällt eine verlesene nicht auf.',
    do: 'Die andere Diagonale oder eine Breite auf halber Höhe dazu messen.',
  }),
  OUT_OF_SQUARE: (f, show) => ({
    what: `${opening(f, show)} ist nicht im Winkel: ${show.fine(f.numbers.offset)} ${sayPart(f.numbers.corner)} (${show.number(f.numbers.degrees, 2)}°).`,
    why: 'Die Blende folgt der Öffnung, wie sie gemessen ist.',
    do: 'Oben und außen auf der Blende kennzeichnen: Sie passt nur auf eine Weise.',
  }),
  NO_CHECK_TAPE: (f, show) => ({
    what: `${opening(f, show)}: Nichts prüft die Maße.`,
    why: 'Bei gerade so vielen, wie die Punkte brauchen, fällt ein verlesenes nicht auf.',
    do: 'Auch von Punkt zu Punkt messen, oder von einer dritten Marke.',
  }),
  WEAK_GEOMETRY: (f, show) => ({
    what: `${opening(f, show)}: Die Maße zu ${f.numbers.point} treffen sich unter ${show.number(f.numbers.degrees, 0)}°; quer zu ihnen ist er auf ${show.fine(1.96 * f.numbers.across)} bekannt (95 %).`,
    why: 'Maße, die sich unter weniger als 30° treffen, legen einen Punkt in ihrer Richtung gut und quer dazu schlecht fest.',
    do: 'Von einer Marke aus messen, die mehr seitlich liegt.',
  }),
  NEXT_TAPE: (f, show) => ({
    what: `${opening(f, show)}: Ein weiteres Maß von ${f.numbers.from} bis ${f.numbers.to} hülfe am meisten.`,
    why: `Der am wenigsten bekannte Punkt wäre dann auf ${show.fine(1.96 * f.numbers.after)} statt auf ${show.fine(1.96 * f.numbers.now)} bekannt (95 %).`,
    do: 'Messen, wenn die Blende genau sitzen muss.',
  }),
  POINT_OFF_RUN: (f, show) => ({
    what: `${opening(f, show)}: Punkt ${f.numbers.point} liegt ${show.fine(f.numbers.off)} neben Strecke ${show.number(f.numbers.run, 0)}.`,
    why: 'Das ist mehr, als die Streuung der Maße erklärt: Die Strecke ist von anderer Art, oder der Punkt gehört zu einer anderen.',
    do: 'Am Fenster nachsehen: Ist die Strecke gerade, oder ein einziger Bogen?',
  }),
} satisfies Partial<FindingWords>;
