import { wrongWayWords } from '../wrongWayWords.ts';

/** Eine falsche Art, eine Blende anzusetzen, auf Deutsch. */
export const wrongWay = wrongWayWords({
  along: 'um einen Platz verschoben',
  half: 'um eine halbe Drehung',
  turned: (by: string) => `um ${by} gedreht`,
  side: 'umgewendet, links für rechts',
  top: 'umgewendet, oben für unten',
  over: (by: string) => `umgewendet und um ${by} gedreht`,
  shifted: ' und verschoben',
  tells: (way, drawn, all, push) => `${way}: ${drawn} von ${all} Punkten ziehen noch, ${push} stoßen ab`,
});
