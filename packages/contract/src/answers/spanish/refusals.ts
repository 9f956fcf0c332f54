import type { DocumentKind } from '@panewright/design';
import { pathText } from '../../document/issue.ts';
import { joinWords, type Show } from '../show.ts';
import type { RefusalWords } from '../words.ts';
import { fileRemedy, sayFileRefusal } from './fileRefusals.ts';
import { impossibleOutline } from './impossibleSurvey.ts';
import { sayIssue } from './issues.ts';
import { saySheetsRefusal } from './sheetsRefusals.ts';
import { reshapeRefusals, traceRefusals } from './tracing.ts';

const a: Readonly<Record<DocumentKind, string>> = { job: 'un trabajo', catalogue: 'un catálogo' };
const the: Readonly<Record<DocumentKind, string>> = { job: 'El trabajo', catalogue: 'El catálogo' };

const listIssues = (issues: Parameters<typeof sayIssue>[0][], show: Parameters<typeof sayIssue>[1]) =>
  issues.map((issue) => sayIssue(issue, show)).join(' ');

type Pair = Extract<Parameters<RefusalWords['PULL_REFUSED']>[0], object>['refusal'];

const DIMENSIONS: Readonly<Record<string, string>> = {
  ...{ width: 'el ancho', height: 'el alto', thickness: 'el grosor', diameter: 'el diámetro' },
};

/** Why a pair of magnets is refused, as the end of a sentence. */
function sayPair(refusal: Pair, show: Show): string {
  switch (refusal.code) {
    case 'MAGNET_SIZE_NOT_POSITIVE':
      return `${DIMENSIONS[refusal.dimension] ?? refusal.dimension} del imán ${refusal.magnet} es ${show.number(refusal.value, 6)} mm y debe ser mayor que 0`;
    case 'REMANENCE_OUT_OF_RANGE':
      return `la remanencia del imán ${refusal.magnet} es ${show.number(refusal.remanence, 4)} T; debe ser mayor que 0 y hasta ${show.number(refusal.most)} T`;
    case 'GAP_NOT_POSITIVE':
      return `la separación es ${show.number(refusal.gap, 6)} mm y debe ser mayor que 0`;
    case 'GAP_TOO_SMALL':
      return `una separación de ${show.number(refusal.gap, 9)} mm es menor que los ${show.number(refusal.least, 9)} mm que abarca la fórmula`;
    case 'OFFSET_NOT_FINITE':
      return 'el desplazamiento no es finito';
  }
}

type Instance = Extract<Parameters<RefusalWords['PACK_REFUSED']>[0], object>['refusal'];

/** Why an instance is refused, as the end of a sentence. Its lengths have a unit of their own. */
function sayInstance(refusal: Instance, show: Show): string {
  const number = (value: number) => show.number(value, 3);
  switch (refusal.code) {
    case 'NO_PIECES_TO_LAY':
      return 'no pide ninguna pieza';
    case 'STRIP_WIDTH_NOT_POSITIVE':
      return `la tira mide ${number(refusal.stripWidth)} de ancho`;
    case 'SPACING_NOT_A_LENGTH':
      return `la separación es ${number(refusal.spacing)}`;
    case 'MARGIN_NOT_A_LENGTH':
      return `los márgenes son ${number(refusal.side)} y ${number(refusal.end)}`;
    case 'MARGINS_LEAVE_NO_CLOTH':
      return `unos márgenes de ${number(refusal.side)} no dejan nada de una tira de ${number(refusal.stripWidth)}`;
    case 'PIECE_WIDER_THAN_ROLL':
      return `la pieza ${refusal.pieceId} necesita ${number(refusal.leastWidth)} a lo ancho de una tira que deja ${number(refusal.usableWidth)}`;
    case 'RESERVED_PLACE_HAS_NO_AREA':
      return `un sitio reservado (número ${refusal.place + 1}) no tiene superficie`;
    default:
      return `la pieza ${refusal.pieceId} ${sayPiece(refusal, show)}`;
  }
}

