import type { SheetsRefusal } from '../../sheets/sheetChoices.ts';
import { joinWords, type Show } from '../show.ts';
import type { Sentences } from '../words.ts';

const list = (known: readonly string[]): string =>
  joinWords(
    known.map((one) => `«${one}»`),
    'o',
  );

/** Why sheets cannot be made as they are asked for. */
export function saySheetsRefusal(refusal: SheetsRefusal, show: Show): Sentences {
  switch (refusal.code) {
    case 'ROLL_WIDTH_OUT_OF_RANGE':
      return {
        what: `No se puede imprimir en un rollo de papel de ${show.number(refusal.width)} mm de ancho: va de ${refusal.least} a ${refusal.most} mm.`,
        why: 'En uno más estrecho no cabe el cuadrado de medida, y ninguna página puede ser más ancha.',
        do: 'Indique en la impresora el ancho del rollo.',
      };
    case 'CORRECTION_OUT_OF_RANGE':
      return {
        what: `La corrección de la impresora ${refusal.axis === 'x' ? 'a lo ancho del papel' : 'a lo largo del papel'} es ${show.number(refusal.factor, 4)}; va de ${show.number(refusal.least, 4)} a ${show.number(refusal.most, 4)}.`,
        why: 'Una impresora que falla más está puesta para ajustar las páginas.',
        do: 'Póngala a tamaño real y mida otra vez la página de prueba: el factor es nominal entre medido.',
      };
    case 'TEMPLATE_COPIES_OUT_OF_RANGE':
      return {
        what: `No se pueden hacer ${show.number(refusal.copies)} copias de una plantilla.`,
        why: '',
        do: `Pida un número entero de 1 a ${refusal.most}.`,
      };
    case 'LABEL_START_OUT_OF_RANGE':
      return {
        what: `No hay etiqueta ${show.number(refusal.start)} en esta hoja de etiquetas: se cuentan de 1 a ${refusal.most}, de izquierda a derecha y luego hacia abajo.`,
        why: '',
        do: 'Indique la primera etiqueta que queda en la hoja.',
      };
    case 'LABEL_COPIES_OUT_OF_RANGE':
      return {
        what: `No se pueden hacer ${show.number(refusal.copies)} etiquetas de cada panel.`,
        why: '',
        do: `Pida un número entero de 1 a ${refusal.most}.`,
      };
    case 'LABEL_TOO_SMALL_FOR_CODE':
      return {
        what: `Estas etiquetas son demasiado pequeñas para sus códigos: un punto mediría ${show.number(refusal.module, 2)} mm, y un teléfono lee con seguridad desde ${show.number(refusal.least, 2)} mm.`,
        why: '',
        do: 'Elija etiquetas mayores, o quite la dirección de la página: el código será más corto.',
      };
    case 'LOGO_UNREADABLE':
      return {
        what: 'El signo del taller en el catálogo no es una imagen PNG o JPEG que se pueda leer.',
        why: 'Va en la cabecera del presupuesto.',
        do: 'Elija otra vez la imagen en el catálogo, o quítela.',
      };
    case 'PRINTER_UNKNOWN':
      return {
        what: `El catálogo no tiene la impresora «${refusal.id}».`,
        why: '',
        do:
          refusal.known.length === 0
            ? 'Añádala al catálogo, o nombre el papel en su lugar.'
            : `Nombre ${list(refusal.known)}, o añádala al catálogo.`,
      };
    case 'OFFER_UNKNOWN':
      return {
        what: `Una opción del presupuesto nombra «${refusal.id}», que el catálogo no tiene.`,
        why: '',
        do: 'Elija de nuevo las opciones del encargo o añádalo al catálogo.',
      };
    case 'NO_OFFCUTS_TO_LABEL':
      return {
        what: 'No hay ningún retal que etiquetar.',
        why: 'El catálogo no guarda ninguno sin cortar, o ninguno con esos nombres.',
        do: 'Guarde primero un retal, o nombre uno que esté en el almacén.',
      };
    case 'LABEL_STOCK_UNKNOWN':
      return {
        what: `«${refusal.name.slice(0, 60)}» no es una hoja de etiquetas conocida.`,
        why: '',
        do: `Nombre ${list(refusal.known)}.`,
      };
  }
}
