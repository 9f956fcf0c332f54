import type { Words } from '../words.ts';

/** Words of the patterns kept for later jobs, in Spanish. */
export const keptWords: Words['kept'] = {
  link: 'Colección',
  title: 'Colección de patrones',
  about:
    'Patrones de trabajos anteriores, con su origen. Guarde uno en la etapa Patrones de un trabajo; use uno para un hueco nuevo, o deje que esa etapa diga si una forma ya se hizo.',
  search: 'Buscar por nombre, vehículo o edificio, cliente, trabajo o hueco',
  searching: 'Buscando …',
  none: 'Aún no se guarda ningún patrón. Abra un trabajo, vaya a Patrones y guarde uno: cuando vuelva el mismo modelo, estará aquí.',
  noneRemoved: 'No se ha quitado ningún patrón.',
  noneFound: (text) => `Ningún patrón guardado contiene todo «${text}».`,
  removed: 'Buscar entre los quitados',
  count: (shown, more) =>
    more === 0 ? (shown === 1 ? '1 patrón' : `${shown} patrones`) : `${shown} patrones de ${shown + more}`,
  more: 'Mostrar más',
  drawing: (name) => `El contorno de ${name}`,
  known: (size, sigma) => `${size}, conocido con ${sigma} (desviación típica)`,
  from: (job, openings) => `De «${job}»: ${openings}.`,
  openingOver: (name) => `${name} vuelto`,
  site: (kind, name, customer) =>
    [[kind, name].filter(Boolean).join(' '), customer].filter(Boolean).join(', '),
  method: {
    tape: 'medido con cinta',
    marks: 'medido desde marcas',
    photo: 'trazado en una foto',
    file: 'de un dibujo',
    points: 'ajustado a puntos',
    pattern: 'de un patrón guardado antes',
  },
  kept: (date, method, revision) =>
    `${method}, guardado ${date}${revision === null ? '' : `, revisión ${revision} del trabajo`}`,
  open: 'Abrir su origen',
  openOf: (name) => `Abrir su origen: ${name}`,
  remove: 'Quitar',
  removeOf: (name) => `Quitar: ${name}`,
  restore: 'Recuperar',
  restoreOf: (name) => `Recuperar: ${name}`,
  wasRemoved: (name) => `«${name}» ya no está en la lista.`,
  wasRestored: (name) => `«${name}» está otra vez en la lista.`,
  describe: 'Nombre y notas',
  name: 'Nombre',
  notes: 'Notas',
  notesExample: 'p. ej. lado del conductor, batalla larga',
  save: 'Guardar',
  needName: 'Dé antes un nombre al patrón.',
  keep: 'Guardar este patrón',
  keepAbout:
    'Para la próxima vez que venga este modelo: se encuentra por su nombre, por el vehículo o edificio y por su forma.',
  keptNow: (name) => `Guardado como «${name}».`,
  keptAlready: (name) => `Este patrón ya está guardado, como «${name}».`,
  before: (opening) => `¿Se hizo ya ${opening}?`,
  beforeNone: 'Ningún patrón guardado se acerca a esta forma, girado como sea o vuelto.',
  beforeMore: (count) =>
    `Otros ${count} de más o menos este tamaño no se pusieron encima. Sus nombres se pueden buscar en la colección.`,
  fits: (deviation, sigma) => `Entra: mayor diferencia ${deviation} (desviación típica ${sigma}).`,
  misses: (deviation, over) =>
    `Casi: mayor diferencia ${deviation}, ${over} más de lo que pueden diferir formas con un mismo patrón.`,
  turnedOver: 'Está vuelto.',
  upright: 'No está vuelto.',
  use: (opening) => `Usarlo para ${opening}`,
  inUse: (opening) => `${opening} lo usa.`,
  nowUsed: (name, opening) => `${opening} se dibuja ahora según «${name}». Deshacer devuelve sus medidas.`,
  begin: 'Empezar con un patrón guardado',
  beginAbout: '¿Otra vez el mismo modelo? Se toma su contorno, con lo bien que se conoce y su origen.',
  beginIt: 'Empezar con él',
  beginItOf: (name) => `Empezar con él: ${name}`,
  beginOver: 'Empezar con él, vuelto',
  beginOverOf: (name) => `Empezar con él, vuelto: ${name}`,
  fromKept: (name, date, turnedOver) =>
    `Del patrón guardado «${name}»${turnedOver ? ', vuelto' : ''}${date === '' ? '' : `, guardado ${date}`}.`,
  check: 'Ponga el patrón impreso sobre esta ventana antes de cortar: dos de un mismo modelo pueden diferir.',
};