function sayPiece(refusal: Extract<Instance, { readonly pieceId: unknown }>, show: Show): string {
  switch (refusal.code) {
    case 'PIECE_ID_TWICE':
      return 'se nombra dos veces';
    case 'PIECE_DEMAND_NOT_WHOLE':
      return `se pide ${show.number(refusal.demand, 6)} veces, que no es un número entero`;
    case 'PIECE_VERTEX_NOT_FINITE':
      return `tiene una esquina (número ${refusal.vertex + 1}) que no es finita`;
    case 'PIECE_HAS_NO_AREA':
      return 'no tiene superficie';
    case 'PIECE_RUNS_CLOCKWISE':
      return 'va en el sentido de las agujas del reloj; se pide al revés';
    case 'PIECE_CROSSES_ITSELF':
      return `se cruza en los bordes ${refusal.edges[0] + 1} y ${refusal.edges[1] + 1}`;
    case 'PIECE_HAS_NO_TURN':
      return 'no admite ningún giro: 0 es como está dibujada';
    case 'PIECE_TURN_NOT_FINITE':
      return 'tiene un giro que no es finito';
    case 'PIECE_WIDER_THAN_ROLL':
      return 'es más ancha que la tira';
  }
}

type Hold = Extract<Parameters<RefusalWords['HOLD_REFUSED']>[0], object>['refusal'];

/** Why a panel's hold is refused, as the end of a sentence. */
function sayHold(refusal: Hold, show: Show): string {
  switch (refusal.code) {
    case 'GRADE_UNKNOWN':
      return `no se conoce el grado «${refusal.grade}» del imán ${refusal.magnet}`;
    case 'PULL_REFUSED':
      return `la fuerza a través de ${show.fine(refusal.gap)} queda fuera de lo que abarca la fórmula`;
    case 'FASTENER_STRENGTH_UNKNOWN':
      return `nadie ha probado aún cuánto sujeta ${refusal.fastener}`;
    case 'FASTENER_ENDS_REVERSED':
      return `la fuerza de ${refusal.fastener} tiene el extremo bajo por encima del alto`;
    case 'TOO_FEW_HOLD_POINTS':
      return `${refusal.count} puntos de sujeción son muy pocos; ${refusal.least} es el mínimo`;
    case 'HOLD_POINTS_COINCIDE':
      return `los puntos de sujeción ${refusal.at + 1} y ${refusal.next + 1} están en el mismo sitio`;
    case 'SPEED_OUT_OF_RANGE':
      return `una racha de ${show.speed(refusal.speed)} pasa de los ${show.speed(refusal.most)} que se consideran`;
    case 'OPENNESS_OUT_OF_RANGE':
      return `una malla abierta al ${show.percent(refusal.openFraction)} queda fuera de lo conocido`;
    default:
      return 'un valor queda fuera de lo que abarca la fórmula';
  }
}

