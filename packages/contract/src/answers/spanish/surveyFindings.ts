import { joinWords } from '../show.ts';
import type { FindingWords } from '../words.ts';
import { impossibleSurvey } from './impossibleSurvey.ts';
import { partsOf, sayCause, sayPart } from './readings.ts';
import { opening } from './where.ts';

/** What the survey of an opening has to say. */
export const surveyFindings = {
  READING_MISSING: (f, show) => ({
    what: `${opening(f, show)}: falta ${joinWords(partsOf(f.numbers.readings), 'y')}.`,
    why: 'Cuatro lados, cuatro radios y una diagonal fijan la forma; si falta uno, se adivinaría.',
    do: 'Tome la medida. Una esquina viva tiene radio 0.',
  }),
  OUTLINE_MISSING: (f, show) => ({
    what: `${opening(f, show)}: aún no hay contorno.`,
    why: '',
    do:
      f.numbers.from === 'photo'
        ? 'Fotografíe la lámina trazada y use el contorno que resulte.'
        : 'Elija un dibujo o una tabla de puntos y use un contorno de allí.',
  }),
  READING_SUSPECT: (f, show) => {
    const { of, entered, corrected, confidence, cause, orOf, orEntered } = f.numbers;
    const slip = sayCause(cause);
    const or =
      orOf === undefined ? '' : ` También puede ser «${sayPart(orOf)}», leído como ${show.text(orEntered)}.`;
    return {
      what: `${opening(f, show)}: «${sayPart(of)}», leído como ${show.text(entered)}, no concuerda con las demás medidas; ${show.length(corrected)} concordaría.${or}`,
      why: `${slip === '' ? 'Ningún error corriente lo explica' : `Quizá: ${slip}`} (confianza ${confidence > 0.99 ? 'de más del 99 %' : show.percent(confidence)}, una estimación).`,
      do: `Mida de nuevo «${sayPart(of)}» antes de cortar.`,
    };
  },
  READINGS_DISAGREE: (f, show) => ({
    what: `${opening(f, show)}: las medidas no cierran por ${show.fine(f.numbers.misclosure)}, más de lo que explica su dispersión.`,
    why: 'Ninguna medida destaca como equivocada.',
    do: 'Mida de nuevo las diagonales y las distancias más largas.',
  }),
  SURVEY_IMPOSSIBLE: (f, show) => ({
    what: `${opening(f, show)}: no existe tal forma: ${impossibleSurvey(f, show)}.`,
    why: 'Al menos una medida está mal, o es de otra parte del hueco.',
    do: 'Compare lo escrito con las notas y mida de nuevo.',
  }),
  NO_CHECK_READING: (f, show) => ({
    what: `${opening(f, show)}: nada comprueba las medidas.`,
    why: 'Con solo las medidas que la forma necesita, un error de lectura no se nota.',
    do: 'Añada la otra diagonal, o un ancho a media altura.',
  }),
  OUT_OF_SQUARE: (f, show) => ({
    what: `${opening(f, show)} no está a escuadra: ${show.fine(f.numbers.offset)} ${sayPart(f.numbers.corner)} (${show.number(f.numbers.degrees, 2)}°).`,
    why: 'El panel sigue el hueco tal como se midió.',
    do: 'Marque arriba y la cara exterior en el panel: solo entra de una manera.',
  }),
  NO_CHECK_TAPE: (f, show) => ({
    what: `${opening(f, show)}: nada comprueba las cintas.`,
    why: 'Con solo las que sitúan los puntos, un error de lectura no se nota.',
    do: 'Mida también de punto a punto, o desde una tercera marca.',
  }),
  WEAK_GEOMETRY: (f, show) => ({
    what: `${opening(f, show)}: las cintas a ${f.numbers.point} se encuentran a ${show.number(f.numbers.degrees, 0)}°; de través se conoce con ${show.fine(1.96 * f.numbers.across)} (95 %).`,
    why: 'Cintas que se encuentran a menos de 30° sitúan un punto bien a lo largo y mal de través.',
    do: 'Mida desde una marca que quede más a su lado.',
  }),
  NEXT_TAPE: (f, show) => ({
    what: `${opening(f, show)}: una cinta más, de ${f.numbers.from} a ${f.numbers.to}, es lo que más ayudaría.`,
    why: `El punto peor conocido lo sería con ${show.fine(1.96 * f.numbers.after)} en vez de ${show.fine(1.96 * f.numbers.now)} (95 %).`,
    do: 'Tómela si el panel ha de ajustar bien.',
  }),
  POINT_OFF_RUN: (f, show) => ({
    what: `${opening(f, show)}: el punto ${f.numbers.point} queda a ${show.fine(f.numbers.off)} del tramo ${show.number(f.numbers.run, 0)}.`,
    why: 'Es más de lo que explica la dispersión de las cintas: el tramo no es de esa clase, o el punto es de otro.',
    do: 'Mire la ventana: ¿es recto ese tramo, o una sola curva?',
  }),
} satisfies Partial<FindingWords>;
