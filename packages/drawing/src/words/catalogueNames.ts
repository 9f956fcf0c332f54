/**
 * What stands in the invented catalogue a shop begins with, in the other languages: English, German, Spanish. A name the
 * shop wrote itself stays as it wrote it.
 */
const NAMES: readonly (readonly [string, string, string])[] = [
  ['Your shop', 'Ihre Werkstatt', 'Su taller'],
  [
    'Half on order, half on delivery. Made to measure: cannot be returned. Panels come off before the vehicle is driven.',
    'Die Hälfte bei Auftrag, die Hälfte bei Lieferung. Nach Maß gefertigt: keine Rücknahme. Blenden vor der Fahrt abnehmen.',
    'La mitad con el pedido, la mitad a la entrega. Hecho a medida: no se admite devolución. Los paneles se quitan antes de conducir.',
  ],
  ['Mesh', 'Gewebe', 'Mallas'],
  ['Haberdashery', 'Kurzwaren', 'Mercería'],
  ['Magnets', 'Magnete', 'Imanes'],
  ['Fasteners', 'Befestigung', 'Fijaciones'],
  [
    'Coated mesh, black, 5 % open',
    'Beschichtetes Gewebe, schwarz, 5 % offen',
    'Malla recubierta, negra, 5 % abierta',
  ],
  [
    'Coated mesh, sand outside, grey inside, 10 % open',
    'Beschichtetes Gewebe, außen sand, innen grau, 10 % offen',
    'Malla recubierta, arena por fuera, gris por dentro, 10 % abierta',
  ],
  ['Insect mesh, grey, 45 % open', 'Insektengewebe, grau, 45 % offen', 'Mosquitera, gris, 45 % abierta'],
  [
    'Centrefold binding, woven, 7/8 in',
    'Gefalztes Einfassband, gewebt, 7/8 in',
    'Ribete plegado, tejido, 7/8 in',
  ],
  [
    'Centrefold binding, woven, 1 1/4 in',
    'Gefalztes Einfassband, gewebt, 1 1/4 in',
    'Ribete plegado, tejido, 1 1/4 in',
  ],
  ['Disc 10 × 3 mm, N42', 'Scheibe 10 × 3 mm, N42', 'Disco 10 × 3 mm, N42'],
  ['Disc 15 × 3 mm, N42H', 'Scheibe 15 × 3 mm, N42H', 'Disco 15 × 3 mm, N42H'],
  ['Disc 20 × 5 mm, N42SH', 'Scheibe 20 × 5 mm, N42SH', 'Disco 20 × 5 mm, N42SH'],
  ['Disc 25 × 5 mm, N42SH', 'Scheibe 25 × 5 mm, N42SH', 'Disco 25 × 5 mm, N42SH'],
  ['Block 40 × 10 × 4 mm, N42SH', 'Quader 40 × 10 × 4 mm, N42SH', 'Bloque 40 × 10 × 4 mm, N42SH'],
  ['Clear vinyl film, 0.5 mm', 'Klare Vinylfolie, 0,5 mm', 'Lámina de vinilo transparente, 0,5 mm'],
  [
    'Acrylic foam tape, clear, 19 mm',
    'Acrylschaumband, klar, 19 mm',
    'Cinta de espuma acrílica, transparente, 19 mm',
  ],
  [
    'Acrylic foam tape, clear, 25 mm',
    'Acrylschaumband, klar, 25 mm',
    'Cinta de espuma acrílica, transparente, 25 mm',
  ],
  [
    'Bonded polyester, tex 90, black',
    'Polyester, gebondet, tex 90, schwarz',
    'Poliéster ligado, tex 90, negro',
  ],
  [
    'Bonded polyester, tex 135, black',
    'Polyester, gebondet, tex 135, schwarz',
    'Poliéster ligado, tex 135, negro',
  ],
  [
    'Snap, 24 line, socket in the panel, stud on the frame',
    'Druckknopf, 24 Linien, Oberteil in der Blende, Unterteil am Rahmen',
    'Broche de presión, 24 líneas, hembra en el panel, macho en el marco',
  ],
  [
    'Hook and loop, 20 mm, loop sewn to the panel, hook on the frame',
    'Klettband, 20 mm, Flausch an der Blende, Haken am Rahmen',
    'Cinta de gancho y bucle, 20 mm, bucle cosido al panel, gancho en el marco',
  ],
  ['Turn button with eyelet', 'Drehverschluss mit Öse', 'Botón giratorio con ojal'],
  ['Suction cup, 45 mm, through an eyelet', 'Saugnapf, 45 mm, durch eine Öse', 'Ventosa, 45 mm, por un ojal'],
  [
    'Steel strip, zinc plated, 20 × 1 mm',
    'Stahlband, verzinkt, 20 × 1 mm',
    'Pletina de acero cincada, 20 × 1 mm',
  ],
  [
    'Steel strip, zinc plated, 30 × 2 mm',
    'Stahlband, verzinkt, 30 × 2 mm',
    'Pletina de acero cincada, 30 × 2 mm',
  ],
  [
    'Steel strip, zinc plated, 30 × 3 mm',
    'Stahlband, verzinkt, 30 × 3 mm',
    'Pletina de acero cincada, 30 × 3 mm',
  ],
  ['Set up and clear away', 'Einrichten und aufräumen', 'Preparar y recoger'],
  [
    'Print, join and check the pattern',
    'Schnittmuster drucken, fügen und prüfen',
    'Imprimir, unir y comprobar el patrón',
  ],
  [
    'Spread the cloth and place the pieces',
    'Stoff auslegen und Teile auflegen',
    'Tender la tela y colocar las piezas',
  ],
  ['Cut the pieces', 'Teile zuschneiden', 'Cortar las piezas'],
  ['Sew on a pocket', 'Tasche aufnähen', 'Coser un bolsillo'],
  ['Finish the edge', 'Kante fertigstellen', 'Acabar el borde'],
  [
    'Wrap, mark and place a pair of magnets',
    'Magnetpaar umhüllen, kennzeichnen, setzen',
    'Envolver, marcar y colocar un par de imanes',
  ],
  [
    'Mark and place a magnet and its piece of strip',
    'Magnet und Stahlstück kennzeichnen, setzen',
    'Marcar y colocar un imán y su pletina',
  ],
  ['Set a fastener, both halves', 'Befestigung setzen, beide Hälften', 'Poner un cierre, las dos mitades'],
  [
    'Check, label and pack a panel',
    'Blende prüfen, beschriften, packen',
    'Comprobar, etiquetar y embalar un panel',
  ],
  [
    'Fit what holds the panel at the opening',
    'Halt der Blende an der Öffnung anbringen',
    'Montar en el hueco lo que sujeta el panel',
  ],
];

const table = (column: 1 | 2): ReadonlyMap<string, string> =>
  new Map(NAMES.map((row) => [row[0], row[column]] as const));
const IN = { de: table(1), es: table(2) } as const;

/** A name of the catalogue to begin with, in a language; any other as it is. */
export const catalogueName = (name: string, language: 'en' | 'de' | 'es'): string =>
  language === 'en' ? name : (IN[language].get(name) ?? name);