const documentRefusals = {
  TEXT_NOT_JSON: ({ position, near }) => ({
    what:
      near === ''
        ? 'El archivo está vacío.'
        : `Esto no es JSON: la lectura paró ${position === null ? 'cerca de' : `en el carácter ${position + 1}, cerca de`} «${near.replace(/\s+/g, ' ')}».`,
    why: 'Un trabajo o un catálogo se guarda como un solo texto JSON.',
    do: 'Use el archivo como se guardó; a uno cortado o cambiado a mano le puede faltar un paréntesis, una comilla o una coma.',
  }),
  TEXT_TOO_LONG: ({ length, most }) => ({
    what: `El texto tiene ${length} caracteres; se leen hasta ${most}.`,
    why: 'Un trabajo de 400 huecos queda muy por debajo.',
    do: 'Mire si es el archivo correcto; divida en dos un trabajo mayor.',
  }),
  DOCUMENT_NOT_AN_OBJECT: ({ kind }) => ({
    what: `Esto es JSON, pero no ${a[kind]}: se espera un objeto entre llaves.`,
    why: '',
    do: `Dé el archivo como se guarda ${a[kind]}.`,
  }),
  DOCUMENT_OTHER_FORMAT: ({ kind, found, wanted }) => ({
    what: `Esto no es ${a[kind]}: ${found === null ? 'no nombra ningún formato' : `su formato dice «${found}», no «${wanted}»`}.`,
    why: '',
    do: `Dé un documento cuyo "format" sea "${wanted}".`,
  }),
  DOCUMENT_VERSION_UNREADABLE: ({ kind, found }) => ({
    what: `${the[kind]} no tiene una versión que se pueda leer${found === null ? '' : `: «${found}»`}.`,
    why: 'La versión dice cómo entender el resto, así que no se adivina.',
    do: 'Ponga en "version" el número entero con que se guardó; 1 es la primera.',
  }),
  DOCUMENT_NEWER: ({ kind, found, newest }) => ({
    what: `${the[kind]} es de la versión ${found}; este programa conoce hasta la ${newest}.`,
    why: 'Lo guardó un programa más nuevo, y aquí se perdería una parte.',
    do: 'Ábralo con el programa más nuevo, o actualice este.',
  }),
  DOCUMENT_INVALID: ({ kind, issues }, show) => ({
    what: `${the[kind]} no se puede usar así. ${listIssues([...issues], show)}`,
    why: 'Al leer no se adivina ni se omite nada.',
    do: issues[0] ? `Empiece por ${pathText(issues[0].path) || 'lo primero que se nombra'}.` : '',
  }),
} satisfies Partial<RefusalWords>;

const storeRefusals = {
  JOB_NOT_FOUND: ({ id }) => ({
    what: `No hay aquí ningún trabajo «${id}».`,
    why: '',
    do: 'Mire la lista de trabajos; puede estar guardado en otra máquina.',
  }),
  REVISION_NOT_FOUND: ({ id, revision, newest }) => ({
    what: `«${id}» no tiene revisión ${revision}; la más nueva es la ${newest}.`,
    why: '',
    do: `Elija una de 1 a ${newest}.`,
  }),
  JOB_EXISTS: ({ id, newest }) => ({
    what: `Ya hay aquí un trabajo «${id}», en la revisión ${newest}.`,
    why: 'Guardarlo como nuevo taparía el que hay.',
    do: 'Ábralo y guarde sobre su revisión más nueva, o dé otro identificador al nuevo.',
  }),
  REVISION_STALE: ({ id, basedOn, newest, savedAt }) => ({
    what: `«${id}» se guardó entretanto en otro sitio: esto parte de la revisión ${basedOn}, la más nueva es la ${newest} del ${savedAt}.`,
    why: 'Guardar encima perdería el otro trabajo.',
    do: `Abra la revisión ${newest}, mire qué cambia y guarde de nuevo desde ahí.`,
  }),
  PHOTO_NOT_FOUND: ({ id }) => ({
    what: `No hay aquí ninguna foto «${id}».`,
    why: 'Una foto se guarda mientras la tenga un retal del almacén, y un día más.',
    do: 'Haga la foto otra vez.',
  }),
  PHOTO_EXISTS: ({ id }) => ({
    what: `Ya se guarda otra foto como «${id}».`,
    why: '',
    do: 'Guarde la nueva con otro identificador.',
  }),
  PHOTO_NO_PICTURE: () => ({
    what: 'El archivo no es una imagen JPEG, PNG o WebP que se pueda leer hasta el final.',
    why: '',
    do: 'Guarde la foto como JPEG e inténtelo otra vez.',
  }),
  PHOTO_TOO_LARGE: ({ size, most }, show) => ({
    what: `La foto tiene ${show.number(size / 1e6)} MB; se guardan como mucho ${show.number(most / 1e6)} MB.`,
    why: '',
    do: 'Hágala más pequeña: bastan 1600 puntos en su lado mayor.',
  }),
  PHOTO_TOO_WIDE: ({ width, height, most }) => ({
    what: `La foto tiene ${width} × ${height} puntos; ningún lado puede tener más de ${most}.`,
    why: '',
    do: 'Hágala más pequeña: bastan 1600 puntos en su lado mayor.',
  }),
  PATTERN_NOT_FOUND: ({ id }) => ({
    what: `No hay aquí ningún patrón guardado «${id}».`,
    why: '',
    do: 'Mire la lista de patrones guardados; puede estar en otra máquina.',
  }),
  PATTERN_EXISTS: ({ id, name }) => ({
    what: `Ya se guarda un patrón «${id}»: «${name}».`,
    why: 'Un patrón guardado nunca se dibuja encima; otros trabajos pueden depender de él.',
    do: 'Guarde el nuevo con otro identificador.',
  }),
  STORE_BUSY: () => ({
    what: 'Otro programa está escribiendo en la carpeta de datos.',
    why: 'No se guardó nada.',
    do: 'Inténtelo otra vez en un momento.',
  }),
  STORE_FULL: () => ({
    what: 'El disco de la carpeta de datos está lleno.',
    why: 'No se guardó nada; lo guardado antes está a salvo.',
    do: 'Haga sitio en el disco y guarde otra vez.',
  }),
} satisfies Partial<RefusalWords>;

