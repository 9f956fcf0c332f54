import type { FindingWords } from '../words.ts';
import { opening } from './where.ts';

/** What can hurt someone. Each defers to local rules and to those who are licensed. */
export const cautions = {
  EXIT_OPENING: (f, show) => ({
    what: `${opening(f, show)}: es una salida de emergencia.`,
    why: 'Un panel ahí debe soltarse al momento, desde dentro, a oscuras y sin herramienta.',
    do: 'No ponga dentro imanes ni cierres que lo traben, deje a la vista el rótulo y la manilla, y siga las normas locales.',
  }),
  REMOVE_BEFORE_DRIVING: (f, show) => ({
    what: f.where.opening
      ? `${opening(f, show)}: quien conduce mira por él. Quite el panel antes de conducir.`
      : 'Quite todos los paneles antes de que el vehículo o la embarcación se mueva.',
    why: 'Un panel tapa la vista, y ningún dato de imanes de aquí vale en marcha.',
    do: 'Cosa en cada panel una etiqueta que lo diga.',
  }),
  MAGNETS_PINCH: (f, show) => ({
    what: `Sueltos, dos de estos imanes chocan con unos ${show.force(f.numbers.touching)} (estimación).`,
    why: 'Pellizcan la piel, y pueden romperse y lanzar esquirlas.',
    do: 'Manténgalos separados hasta que estén envueltos, sepárelos deslizándolos de lado y use gafas de protección.',
  }),
  MAGNETS_SWALLOWED: () => ({
    what: 'Mantenga los imanes lejos de los niños.',
    why: 'Dos imanes tragados pueden pinzar el intestino y matar.',
    do: 'Envuelva y cosa cada imán; si alguien traga uno, acuda al médico enseguida.',
  }),
  MAGNETS_IMPLANTS: (f, show) => ({
    what: `Mantenga los imanes lejos de marcapasos y otros implantes: todos los de este trabajo juntos, al menos a ${show.length(f.numbers.distance)} (estimación).`,
    why: 'Un imán fuerte y cercano puede cambiar cómo funcionan.',
    do: 'Dígaselo al cliente; sobre la distancia, siga lo que diga su médico.',
  }),
  MAGNETS_COMPASS: (f, show) => ({
    what: `Los imanes de este trabajo juntos pueden desviar un compás de gobierno a menos de ${show.length(f.numbers.steering)}, y un compás magistral a menos de ${show.length(f.numbers.standard)} (estimación).`,
    why: 'Por él se gobierna el barco.',
    do: 'Guarde los paneles y los imanes interiores más lejos, y compense el compás con ellos puestos.',
  }),
  HOT_KNIFE_FUMES: () => ({
    what: 'Un cuchillo caliente en tela recubierta desprende humos, y quema.',
    why: 'Los recubrimientos de vinilo calientes pueden soltar cloruro de hidrógeno, que daña pulmones y ojos.',
    do: 'Corte bajo un extractor o al aire libre, aparte lo que pueda arder y siga la ficha de la tela.',
  }),
  SOLVENT_FIRE: () => ({
    what: 'Los disolventes de limpieza arden, y su vapor también.',
    why: '',
    do: 'Ventile, apague llamas y pilotos, use guantes y siga la etiqueta.',
  }),
  TAPE_DWELL: () => ({
    what: 'La cinta adhesiva necesita un cristal limpio, seco y templado, y tiempo.',
    why: 'La cinta de espuma acrílica alcanza su fuerza en unos tres días (práctica común, sin fuente).',
    do: 'Limpie, apriete bien cada imán y no cuelgue ningún panel antes del tiempo que indique el fabricante de la cinta.',
  }),
  STEEL_EDGES: () => ({
    what: 'La pletina de acero cortada tiene cantos afilados y se oxida donde falta el cinc.',
    why: '',
    do: 'Lime y pinte los extremos, use guantes y no deje acero desnudo contra el cristal.',
  }),
  CUPS_LET_GO: () => ({
    what: 'Las ventosas se sueltan solas, por el tiempo, el sol, el frío o la altura.',
    why: 'El aire se cuela bajo el borde.',
    do: 'Apriételas de nuevo cada día, y no cuelgue de ellas nada que no deba caer.',
  }),
  FIXINGS_IN_FRAME: (f, show) => ({
    what: `${show.number(f.numbers.fixings, 0)} tornillos, remaches o postes van al marco.`,
    why: 'Un marco puede ocultar cables, tubos, airbags o el canto del cristal, y un agujero deja entrar agua.',
    do: 'Mire detrás antes de taladrar, ponga un tope a la broca, use gafas, selle cada agujero y siga las normas del vehículo o de la obra.',
  }),
  HEAT_INSIDE: () => ({
    what: 'Un vehículo aparcado o un cuarto cerrado se calienta hasta ser peligroso, con panel o sin él.',
    why: 'Al sol, un coche se calienta unos 2 °C (3 °F) cada cinco minutos, y abrir las ventanas apenas lo frena. Un panel oscuro calienta también el cristal: los laminados, recubiertos o dobles pueden agrietarse.',
    do: 'No deje nunca dentro a un niño, una persona frágil o un animal. Pregunte al fabricante del cristal si no es sencillo.',
  }),
  HOLD_IS_ESTIMATE: () => ({
    what: 'Los datos de fuerza y viento son estimaciones, no medidas.',
    why: 'Los imanes, cintas, cristales y rachas reales difieren de los datos con que se calculan.',
    do: 'Pruebe un panel al viento en el vehículo parado antes de fiarse de los demás.',
  }),
} satisfies Partial<FindingWords>;
