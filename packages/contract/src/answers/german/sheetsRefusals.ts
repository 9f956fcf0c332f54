import type { SheetsRefusal } from '../../sheets/sheetChoices.ts';
import { joinWords, type Show } from '../show.ts';
import type { Sentences } from '../words.ts';

const list = (known: readonly string[]): string =>
  joinWords(
    known.map((one) => `„${one}“`),
    'oder',
  );

/** Why sheets cannot be made as they are asked for. */
export function saySheetsRefusal(refusal: SheetsRefusal, show: Show): Sentences {
  switch (refusal.code) {
    case 'ROLL_WIDTH_OUT_OF_RANGE':
      return {
        what: `Auf eine ${show.number(refusal.width)} mm breite Papierrolle lässt sich nicht drucken: sie misst ${refusal.least} bis ${refusal.most} mm.`,
        why: 'Eine schmalere hat keinen Platz für das Prüfquadrat, und breiter darf keine Seite sein.',
        do: 'Beim Drucker die Breite der Rolle angeben.',
      };
    case 'CORRECTION_OUT_OF_RANGE':
      return {
        what: `Die Berichtigung des Druckers ${refusal.axis === 'x' ? 'quer zum Papier' : 'längs des Papiers'} ist ${show.number(refusal.factor, 4)}; sie liegt von ${show.number(refusal.least, 4)} bis ${show.number(refusal.most, 4)}.`,
        why: 'Ein Drucker, der weiter daneben liegt, ist auf Anpassen der Seiten eingestellt.',
        do: 'Auf Originalgröße stellen und die Prüfseite neu messen: der Faktor ist Sollmaß durch Gemessenes.',
      };
    case 'TEMPLATE_COPIES_OUT_OF_RANGE':
      return {
        what: `${show.number(refusal.copies)} Stück einer Schablone lassen sich nicht machen.`,
        why: '',
        do: `Eine ganze Zahl von 1 bis ${refusal.most} angeben.`,
      };
    case 'LABEL_START_OUT_OF_RANGE':
      return {
        what: `Etikett ${show.number(refusal.start)} gibt es auf diesem Etikettenbogen nicht: gezählt wird von 1 bis ${refusal.most}, von links nach rechts, dann abwärts.`,
        why: '',
        do: 'Das erste Etikett angeben, das noch auf dem Bogen ist.',
      };
    case 'LABEL_COPIES_OUT_OF_RANGE':
      return {
        what: `${show.number(refusal.copies)} Etiketten je Blende lassen sich nicht machen.`,
        why: '',
        do: `Eine ganze Zahl von 1 bis ${refusal.most} angeben.`,
      };
    case 'LABEL_TOO_SMALL_FOR_CODE':
      return {
        what: `Diese Etiketten sind zu klein für ihre Codes: ein Punkt wäre ${show.number(refusal.module, 2)} mm, und ein Telefon liest sicher ab ${show.number(refusal.least, 2)} mm.`,
        why: '',
        do: 'Größere Etiketten wählen, oder die Adresse der Seite weglassen: der Code wird dann kürzer.',
      };
    case 'LOGO_UNREADABLE':
      return {
        what: 'Das Zeichen der Werkstatt im Katalog ist kein lesbares PNG- oder JPEG-Bild.',
        why: 'Es steht oben auf dem Angebot.',
        do: 'Das Bild im Katalog neu wählen, oder es entfernen.',
      };
    case 'PRINTER_UNKNOWN':
      return {
        what: `Der Katalog hat keinen Drucker „${refusal.id}“.`,
        why: '',
        do:
          refusal.known.length === 0
            ? 'Ihn in den Katalog aufnehmen, oder stattdessen das Papier nennen.'
            : `${list(refusal.known)} nennen, oder ihn in den Katalog aufnehmen.`,
      };
    case 'OFFER_UNKNOWN':
      return {
        what: `Eine Wahlmöglichkeit des Angebots nennt „${refusal.id}“, das der Katalog nicht hat.`,
        why: '',
        do: 'Die Wahlmöglichkeiten des Auftrags neu wählen oder es in den Katalog aufnehmen.',
      };
    case 'NO_OFFCUTS_TO_LABEL':
      return {
        what: 'Es gibt kein Reststück zu etikettieren.',
        why: 'Im Katalog ist keines, das noch nicht zugeschnitten ist, oder keines mit diesen Namen.',
        do: 'Zuerst ein Reststück aufheben, oder eines nennen, das im Bestand ist.',
      };
    case 'LABEL_STOCK_UNKNOWN':
      return {
        what: `„${refusal.name.slice(0, 60)}“ ist kein bekannter Etikettenbogen.`,
        why: '',
        do: `${list(refusal.known)} nennen.`,
      };
  }
}