const textRefusals = {
  TAPE_TEXT_UNREADABLE: ({ text }) => ({
    what: `No se puede leer la distancia medida «${text.slice(0, 60)}».`,
    why: '',
    do: 'Escríbala como MARCA.ESQUINA-MARCA.ESQUINA=MM, por ejemplo 9.1-12.0=1323.9.',
  }),
  RULER_TEXT_UNREADABLE: ({ text }) => ({
    what: `No se puede leer la medida de las barras, «${text.slice(0, 60)}».`,
    why: '',
    do: 'Escríbala como XxY en mm, por ejemplo 200.18x150.29.',
  }),
  TAPS_TEXT_UNREADABLE: ({ text }) => ({
    what: `No se pueden leer los puntos de la línea, «${text.slice(0, 60)}».`,
    why: '',
    do: 'Escríbalos como FOTO:X,Y X,Y X,Y en píxeles, en orden por la línea, por ejemplo 1:620,720 2330,600 700,1552.',
  }),
  LINE_TEXT_UNREADABLE: ({ text }) => ({
    what: `«${text.slice(0, 60)}» no es ninguna de las líneas posibles.`,
    why: '',
    do: 'Diga darkest (la más oscura), inner (la interior) u outer (la exterior).',
  }),
  TAPS_UNUSABLE: ({ photo, photos, points, least }) => ({
    what:
      photo < 0 || photo >= photos
        ? `Los puntos de la línea son de la foto ${photo + 1}, y ${photos === 1 ? 'hay 1 foto' : `hay ${photos} fotos`}.`
        : `Los puntos de la línea son solo ${points} y no encierran nada.`,
    why: '',
    do: `Toque al menos ${least} puntos de la línea de una foto, en orden alrededor.`,
  }),
  PHOTO_UNREADABLE: ({ name }) => ({
    what: `«${name}» no es una imagen JPEG que se pueda leer.`,
    why: '',
    do: 'Guarde la foto como JPEG e inténtelo otra vez.',
  }),
  TRACE_REFUSED: ({ refusal }) => ({
    what: (traceRefusals[refusal.code] as (of: typeof refusal) => string)(refusal),
    why: 'Un contorno equivocado cuesta más que otra foto.',
    do: '',
  }),
  RESHAPE_REFUSED: ({ refusal }, show) => ({
    what: (reshapeRefusals[refusal.code] as (of: typeof refusal, show: Show) => string)(refusal, show),
    why: '',
    do: '',
  }),
  BYTES_NOT_BASE64: ({ name }) => ({
    what: `Los bytes de «${name}» no son base64.`,
    why: '',
    do: 'Envíe los bytes del archivo en base64, sin saltos de línea.',
  }),
  DRAWING_REFUSED: ({ name, refusal }, show) => ({
    what: `«${name}» no da ningún contorno: ${sayFileRefusal(refusal, show)}.`,
    why: '',
    do: fileRemedy(refusal),
  }),
} satisfies Partial<RefusalWords>;

