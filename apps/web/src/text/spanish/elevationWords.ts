import type { Words } from '../words.ts';

/** Words of the sides of the vehicle, vessel or building, in Spanish. */
export const elevationWords: Words['elevations'] = {
  title: 'Alzados',
  link: 'Alzados',
  empty:
    'Aún no hay ningún lado dibujado. Añada uno, diga su largo y su alto y ponga los huecos en su sitio: lo que le necesita se ve entonces donde está.',
  add: 'Añadir un lado',
  newName: (n) => `Lado ${n}`,
  name: 'Nombre del lado',
  width: 'Largo del lado',
  height: 'Alto del lado',
  how: 'Visto por fuera. Arrastre un hueco a su sitio, o elíjalo y use las flechas; Intro o doble pulsación lo abre. De aquí no se calcula nada.',
  drawing: (side, count) =>
    count === 1 ? `${side} con 1 hueco en su sitio` : `${side} con ${count} huecos en su sitio`,
  placed: (opening, needs) => (needs ? `${opening}, por revisar` : opening),
  free: 'Aún en ningún lado',
  place: (opening) => `Poner aquí ${opening}`,
  takeOff: 'Quitar de este lado',
  takeOffOf: (opening) => `Quitar de este lado: ${opening}`,
  parts: 'Puertas, ruedas y demás',
  part: 'Forma',
  kinds: { box: 'rectángulo', round: 'redonda' },
  addPart: 'Añadir una forma',
  removePart: (n) => `Quitar la forma ${n}`,
  photo: 'Una foto para dibujar encima',
  photoAbout: 'Se estira al lado y se muestra hasta cerrar la página. No se guarda ni sale de esta máquina.',
  remove: 'Quitar este lado',
};
