import type { Words } from '../words.ts';

/** Words of laying by hand, in Spanish. */
export const layWords: Words['lay'] = {
  byHand: 'Tender a mano',
  help: 'Arrastre una pieza, o elíjala y use las flechas (con Mayús, a pasos mayores). R la gira, F la vuelve donde la tela lo permite, H la sujeta, N y P van a la pieza siguiente y a la anterior. Una pieza movida queda sujeta; puesta sobre otras, hace que se aparten.',
  piece: (of, opening) =>
    of.kind === 'panel'
      ? `panel de ${opening(of.opening)} (${of.opening})`
      : `bolsillo ${of.piece}, n.º ${of.copy + 1}`,
  pieceAt: (name, along, across, held) =>
    `${name}, a ${along} del extremo cortado, ${across} hacia arriba${held ? ', sujeta' : ''}`,
  chosen: (name) => `Elegida: ${name}`,
  none: 'No hay ninguna pieza elegida.',
  along: 'A lo largo del rollo',
  across: 'A lo ancho del rollo',
  turn: 'Girada',
  degrees: (turn) => `${Math.round(turn)}°`,
  flipped: 'Vuelta',
  held: 'Sujeta donde está',
  holdAll: 'Sujetar todas',
  letGo: 'Soltar todas',
  rest: 'Tender de nuevo el resto',
  push: 'Juntar',
  pushAbout:
    'Juntar desliza cada pieza, sujeta o no, hacia el extremo cortado y hacia abajo hasta que toca; ninguna gira ni adelanta a otra.',
  pushed: (length) => `Juntadas: ${length} menos.`,
  pushedSame: 'Juntadas: el largo no cambia.',
  pushNot: 'Algunas piezas están donde no deben; así no se pueden juntar.',
  because: (first, names, play) => {
    const chain = `${first} → ${names.join(' → ')} → final`;
    return play === null
      ? `Lo que determina el largo: ${chain}. ${names.length === 1 ? 'Esta pieza llega' : 'Estas piezas van una contra otra'} hasta el final; para acortarlo, una de ellas debe ir en otro sitio o girada.`
      : `Lo que determina el largo: ${chain}, con ${play} de holgura: al juntarlas se acorta en esa medida.`;
  },
  cutEnd: 'extremo cortado',
  keptClear: 'lugar que se deja libre',
  own: 'Volver al tendido del programa',
  endsWith: 'Acaba con',
  automatic: (length, roll) => `${length} del rollo de ${roll}`,
  automaticLabel: 'El programa solo usaría',
  outside: {
    start: 'Se saldría por el extremo cortado del rollo.',
    end: 'Se saldría por el final del tendido.',
    left: 'Quedaría sobre el orillo.',
    right: 'Quedaría sobre el orillo.',
  },
  meets: (other) => `Quedaría sobre otra que está sujeta: ${other}. Suéltela, o ponga esta en otro sitio.`,
  makesWay: 'Las piezas de debajo se apartan: el resto se tiende de nuevo.',
  notSo: 'Esta pieza no puede ir así: su hilo o su cara estarían mal.',
  free: 'Aquí está libre.',
  larger: 'Ampliar',
  smaller: 'Reducir',
  search: 'Buscar más tiempo un tendido más corto',
  searchAbout:
    'El tendido se hace en un momento. Buscando más, a menudo se halla uno más corto; sigue hasta que lo detenga.',
  searching: (seconds, length) => `Buscando desde hace ${seconds} s: ${length}`,
  saved: (length) => `${length} más corto que el tendido anterior`,
  noneFound: 'Aún nada más corto',
  best: 'En este rollo no cabe un tendido más corto.',
  stop: 'Detener',
  goOn: 'Seguir buscando',
  use: 'Usar este tendido',
  drop: 'Conservar el que había',
};