const designRefusals = {
  SHAPE_IMPOSSIBLE: ({ refusal }, show) => ({
    what: `Estos bordes no hacen una forma: ${impossibleOutline(refusal, show)}.`,
    why: '',
    do: 'Dé un anillo cerrado, contra las agujas del reloj visto por fuera, que no se cruce.',
  }),
  PULL_PLACE_MISSING: ({ id }) => ({
    what: `El caso «${id}» no dice dónde está el segundo imán.`,
    why: '',
    do: 'Dé gap_mm (y offset_mm), o centre_offset_mm.',
  }),
  PULL_REFUSED: ({ id, refusal }, show) => ({
    what: `El caso «${id}» no se puede calcular: ${sayPair(refusal, show)}.`,
    why: '',
    do: 'Corrija el caso; los demás no se imprimieron.',
  }),
  PACK_REFUSED: ({ refusal }, show) => ({
    what: `Las piezas no se pueden tender: ${sayInstance(refusal, show)}.`,
    why: '',
    do: 'Corrija la tarea.',
  }),
  SHEETS_REFUSED: ({ refusal }, show) => saySheetsRefusal(refusal, show),
  OPENING_UNKNOWN: ({ opening, known }) => ({
    what: `Este trabajo no tiene el hueco «${opening.slice(0, 60)}».`,
    why: '',
    do: known.length === 0 ? 'Aún no tiene ningún hueco.' : `Nombre uno de estos: ${joinWords(known, 'o')}.`,
  }),
  OPENING_NOT_HELD: ({ opening }, show) => ({
    what: `El hueco ${show.opening(opening)} no tiene aún puntos de sujeción.`,
    why: 'No se pudo calcular su contorno o su panel.',
    do: 'Pregunte a check qué le falta.',
  }),
  HOLD_REFUSED: ({ opening, refusal }, show) => ({
    what: `No se puede calcular qué sujeta el hueco ${show.opening(opening)}: ${sayHold(refusal, show)}.`,
    why: '',
    do: 'Mire su cristal, sus imanes y el tiempo previsto en el trabajo.',
  }),
} satisfies Partial<RefusalWords>;

const doorRefusals = {
  OPERATION_UNKNOWN: ({ name, known }) => ({
    what: `No hay ninguna orden «${name.slice(0, 60)}».`,
    why: '',
    do: `Use una de estas: ${joinWords(known, 'o')}.`,
  }),
  INPUT_INVALID: ({ operation, issues }, show) => ({
    what: `La entrada de ${operation} no se puede usar. ${listIssues([...issues], show)}`,
    why: '',
    do: 'Corrija lo nombrado y envíelo otra vez.',
  }),
  TAKES_TOO_LONG: ({ seconds }) => ({
    what: `Esto tardó más de ${seconds} s y se detuvo.`,
    why: '',
    do: 'Inténtelo con menos huecos a la vez, o en la línea de órdenes.',
  }),
  HOST_NOT_ALLOWED: ({ host }) => ({
    what: `Este servidor no responde por «${host.slice(0, 60)}».`,
    why: 'Sirve solo a esta máquina, para que ninguna página de fuera llegue a sus trabajos.',
    do: 'Ábralo en 127.0.0.1 o localhost, o añada el nombre a PANEWRIGHT_HOSTS.',
  }),
  ORIGIN_NOT_ALLOWED: ({ origin }) => ({
    what: `Preguntó una página de «${origin.slice(0, 60)}»; solo pueden las de este servidor.`,
    why: 'Otro sitio no debe leer ni cambiar sus trabajos.',
    do: 'Abra la página desde este servidor.',
  }),
  BODY_NOT_JSON: ({ found }) => ({
    what: `La petición debe enviarse como application/json; llegó como «${found.slice(0, 60)}».`,
    why: '',
    do: 'Ponga el tipo de contenido.',
  }),
  PATH_UNKNOWN: ({ path }) => ({
    what: `No hay nada en «${path.slice(0, 80)}».`,
    why: '',
    do: 'Las órdenes están en /api/openapi.json.',
  }),
} satisfies Partial<RefusalWords>;

export const refusals: RefusalWords = {
  ...documentRefusals,
  ...storeRefusals,
  ...textRefusals,
  ...designRefusals,
  ...doorRefusals,
};
