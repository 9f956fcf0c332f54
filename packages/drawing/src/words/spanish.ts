import type { Words } from '../words.ts';

const some = (names: readonly string[], most = 6): string =>
  names.length <= most ? names.join(', ') : `${names.slice(0, most).join(', ')} y ${names.length - most} más`;

const counted = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

/** Spanish sentences of the sheets. An opening is an hueco, a lay a tendido, the warp the urdimbre. */
export const spanish: Words = {
  page: {
    number: (page, pages) => `${page} / ${pages}`,
    made: (date, revision) => (revision === '' ? date : `${date} · revisión ${revision}`),
    jobLine: (job, date, revision) => `${job} · ${date}${revision === '' ? '' : ` · revisión ${revision}`}`,
    corrected: (across, along) =>
      `Corregido para esta impresora: a lo ancho × ${across}, a lo largo × ${along}.`,
    caution: () => 'PRECAUCIÓN',
    stop: () => 'NO SE PUEDE HACER ASÍ',
    doubt: () => 'REVISAR ANTES DE CORTAR',
  },
  pattern: {
    title: (pattern) => `Patrón ${pattern}`,
    outsideFace: () => 'Esta es la cara exterior.',
    up: () => 'arriba',
    finishedSize: (size) => `Panel terminado ${size}`,
    cutSize: (size) => `Tela cortada ${size}`,
    grain: (run) => `Hilo: ${run}`,
    warpUp: () => 'urdimbre vertical',
    warpAcross: () => 'urdimbre horizontal',
    warpEither: () => 'indiferente',
    servesCount: (count) => (count === 1 ? 'Para 1 hueco' : `Para ${count} huecos`),
    serves: (names) => `Para: ${names.join('; ')}.`,
    servesSome: (names, more) =>
      names.length === 0 ? `Para ${more} huecos.` : `Para: ${names.join('; ')}; y ${more} más.`,
    turnedOver: (name) => `${name} (vuelto)`,
    turned: (name, degrees) => `${name} (girado ${degrees}°)`,
    holdCount: (count) =>
      `${counted(count, 'punto de sujeción', 'puntos de sujeción')}, desde la esquina inferior izquierda`,
    joinCheck: (from, to, length) => `Una vez unido: del punto ${from} al ${to} hay ${length}.`,
    tiles: (count) => (count === 1 ? '1 hoja' : `${count} hojas`),
    joining: () =>
      'Recorte el borde derecho y el superior por el marco. Ponga cada hoja sobre la siguiente de modo que coincidan las cruces con círculo y péguelas. Las hojas en blanco se omiten.',
    measureFirst: () => 'Mida esta página antes de imprimir las demás',
    measureNote: (square, bar, most) =>
      `Imprima a tamaño real. El cuadrado mide ${square} en ambos sentidos y la barra ${bar}. Si el cuadrado falla más de ${most}, ponga la impresora al 100 % e imprima de nuevo.`,
    rollNote: () =>
      'El patrón está en la página siguiente, para una impresora de rollo. Mida su propio cuadrado y su barra antes de cortar.',
    rollMeasure: (square, bar, most) =>
      `Imprima a tamaño real y mida: el cuadrado ${square} en ambos sentidos, ${bar}. Si el cuadrado falla más de ${most}, corrija la impresora e imprima de nuevo.`,
    longBar: (length) => `la barra larga ${length}`,
    holdLabel: (number, patch) => `${number} · ${patch}`,
    joins: (label) => `une con ${label}`,
    tileOf: (label, count) => `Hoja ${label}, ${count} en total`,
    tileCheck: (bar, square) => `barra ${bar}, cuadrado ${square}`,
    key: () => 'Líneas y marcas',
    keyCut: () => 'Cortar la tela por aquí',
    keyFinished: () => 'Borde del panel terminado',
    keyStitch: () => 'Línea de costura',
    keyPocket: () => 'Bolsillo, en la cara interior',
    keyHold: () => 'Cruz en un círculo: centro de un imán. Raya: su sitio en el borde.',
    keyCentre: () => 'V: centro de un lado.',
    keyBindingStart: () => 'Dos rayas: aquí empieza el ribete.',
    bindingStarts: () => 'empieza el ribete',
  },
  reference: {
    title: () => 'Hojas de referencia para fotos de una lámina trazada',
    sheet: (n) => `Hoja de referencia ${n} de 4`,
    print: () =>
      'Imprima a tamaño real, sin «ajustar a la página». Aun así las impresoras estiran: las barras dicen cuánto.',
    places: () =>
      'Esquina inferior izquierda de cada marca, en mm desde la esquina inferior izquierda de la hoja, según el dibujo. Cada marca es un cuadrado de 60 mm.',
    place: (id, x, y) => `${id}:  x ${x.toFixed(1)}  y ${y.toFixed(1)}`.replaceAll('.', ','),
    rule: () =>
      'Mida las dos barras, de raya a raya de los extremos, con una regla de acero, a ser posible al quinto de milímetro, y anote lo leído.',
    lay: () =>
      'Pegue las cuatro hojas planas en la superficie donde está la línea, cerca de sus esquinas. Gire dos de ellas un cuarto de vuelta. No tape la línea. Después no mueva nada hasta tomar las fotos.',
    bar: (axis, length) => `${axis}: ${length} mm`,
  },
  printer: {
    title: () => 'Página de prueba de la impresora',
    how: () =>
      'Imprima esta página a tamaño real, con la impresora y el papel de los patrones. Mida las dos barras, de raya a raya de los extremos, con una regla de acero. Factor = nominal ÷ medido. Anote los dos factores para esta impresora; los patrones y plantillas saldrán a su medida. Esta página se imprime siempre sin corregir.',
    example: (nominal, measured, factor) =>
      `Ejemplo: una barra de ${nominal} que mide ${measured} da el factor ${factor}. Un factor fuera de 0,97 a 1,03 indica que la impresora reduce o amplía las páginas: desactívelo.`,
    across: (length) => `x: ${length} a lo ancho`,
    along: (length) => `y: ${length} en el sentido de avance`,
    axis: () => 'Barra',
    acrossName: () => 'a lo ancho',
    alongName: () => 'en el avance',
    nominal: () => 'Nominal',
    measured: () => 'Medido',
    factor: () => 'Factor',
  },
  edge: (edge) =>
    (
      ({
        ...{ bottom: 'lado inferior', right: 'lado derecho', top: 'lado superior', left: 'lado izquierdo' },
      }) as Record<string, string>
    )[edge] ?? edge.replace(/^side(\d+)$/, 'lado $1'),
  site: (kind) => ({ camper: 'autocaravana', boat: 'barco', house: 'casa', other: '' })[kind],
  caution: {
    hotKnife: () =>
      'El cuchillo caliente sobre malla recubierta desprende vapores ácidos que dañan los pulmones. Corte con extracción o al aire libre con mascarilla para gases ácidos, o en frío con tijeras. Aleje los disolventes.',
    magnetsPinch: () =>
      'Estos imanes saltan uno contra otro y pellizcan. Manténgalos a un palmo, use gafas de protección, aleje herramientas y tarjetas.',
    hotKnifeShort: () => 'Cuchillo caliente: vapores ácidos. Con extracción o mascarilla, o corte en frío.',
    magnetsShort: () => 'Los imanes pellizcan: a un palmo, con gafas, lejos de niños e implantes.',
    magnetsSwallow: () =>
      'Dos imanes tragados pueden matar. Cuéntelos al sacarlos y al guardarlos, tenga los sueltos en una caja cerrada fuera del alcance de los niños, cosa todos los bolsillos.',
    magnetsImplants: () =>
      'Quien lleve un marcapasos u otro implante debe mantenerse lejos de los imanes, tanto como indique el fabricante del aparato y nunca a menos de 150 mm.',
    compass: () =>
      'Los imanes desvían la brújula. Aleje de ella los paneles y los imanes sueltos, y compruébela después del montaje.',
    solvent: () =>
      'El alcohol isopropílico arde y su vapor se inflama con facilidad. Sin llamas, sin cuchillo caliente, sin cigarrillos; ventile bien; deje secar.',
    driving: (names) =>
      names.length === 0
        ? 'Quite todos los paneles antes de conducir.'
        : `Quite todos los paneles antes de conducir. Quien conduce ve por: ${some(names)}.`,
    drivingHere: () => 'Quien conduce ve por esta ventana. Quite el panel antes de que el vehículo se mueva.',
    exits: (names) =>
      `Señalado como salida de emergencia: ${some(names)}. Lea el aviso de su página antes de montar.`,
    exitPanel: (names) =>
      `Para ${some(names)}. Pregunte antes de hacerlo. Debe quitarse desde dentro con una mano y sin herramientas: acuerde un tirador y lea la hoja de montaje.`,
    exitTitle: () => 'SALIDA DE EMERGENCIA',
    exitHere: () =>
      'No monte aquí un panel, o móntelo de modo que una mano lo quite desde dentro sin herramientas. Deje a la vista el rótulo y la manilla de la salida. Todos los que duermen aquí lo prueban una vez. Las normas locales mandan.',
    heatInside: () =>
      'Un vehículo aparcado o una habitación cerrada se calienta peligrosamente aun detrás de un panel. Nunca deje dentro a un niño, una persona frágil o un animal.',
  },
  work: {
    keyedMagnets: () =>
      'Con clave: no todos los imanes van del mismo lado. Un punto de pintura los distingue; no hace falta brújula.',
    dotTest: () => 'Pinte un punto en una cara de un imán. Sirve para probar todos los demás: no lo monte.',
    stackAndDot: (count) =>
      `Deje que los otros ${count} se peguen a su cara con punto, en una pila. A cada uno que salga del extremo, píntele un punto en la cara libre.`,
    dotOut: (points) => `Punto hacia fuera, lejos del cristal, en: ${points}.`,
    dotToGlass: (points) => `Punto hacia el cristal en: ${points}.`,
    dotToRoom: (points) => `Dentro del cristal, punto hacia la sala en: ${points}.`,
    dotInsideToGlass: (points) => `Dentro del cristal, punto hacia el cristal en: ${points}.`,
    checkDraws: () =>
      'Antes de coser un bolsillo, acérquele su imán interior: debe atraer. Numere los imanes interiores como sus puntos.',
    steelPieces: (count, strip) => `Corte ${counted(count, 'trozo', 'trozos')} de pletina de acero: ${strip}`,
    steelCut: (length) =>
      `De ${length} cada uno. Lime los extremos, pinte los cortes. Sin envolver; atraen las dos caras.`,
    fasteners: (count, fastener) => `Ponga ${counted(count, 'cierre', 'cierres')}: ${fastener}`,
    fastenerHow: (inset) =>
      `El centro de cada uno a ${inset} del borde terminado, en su marca. Ahora la mitad del panel; la del marco, al montarlo.`,
    fastenerRun: (length) => `Cosa el bucle por todo el borde, ${length}; el gancho va en el marco.`,
    title: () => 'Orden de trabajo',
    customer: (name) => `Para ${name}`,
    onFront: (numbers) => `Portada, n.º\u00a0${numbers.join(', ')}.`,
    wholeJob: () => 'En el orden del trabajo',
    notes: () => 'Notas del encargo',
    job: () => 'El encargo',
    panels: () => 'Paneles',
    panelsOf: (panels, patterns) => `${panels}, de ${counted(patterns, 'patrón', 'patrones')}`,
    holdPoints: () => 'Puntos de sujeción',
    layName: (lay) => `Tendido ${lay}`,
    layFigures: (cloth, width, length) => `${cloth}, ${width} de ancho, ${length} de largo`,
    layOffcut: (cloth, name, place) => `${cloth}, en el retal «${name}»${place === '' ? '' : ` (${place})`}`,
    estimate: () => 'Tiempo (estimado)',
    minutes: () => 'min',
    minutesHeading: () => 'Minutos',
    operation: () => 'Trabajo',
    times: () => 'Veces',
    estimated: () => 'Estimado',
    used: () => 'Empleado',
    printPatterns: (count) => `Imprimir y unir ${counted(count, 'patrón', 'patrones')}`,
    printHow: () =>
      'Mida el cuadrado de cada portada antes de imprimir el resto. Una las hojas por las cruces con círculo. Compruebe la medida indicada entre dos puntos de sujeción.',
    layCloth: (count) => `Tender la tela y cortar ${counted(count, 'tendido', 'tendidos')}`,
    layHow: () =>
      'Siga el dibujo del tendido. La misma cara arriba y la urdimbre en el mismo sentido en todo. Marque cada pieza con su nombre antes de que salga de la mesa.',
    keptTogether: (together) =>
      together === 'panel'
        ? 'Guarde aparte las piezas de cada tendido: cada panel lleva los bolsillos de su propio tendido.'
        : 'Guarde aparte las piezas de cada tendido: los paneles de un lugar están en un tendido y llevan sus bolsillos.',
    oneWay: () => 'Todas las piezas de una tela van en un sentido: no gire ninguna un cuarto de vuelta.',
    cutBinding: (count) => `Cortar ${counted(count, 'tira', 'tiras')} de ribete`,
    cutBindingHow: () =>
      'Rollo por rollo, como dice la lista de corte. Rotule cada tira con el hueco que allí se nombra.',
    markTest: () => 'Marcar un imán de prueba',
    markTestHow: () =>
      'Busque la cara norte con una brújula: atrae el extremo sur de la aguja. Píntela de rojo. Use este mismo imán en todas las comprobaciones del encargo.',
    makePanels: (count) =>
      `Hacer los paneles: ${counted(count, 'sección', 'secciones')} en las páginas siguientes`,
    makeHow: () => 'Una sección por patrón. Marque cada paso cuando estén hechos todos sus paneles.',
    fit: () => 'Montar el juego',
    fitHow: () => 'Siga la hoja de montaje: muestra cada hueco por fuera y por dentro.',
    section: (pattern, panels) => `${pattern} · ${counted(panels, 'panel', 'paneles')}`,
    onePanel: () => 'Un panel',
    finished: () => 'Terminado',
    cut: () => 'Cortado',
    clothName: () => 'Tela',
    grain: () => 'Hilo',
    mass: () => 'Masa',
    pictureNote: () => 'Visto por fuera. Los números son puntos de sujeción.',
    cutPanels: (count, pattern) => `Cortar ${counted(count, 'panel', 'paneles')} de ${pattern}`,
    cloth: (cloth, size) => `${cloth}, cada uno ${size}.`,
    piece: (piece, count, lays) =>
      lays.length === 0
        ? `Pieza ${piece}: ${count}.`
        : `Pieza ${piece}: ${count}, en el tendido ${lays.join(', ')}.`,
    turnedOver: (count) => `${count} con el patrón vuelto: las dos caras de esta tela son distintas.`,
    faceUp: () => 'Marque con tiza la cara exterior de cada una.',
    mark: (points) => `Marcar ${counted(points, 'punto de sujeción', 'puntos de sujeción')} en cada panel`,
    markHow: () => 'A través del patrón, en la cara interior: cada centro, cada bolsillo, la raya del borde.',
    markSides: (bound) =>
      bound
        ? 'Marque el centro de cada lado y las dos rayas donde empieza el ribete.'
        : 'Marque el centro de cada lado.',
    pockets: (all, each, panels) =>
      panels === 1
        ? `Coser ${counted(all, 'bolsillo', 'bolsillos')}`
        : `Coser ${all} bolsillos, ${each} por panel`,
    pocketPieces: (pieces) => `Piezas de bolsillo, cada una en su punto: ${pieces.join('; ')}.`,
    pocketPiece: (piece, points) => `${piece} en ${points.join(', ')}`,
    pocketHow: (seam, tack) =>
      `El lado recto, en el borde del panel. Cosa el lado curvo a ${seam} de su borde; deje abierto el lado recto. Remate ${tack} en los dos extremos.`,
    thread: (thread, needle, stitch) =>
      needle === ''
        ? `Hilo ${thread}; pespunte de ${stitch}.`
        : `Hilo ${thread}; aguja ${needle}; pespunte de ${stitch}.`,
    magnets: (count, magnet) => `Meter ${counted(count, 'imán', 'imanes')}: ${magnet}`,
    testMagnet: (pole) =>
      pole === 'north'
        ? 'Cara norte hacia fuera, del lado contrario al cristal. Acerque la cara roja del imán de prueba a la cara exterior del panel, sobre el imán: debe repeler.'
        : 'Cara sur hacia fuera, del lado contrario al cristal. Acerque la cara roja del imán de prueba a la cara exterior del panel, sobre el imán: debe atraer.',
    testEach: (count) => `Pruebe los ${count} de cada panel antes de coser, y otra vez después.`,
    closePockets: () => 'Cierre el lado recto de cada bolsillo con el acabado del borde.',
    bind: (panels, binding) => `Ribetear ${counted(panels, 'panel', 'paneles')}: ${binding}`,
    bindingCut: (length, panels) =>
      panels === 1 ? `Largo de corte ${length}.` : `Largo de corte ${length} cada una, ${panels} tiras.`,
    bindingStart: (edge, overlap) =>
      `Empiece en el centro del ${edge}, en las dos rayas, nunca en una esquina. Solape los extremos ${overlap} y doble hacia dentro el de arriba.`,
    bindingSeam: (band, inset) =>
      `Se ven ${band} por cada cara. Cosa a ${inset} del borde interior, por las dos caras a la vez.`,
    hem: (panels, width) => `Hacer el dobladillo de ${counted(panels, 'panel', 'paneles')}, de ${width}`,
    hemHow: (run, inset) =>
      `Doble hacia dentro por la línea de acabado, ${run} en total. Cosa a ${inset} del canto doblado. Doble planas las esquinas, con piquetes donde se indica.`,
    hotCut: (panels) => `Sellar el borde de ${counted(panels, 'panel', 'paneles')}`,
    hotCutHow: (run) =>
      `Corte por la línea de acabado, ${run} en total, lo bastante despacio para que los hilos se sellen. Cosa el lado recto de cada bolsillo.`,
    glassMagnets: (count, magnet) =>
      `Preparar ${counted(count, 'imán', 'imanes')} para el interior del cristal: ${magnet}`,
    wrap: (count, film, strip, length) =>
      `Funda: corte ${film} en tiras de ${strip} de ancho y estas en trozos de ${length}, ${count} en total. Doble cada uno sobre su imán y séllelo.`,
    tape: (count, tape, length) =>
      `Cinta: ${counted(count, 'trozo', 'trozos')} de ${tape}, de ${length}, en el lado del cristal.`,
    glassPole: (pole) =>
      pole === 'north'
        ? 'Marque la cara que da a la habitación: sur. Compruebe que cada uno atrae en el sentido correcto a un bolsillo del panel.'
        : 'Marque la cara que da a la habitación: norte. Compruebe que cada uno atrae en el sentido correcto a un bolsillo del panel.',
    check: () => 'Comprobar y etiquetar cada panel',
    checkLabel: () => 'Escriba en la etiqueta el hueco y el patrón.',
  },
  exploded: {
    keyed: () => 'según la marca',
    fasteners: (count, fastener) => `Por el borde: ${counted(count, 'cierre', 'cierres')}, ${fastener}`,
    steel: (count, strip) =>
      `Dentro del cristal, con cinta: ${counted(count, 'trozo', 'trozos')} de ${strip}`,
    title: () => 'Las capas, de fuera hacia dentro',
    binding: (binding, band) => `Ribete: ${binding}, ${band} por cada cara`,
    hem: (band) => `Dobladillo de ${band}, doblado hacia dentro`,
    cloth: (cloth) => `Tela, cara exterior arriba: ${cloth}`,
    magnets: (count, magnet, pole) =>
      `${counted(count, 'imán', 'imanes')}, cara ${pole} hacia fuera: ${magnet}`,
    pockets: (count, pieces) => `${counted(count, 'bolsillo', 'bolsillos')}: ${some(pieces, 8)}`,
    layer: (name) =>
      (
        ({
          ...{ fabric: 'tela', wrapFilm: 'funda', tape: 'cinta', glass: 'cristal', air: 'aire' },
          ...{ standOff: 'aire bajo la junta', laminated: 'cristal laminado', acrylic: 'acrílico' },
          film: 'lámina',
        }) as Record<string, string>
      )[name] ?? name,
    between: (layers) => `Entre los imanes: ${layers}`,
    inside: (count, magnet) =>
      `Dentro del cristal, con funda y cinta: ${counted(count, 'imán', 'imanes')}, ${magnet}`,
  },
  check: {
    marks: () => 'Polos según la marca, cada imán interior atrae',
    fasteners: () => 'Los cierres aguantan al tirar con la mano',
    title: () => 'Comprobaciones de cada panel terminado',
    what: () => 'Comprobación',
    nominal: () => 'Debe ser',
    measured: () => 'Medido',
    width: () => 'Ancho',
    height: () => 'Alto',
    holdPoints: (from, to) => `Punto ${from} al ${to}, entre centros`,
    band: () => 'Banda vista por cada cara',
    stitchInset: () => 'Costura desde el borde interior',
    stitchLength: () => 'Largo de puntada',
    pocketsClosed: () => 'Bolsillos cosidos',
    poles: (pole) => `Polos con el imán de prueba, ${pole} fuera`,
    all: (count) => `los ${count}`,
  },
  install: {
    markNote: (dot, other, side) =>
      side === 'outside'
        ? `${dot}: el punto hacia fuera. ${other}: el punto hacia el cristal. Mida desde los dos bordes gruesos.`
        : `${dot}: el punto hacia la sala. ${other}: el punto hacia el cristal. Mida desde los dos bordes gruesos.`,
    keyedOnly: () =>
      'Este panel tiene clave: solo de una manera atrae en todos los puntos. Donde repele, está al revés.',
    steelNote: () => 'Trozos de pletina de acero en los números. Mida desde los dos bordes gruesos.',
    fastenerNote: () => 'Cierres en los números. Mida desde los dos bordes gruesos.',
    insideSteel: () => 'Ponga el acero por dentro',
    insideSteelHow: () =>
      'Cada trozo en su número, la cara con cinta al cristal. Su imán lo atrae poco de lado: marque antes su sitio, luego péguelo.',
    fastenerClean: () => 'Limpie el marco',
    fastenerCleanHow: () =>
      'Donde van los cierres, quite suciedad y cera. Las ventosas y el cierre de gancho lo piden limpio, seco y liso.',
    fastenerHang: () => 'Marque, y sujete primero el lado de arriba',
    fastenerHangHow: () =>
      'Sujete el panel con cinta, marque cada punto en el marco a través de él y ponga las mitades del marco desde las esquinas de arriba. Tela lisa, no tirante.',
    fastenerTakeOff: () => 'Para quitarlo',
    fastenerTakeOffHow: () =>
      'Suelte desde una esquina de abajo, cada cierre tirando recto. Guárdelo seco, plano o enrollado.',
    title: () => 'Hoja de montaje',
    clean: () => 'Limpiar el cristal y los imanes',
    cleanHow: () =>
      'Alcohol isopropílico y agua a partes iguales, en un paño sin pelusa. Deje secar. No toque lo que ha limpiado.',
    warm: () => 'Trabajar con calor y en seco',
    warmHow: () =>
      'Cristal, cinta e imanes entre 21 y 38 °C, nunca por debajo de 10 °C. Sin rocío en el cristal.',
    hang: () => 'Colgar primero el panel por fuera',
    hangHow: () =>
      'La cara exterior hacia fuera, la flecha hacia arriba. Siga el orden de la tabla: esquinas de arriba, lado de arriba, esquinas de abajo, el resto. Sujételo entretanto con cinta de poca adherencia.',
    insideFirst: () => 'Poner los imanes por dentro',
    insideHow: () =>
      'Cada uno en su número, con la cara marcada hacia la habitación. Atrae a su pareja a través del cristal: deje que encuentre su sitio con la cinta aún cubierta, marque alrededor y péguelo.',
    press: () => 'Apriete fuerte cada uno 10 segundos: 100 kPa en toda su cara.',
    dwell: () => 'Dejar 72 horas',
    dwellHow: () =>
      'La cinta tarda 72 horas en sujetar del todo. Hasta entonces, quite los paneles o déjelos flojos.',
    takeOff: () => 'Quitar y guardar',
    takeOffHow: () =>
      'Despegue desde una esquina de abajo. Guárdelos planos o enrollados con la malla hacia fuera, los bolsillos separados, secos. No doble sobre un imán.',
    panel: (pattern, turned, size) =>
      turned ? `Panel ${pattern}, patrón vuelto. Hueco ${size}.` : `Panel ${pattern}. Hueco ${size}.`,
    fromOutside: () => 'Visto por fuera',
    fromInside: () => 'Visto por dentro',
    pole: (pole) => (pole === 'north' ? 'N' : 'S'),
    poleNote: (letter, pole, side) => {
      const face = pole === 'north' ? 'norte' : 'sur';
      return side === 'outside'
        ? `${letter}: en el panel la cara ${face} da hacia fuera. Mida desde los dos bordes gruesos.`
        : `${letter}: dentro del cristal la cara ${face} da a la habitación. Mida desde los dos bordes gruesos.`;
    },
    number: () => 'N.º',
    across: (view, side) =>
      `${view === 'outside' ? 'Fuera' : 'Dentro'}, desde la ${side === 'left' ? 'izquierda' : 'derecha'}`,
    upFrom: () => 'Desde abajo',
    order: () => 'Orden',
    without: (names) => `Aún sin panel, vea la orden de trabajo: ${some(names)}.`,
    inches: () => 'pulgadas, al 1/16 más próximo',
    millimetres: () => 'milímetros enteros',
    tableNoteBox: (unit: string): string =>
      `Centros de los imanes, medidos hacia arriba desde una regla horizontal en el punto más bajo de la abertura y de lado desde otra vertical en su punto más exterior. En ${unit}.`,
    tableNote: (unit) =>
      `Centros de los imanes, a escuadra con los lados del hueco y medidos desde ellos, como si sus esquinas fueran vivas. En ${unit}.`,
  },
  lay: {
    title: () => 'Tendido',
    heading: (lay, cloth) => `${lay} · ${cloth}`,
    figures: (width, length, density, pieces) =>
      `Rollo de ${width} de ancho, ${length} empleados, ${density} en piezas. ${counted(pieces, 'pieza', 'piezas')}.`,
    offcut: (name, place, size, density, pieces) =>
      `En el retal «${name}»${place === '' ? '' : ` (${place})`}, ${size}, ${density} en piezas. ${counted(pieces, 'pieza', 'piezas')}. Mídalo antes de cortar.`,
    rows: (rows) => `El rollo sigue en ${rows} filas.`,
    ownPockets: (openings) =>
      `${openings === '' ? 'Sus' : `Para ${openings}: sus`} paneles llevan los bolsillos de este tendido.`,
    oneWay: () => 'Todas las piezas van en un sentido de la tela.',
    shaded: () => 'Más oscuro: piezas de bolsillo.',
    keptClear: (places) =>
      `Tachado: ${counted(places, 'lugar que se deja libre', 'lugares que se dejan libres')}.`,
  },
  pocket: {
    title: () => 'Piezas de bolsillo',
    note: () => 'A tamaño real: mida la barra. El lado de abajo va al borde del panel; la raya es su centro.',
    name: (piece, count) => `${piece} · cortar ${count}`,
    for: (patterns) => `Para ${some(patterns, 8)}`,
  },
  label: {
    title: (kind) => (kind === 'shelf' ? 'Etiquetas de estante' : 'Etiquetas para coser'),
    panel: (pattern, turned) => (turned ? `Panel ${pattern}, vuelto` : `Panel ${pattern}`),
    offcuts: () => 'Etiquetas de retales',
    alongAcross: (size) => `${size} (a lo largo × a lo ancho)`,
    batch: (batch) => `Lote ${batch}`,
  },
  template: {
    title: () => 'Hojas de plantillas',
    note: () =>
      'A tamaño real: mida la barra. Corte la tela o la lámina a través del papel, o recorte una plantilla y dibuje su contorno.',
    copies: (here, needed) =>
      `${counted(here, 'copia', 'copias')} en esta página; el encargo necesita ${needed}.`,
    pocketNote: () => 'El lado recto va al borde del panel; la raya es su centro.',
    film: (film, count) => `${film} · cortar ${count}`,
    filmNote: (magnet, size) =>
      `Para ${magnet}, cada una ${size}. Ponga el imán en su contorno, doble por la línea discontinua y selle los tres lados abiertos.`,
  },
  piece: {
    name: (piece, count) => `${piece} · cortar ${count}`,
    turnedOver: () => 'patrón vuelto',
    units: () => 'unidades: milímetros',
  },
  buy: {
    title: () => 'Lista de compra',
    noSupplier: () => 'Sin proveedor',
    item: () => 'Artículo',
    used: () => 'Empleado',
    buy: () => 'Comprar',
    left: () => 'Sobrante',
    cost: () => 'Coste',
    packs: (count, each) => `${count} × ${each}`,
    roll: (name, width) => `${name}, ${width} de ancho`,
    total: (cost) => `Todos los proveedores juntos: ${cost}`,
    note: () => 'Envases enteros a los precios del catálogo del taller, sin impuestos ni portes.',
    csv: (currency) => [
      ...[
        'proveedor',
        'artículo',
        'nombre',
        'unidad',
        'empleado',
        'envases',
        'cantidad por envase',
        'sobrante',
      ],
      ...[`precio por envase, ${currency}`, `coste, ${currency}`],
    ],
  },
  quote: {
    title: () => 'Presupuesto',
    for: () => 'Para',
    from: () => 'De',
    job: (name, id, date) => `${name} · ${id} · ${date}`,
    opening: () => 'Panel para',
    price: () => 'Precio',
    size: (size) => `Hueco ${size}`,
    subtotal: () => 'Paneles',
    tax: (rate) => `Impuesto ${rate}`,
    total: () => 'Total',
    valid: (days, until) => `Válido ${counted(days, 'día', 'días')}, hasta el ${until}.`,
    exits: (names) =>
      `Señalado como salida de emergencia: ${some(names)}. Un panel ahí debe quitarse desde dentro con una mano y sin herramientas, y las normas locales mandan.`,
    without: (names) => `No incluido en este presupuesto: ${some(names)}.`,
    unsettled: (names) =>
      `Con precio, pero aún no está decidido cómo se hará: ${some(names)}. No se empieza antes.`,
    options: () => 'Opciones',
    difference: () => 'Más o menos',
    optionsNote: () =>
      'Cada una para todos los paneles, en lugar de lo anterior, con impuesto; calculada por separado.',
    option: (names) => names.join(', '),
    optionUnsettled: (name) => `${name} (aún no está decidido cómo se hace)`,
    optionHem: (width) => `dobladillo de ${width}`,
    optionHotCut: () => 'borde cortado en caliente',
    optionMagnets: () => 'pares de imanes',
    optionHold: () => 'otra sujeción',
    terms: () => 'Condiciones',
    csv: (currency) => ['hueco', 'nombre', 'lugar', 'ancho mm', 'alto mm', 'tela', `precio, ${currency}`],
  },
  costs: {
    title: () => 'Costes, solo para el taller',
    about: () => 'No es para el cliente. Los minutos son los tiempos del propio taller: estimaciones.',
    material: () => 'Material',
    bought: () => 'Comprado por',
    charged: () => 'Cargado',
    labour: () => 'Trabajo',
    labourOf: (minutes, rate) => `Trabajo, ${minutes} a ${rate} la hora`,
    overhead: (rate) => `Gastos generales ${rate}`,
    cost: () => 'Coste',
    price: (markup) => (markup === '' ? 'Precio' : `Precio, con un recargo del ${markup}`),
    margin: (margin) => `Margen, ${margin} del precio`,
    sums: () => 'Del coste al precio',
    csv: (currency) => ['clase', 'nombre', 'cantidad', 'minutos', `coste, ${currency}`],
  },
  cut: {
    title: () => 'Lista de corte',
    nothing: () => 'No hay nada que cortar: ningún hueco tiene panel todavía.',
    pieces: () => 'Piezas de tela',
    piece: () => 'Pieza',
    count: () => 'Cantidad',
    size: () => 'Medida de corte',
    cloth: () => 'Tela',
    strip: (kind, name) =>
      ({ binding: `Ribete: ${name}`, wrapFilm: `Lámina de funda: ${name}`, tape: `Cinta: ${name}` })[kind],
    stock: (length) => `De rollos de ${length}`,
    roll: () => 'Rollo',
    lengths: () => 'Cortar, en este orden',
    left: () => 'Sobrante',
    lengthFor: (count, length, whom) =>
      count === 1 ? `${length} (${whom})` : `${count} × ${length} (${whom})`,
    csv: () => ['clase', 'material', 'pieza o rollo', 'cantidad', 'largo mm', 'ancho mm', 'para'],
  },
};
