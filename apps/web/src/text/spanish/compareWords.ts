import type { Words } from '../words.ts';

/** Words of lays set side by side, in Spanish. */
export const compareWords: Words['compare'] = {
  title: (lay) => `Comparar ${lay}`,
  about: 'Aparte el tendido como está, cámbielo o busque más, y vea los dos: tela, dinero y lo que sobra.',
  keep: 'Apartar este tendido',
  name: (number, length) => `Apartado ${number}: ${length}`,
  lay: 'Tendido apartado',
  now: 'El tendido como está ahora',
  leaves: 'Sobra',
  left: (count, worth) => (count === 0 ? 'nada' : `${count}, por valor de ${worth}`),
  actions: 'Qué hacer con él',
  show: 'Lado a lado',
  use: 'Usarlo',
  remove: 'Quitar',
  longer: (length) => `${length} más`,
  shorter: (length) => `${length} menos`,
  notSold: 'rollo que no se vende',
  fitsNoLonger: 'Las piezas o los lugares libres han cambiado desde entonces: ya no cabe.',
};
