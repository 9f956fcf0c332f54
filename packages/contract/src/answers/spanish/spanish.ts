import type { Messages } from '../words.ts';
import { sayFileNote } from './fileRefusals.ts';
import { findings } from './findings.ts';
import { gapWords } from './gaps.ts';
import { issues, lengths } from './issues.ts';
import { choiceWords } from './magnetChoices.ts';
import { readings, sayPart } from './readings.ts';
import { refusals } from './refusals.ts';
import { traceQuestions } from './tracing.ts';
import { wrongWay } from './wrongWay.ts';

export const spanish: Messages = {
  language: 'es',
  refusals,
  findings,
  issues,
  lengths,
  readings,
  traceQuestions,
  choices: choiceWords,
  gaps: gapWords,
  wrongWay,
  fileNote: sayFileNote,
  part: sayPart,
  obstruction: (name, opening) => (name === '' ? 'algo que debe quedar libre' : `${name} de ${opening}`),
  document: { whole: 'El documento', here: 'Esto' },
  severities: {
    stop: 'no se puede hacer así',
    doubt: 'revisar antes de cortar',
    caution: 'puede herir a alguien',
    note: 'bueno saberlo',
  },
  statuses: {
    measured: 'medido',
    chosen: 'elegido en el trabajo',
    catalogue: 'del catálogo',
    computed: 'calculado',
    estimate: 'estimación',
    custom: 'práctica común, sin fuente',
  },
  origins: {
    leastSquares: 'ajustado a las medidas por mínimos cuadrados',
    acceptedOutline: 'del contorno tal como se aceptó',
    offset: 'el contorno llevado hacia fuera o dentro según el margen de ajuste',
    outlineLength: 'longitud del contorno, con arcos exactos',
    outlineArea: 'superficie del contorno, con arcos exactos',
    bindingLength: 'borde terminado, solape y recortes',
    hemWidth: 'el ancho del dobladillo',
    equalGaps: 'separaciones iguales entre las esquinas, dentro de lo que pide el taller',
    stackSum: 'suma de todas las capas entre los imanes',
    pairForce:
      'fuerza de los dos imanes a través de la separación, menos lo que quitan el material real y el calor',
    holdMargin: 'sujeción entre lo pedido, por viento y peso',
    massPerArea: 'masa por superficie de la tela y su acabado',
    lay: 'largo del tendido',
    stripCut: 'tiras cortadas de largos enteros',
    count: 'contado',
    threadLength: 'hilo por largo de costura y desperdicio',
    wrapSize: 'tamaño del imán, su margen y la lámina',
    tapeLength: 'largo para cada imán interior',
    stripLength: 'largo para cada punto de sujeción',
    wholePacks: 'redondeado a envases enteros',
    standardMinutes: 'los minutos del taller para ese trabajo',
    jobCost: 'suma de lo que se compra y del tiempo',
    markup: 'coste con el recargo del taller',
    tax: 'el impuesto del taller sobre el precio',
  },
  units: {
    mm: 'mm',
    mm2: 'mm²',
    count: '',
    min: 'min',
    money: '',
    N: 'N',
    g: 'g',
    ratio: '',
    'm/s': 'm/s',
  },
};
