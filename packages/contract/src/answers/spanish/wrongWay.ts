import { wrongWayWords } from '../wrongWayWords.ts';

/** Una manera equivocada de poner un panel, en español. */
export const wrongWay = wrongWayWords({
  along: 'corrido un lugar',
  half: 'girado media vuelta',
  turned: (by: string) => `girado ${by}`,
  side: 'vuelto, izquierda por derecha',
  top: 'vuelto, arriba por abajo',
  over: (by: string) => `vuelto y girado ${by}`,
  shifted: ' y corrido',
  tells: (way, drawn, all, push) => `${way}: ${drawn} de ${all} puntos aún tiran y ${push} se repelen`,
});
