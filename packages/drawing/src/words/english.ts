/** A few names, the rest counted. */
const some = (names: readonly string[], most = 6): string =>
  names.length <= most
    ? names.join(', ')
    : `${names.slice(0, most).join(', ')} and ${names.length - most} more`;

const counted = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

/** English sentences of the sheets. Figures come in as text, already in the reader's units. */
export const english = {
  page: {
    number: (page: number, pages: number): string => `${page} / ${pages}`,
    made: (date: string, revision: string): string =>
      revision === '' ? date : `${date} · revision ${revision}`,
    jobLine: (job: string, date: string, revision: string): string =>
      `${job} · ${date}${revision === '' ? '' : ` · revision ${revision}`}`,
    corrected: (across: string, along: string): string =>
      `Corrected for this printer: across × ${across}, along × ${along}.`,
    caution: (): string => 'CAUTION',
    stop: (): string => 'CANNOT BE MADE AS IT STANDS',
    doubt: (): string => 'LOOK AGAIN BEFORE CUTTING',
  },
  pattern: {
    title: (pattern: string): string => `Pattern ${pattern}`,
    outsideFace: (): string => 'This side is the outside face.',
    up: (): string => 'up',
    finishedSize: (size: string): string => `Finished panel ${size}`,
    cutSize: (size: string): string => `Cloth cut ${size}`,
    grain: (run: string): string => `Grain: ${run}`,
    warpUp: (): string => 'warp runs up',
    warpAcross: (): string => 'warp runs across',
    warpEither: (): string => 'either way',
    servesCount: (count: number): string => (count === 1 ? 'Serves 1 opening' : `Serves ${count} openings`),
    serves: (names: readonly string[]): string => `Serves: ${names.join('; ')}.`,
    servesSome: (names: readonly string[], more: number): string =>
      names.length === 0 ? `Serves ${more} openings.` : `Serves: ${names.join('; ')}; and ${more} more.`,
    turnedOver: (name: string): string => `${name} (turned over)`,
    turned: (name: string, degrees: number): string => `${name} (turned ${degrees}°)`,
    holdCount: (count: number): string => `${count} hold points, numbered from the bottom left corner`,
    joinCheck: (from: number, to: number, length: string): string =>
      `When joined: from hold point ${from} to ${to} is ${length}.`,
    tiles: (count: number): string => (count === 1 ? '1 tile' : `${count} tiles`),
    joining: (): string =>
      'Trim the right and the upper edge along the frame. Lay each tile on the next so that the ringed crosses meet, and tape. Tiles that would be blank are left out.',
    measureFirst: (): string => 'Measure this page before printing the rest',
    measureNote: (square: string, bar: string, most: string): string =>
      `Print at actual size. The square is ${square} both ways, the bar ${bar}. If the square is more than ${most} out, set the printer to 100 % and print again.`,
    rollNote: (): string =>
      'The pattern itself is on the next page, for a printer with a roll. Measure its own square and bar before cutting.',
    rollMeasure: (square: string, bar: string, most: string): string =>
      `Print at actual size, then measure: the square is ${square} both ways, ${bar}. If the square is more than ${most} out, correct the printer and print again.`,
    longBar: (length: string): string => `the long bar ${length}`,
    holdLabel: (number: number, patch: string): string => `${number} · ${patch}`,
    joins: (label: string): string => `joins ${label}`,
    tileOf: (label: string, count: number): string => `Tile ${label}, ${count} in all`,
    tileCheck: (bar: string, square: string): string => `bar ${bar}, square ${square}`,
    key: (): string => 'Lines and marks',
    keyCut: (): string => 'Cut the cloth here',
    keyFinished: (): string => 'Edge of the finished panel',
    keyStitch: (): string => 'Stitch line',
    keyPocket: (): string => 'Pocket, on the inside face',
    keyHold: (): string => 'Cross in a circle: centre of a magnet. Tick: its place on the edge.',
    keyCentre: (): string => 'V: middle of a side.',
    keyBindingStart: (): string => 'Two ticks: the binding begins here.',
    bindingStarts: (): string => 'binding begins',
  },
  reference: {
    title: (): string => 'Reference sheets for photos of a traced film',
    sheet: (n: number): string => `Reference sheet ${n} of 4`,
    print: (): string =>
      'Print at actual size, without “fit to page”. Printers stretch all the same: the bars tell by how much.',
    places: (): string =>
      'Lower left corner of each marker, mm from the lower left corner of the sheet, as drawn. Each marker is 60 mm square.',
    place: (id: number, x: number, y: number): string => `${id}:  x ${x.toFixed(1)}  y ${y.toFixed(1)}`,
    rule: (): string =>
      'Measure both bars from end tick to end tick with a steel rule, to the fifth of a millimetre if you can, and enter what you read.',
    lay: (): string =>
      'Tape all four sheets flat onto the surface the line is on, near its corners. Turn two of them by a quarter. Cover no line. Then move nothing until the photos are taken.',
    bar: (axis: 'x' | 'y', length: number): string => `${axis}: ${length} mm`,
  },
  printer: {
    title: (): string => 'Printer test page',
    how: (): string =>
      'Print this page at actual size, on the printer and the paper that patterns are to be printed on. Measure both bars from end tick to end tick with a steel rule. Factor = nominal ÷ measured. Enter both factors for this printer; every pattern and template is then printed true. This page is always printed uncorrected.',
    example: (nominal: string, measured: string, factor: string): string =>
      `Example: a bar of ${nominal} that measures ${measured} gives the factor ${factor}. A factor outside 0.97 to 1.03 means that the printer scales its pages: turn that off instead.`,
    across: (length: string): string => `x: ${length} across`,
    along: (length: string): string => `y: ${length} along the feed`,
    axis: (): string => 'Bar',
    acrossName: (): string => 'across the paper',
    alongName: (): string => 'along the feed',
    nominal: (): string => 'Nominal',
    measured: (): string => 'Measured',
    factor: (): string => 'Factor',
  },
  edge: (edge: string): string =>
    (
      ({ bottom: 'lower side', right: 'right side', top: 'upper side', left: 'left side' }) as Record<
        string,
        string
      >
    )[edge] ?? edge.replace(/^side(\d+)$/, 'side $1'),
  site: (kind: 'camper' | 'boat' | 'house' | 'other'): string =>
    ({ camper: 'camper', boat: 'boat', house: 'house', other: '' })[kind],
  /** @source sources.md#hot-knife-cautions, #magnet-cautions, #isopropanol-cautions, #exit-cautions */
  caution: {
    hotKnife: (): string =>
      'A hot knife on coated mesh gives off acid fumes that harm the lungs. Cut under extraction or out of doors with a mask for acid gas, or cut cold with shears. Keep solvent well away.',
    magnetsPinch: (): string =>
      'These magnets jump together and pinch. Keep them a hand apart, wear eye protection, keep tools and cards away.',
    hotKnifeShort: (): string => 'Hot knife: acid fumes. Extraction or mask, or cut cold.',
    magnetsShort: (): string => 'Magnets pinch: a hand apart, glasses on, far from children and implants.',
    magnetsSwallow: (): string =>
      'Two swallowed magnets can kill. Count them out and in, keep loose ones in a closed box away from children, sew every pocket shut.',
    magnetsImplants: (): string =>
      'Whoever wears a pacemaker or another implant stays well away from the magnets, as far as the maker of the device says and never nearer than 150 mm (6 in).',
    compass: (): string =>
      'Magnets turn a compass. Keep panels and spare magnets well away from it, and check it after fitting.',
    solvent: (): string =>
      'Isopropyl alcohol burns and its vapour lights easily. No flame, no hot knife, no cigarette; air the place well; let it dry.',
    driving: (names: readonly string[]): string =>
      names.length === 0
        ? 'Take every panel off before the vehicle is driven.'
        : `Take every panel off before the vehicle is driven. The driver sees through: ${some(names)}.`,
    drivingHere: (): string =>
      'The driver sees through this window. Take the panel off before the vehicle moves.',
    exits: (names: readonly string[]): string =>
      `Marked as emergency exit: ${some(names)}. Read the notice on its page before fitting.`,
    exitPanel: (names: readonly string[]): string =>
      `For ${some(names)}. Ask before making it. It must come off from inside with one hand and no tool: agree a pull tab, and read the install sheet.`,
    exitTitle: (): string => 'EMERGENCY EXIT',
    exitHere: (): string =>
      'Do not fit a panel here, or fit it so that one hand takes it off from inside with no tool. Leave the exit sign and the handle in view. Everyone who sleeps here tries it once. Local rules come first.',
    heatInside: (): string =>
      'A parked vehicle or a closed room still gets dangerously hot behind a panel. Never leave a child, a frail person or an animal inside.',
  },
  work: {
    keyedMagnets: (): string =>
      'Keyed: not every magnet lies the same way round. A dot of paint tells them apart; no compass is needed.',
    dotTest: (): string =>
      'Paint a dot on either face of one magnet. It tests all the others: keep it out of the set.',
    stackAndDot: (count: number): string =>
      `Let the other ${count} draw onto its dotted face, in one stack. As each comes off the end, paint a dot on its free face.`,
    dotOut: (points: string): string => `Dot outward, away from the glass, at: ${points}.`,
    dotToGlass: (points: string): string => `Dot toward the glass at: ${points}.`,
    dotToRoom: (points: string): string => `Inside the glass, dot into the room at: ${points}.`,
    dotInsideToGlass: (points: string): string => `Inside the glass, dot toward the glass at: ${points}.`,
    checkDraws: (): string =>
      'Before a pocket is sewn shut, hold its inside magnet to it: it must draw. Number the inside magnets as their points.',
    steelPieces: (count: number, strip: string): string =>
      `Cut ${counted(count, 'piece', 'pieces')} of steel strip: ${strip}`,
    steelCut: (length: string): string =>
      `Each ${length} long. File the ends, paint the cuts. No wrap; either face draws.`,
    fasteners: (count: number, fastener: string): string =>
      `Set ${counted(count, 'fastener', 'fasteners')}: ${fastener}`,
    fastenerHow: (inset: string): string =>
      `Middle of each ${inset} from the finished edge, at its mark. The half on the panel now, the half on the frame when it is fitted.`,
    fastenerRun: (length: string): string =>
      `Sew the loop all along the edge, ${length} round; the hook goes on the frame.`,
    title: (): string => 'Work order',
    customer: (name: string): string => `For ${name}`,
    onFront: (numbers: readonly number[]): string => `Front page, no.\u00a0${numbers.join(', ')}.`,
    wholeJob: (): string => 'In the order of work',
    notes: (): string => 'Notes of the job',
    job: (): string => 'The job',
    panels: (): string => 'Panels',
    panelsOf: (panels: number, patterns: number): string =>
      `${panels}, from ${counted(patterns, 'pattern', 'patterns')}`,
    holdPoints: (): string => 'Hold points',
    layName: (lay: string): string => `Lay ${lay}`,
    layFigures: (cloth: string, width: string, length: string): string =>
      `${cloth}, ${width} wide, ${length} long`,
    layOffcut: (cloth: string, name: string, place: string): string =>
      `${cloth}, on the offcut “${name}”${place === '' ? '' : ` (${place})`}`,
    estimate: (): string => 'Time (estimate)',
    minutes: (): string => 'min',
    minutesHeading: (): string => 'Minutes',
    operation: (): string => 'Work',
    times: (): string => 'Times',
    estimated: (): string => 'Estimate',
    used: (): string => 'Used',
    printPatterns: (count: number): string => `Print and join ${counted(count, 'pattern', 'patterns')}`,
    printHow: (): string =>
      'Measure the square on each front page before printing the rest. Join the tiles at the ringed crosses. Check the length given between two hold points.',
    layCloth: (count: number): string => `Spread the cloth and cut ${counted(count, 'lay', 'lays')}`,
    layHow: (): string =>
      'Follow the lay drawing. Same face up and warp the same way throughout. Mark each piece with its name before it leaves the table.',
    keptTogether: (together: 'panel' | 'place'): string =>
      together === 'panel'
        ? 'Keep the pieces of each lay by themselves: every panel takes the pockets of its own lay.'
        : 'Keep the pieces of each lay by themselves: the panels of one place are in one lay, and take its pockets.',
    oneWay: (): string => 'All pieces of a cloth lie one way of it: turn none by a quarter.',
    cutBinding: (count: number): string => `Cut ${counted(count, 'length', 'lengths')} of binding`,
    cutBindingHow: (): string =>
      'Roll by roll, as the cut list says. Label each length with the opening named there.',
    markTest: (): string => 'Mark a test magnet',
    markTestHow: (): string =>
      'Find the north face with a compass: it draws the south end of the needle. Paint that face red. Use this one magnet for every check on this job.',
    makePanels: (count: number): string =>
      `Make the panels: ${counted(count, 'section', 'sections')} on the pages that follow`,
    makeHow: (): string => 'One section for each pattern. Tick each step when all its panels are done.',
    fit: (): string => 'Fit the set',
    fitHow: (): string => 'Follow the install sheet: it shows every opening from outside and from inside.',
    section: (pattern: string, panels: number): string =>
      `${pattern} · ${counted(panels, 'panel', 'panels')}`,
    onePanel: (): string => 'One panel',
    finished: (): string => 'Finished',
    cut: (): string => 'Cut',
    clothName: (): string => 'Cloth',
    grain: (): string => 'Grain',
    mass: (): string => 'Mass',
    pictureNote: (): string => 'Seen from outside. Numbers are hold points.',
    cutPanels: (count: number, pattern: string): string =>
      `Cut ${counted(count, 'panel', 'panels')} of ${pattern}`,
    cloth: (cloth: string, size: string): string => `${cloth}, each ${size}.`,
    piece: (piece: string, count: number, lays: readonly string[]): string =>
      lays.length === 0
        ? `Piece ${piece}: ${count}.`
        : `Piece ${piece}: ${count}, in lay ${lays.join(', ')}.`,
    turnedOver: (count: number): string =>
      `${count} of them with the pattern turned over: the faces of this cloth differ.`,
    faceUp: (): string => 'Mark the outside face of each with chalk.',
    mark: (points: number): string => `Mark ${counted(points, 'hold point', 'hold points')} on each panel`,
    markHow: (): string =>
      'Through the pattern, on the inside face: each centre, each pocket, the tick on the edge.',
    markSides: (bound: boolean): string =>
      bound
        ? 'Mark the middle of each side, and the two ticks where the binding begins.'
        : 'Mark the middle of each side.',
    pockets: (all: number, each: number, panels: number): string =>
      panels === 1
        ? `Sew on ${counted(all, 'pocket', 'pockets')}`
        : `Sew on ${all} pockets, ${each} to a panel`,
    pocketPieces: (pieces: readonly string[]): string =>
      `Patches, each at its hold point: ${pieces.join('; ')}.`,
    pocketPiece: (piece: string, points: readonly number[]): string => `${piece} at ${points.join(', ')}`,
    pocketHow: (seam: string, tack: string): string =>
      `Straight side on the panel's edge. Sew round the curved side ${seam} in from its edge; leave the straight side open. Back-tack ${tack} at both ends.`,
    thread: (thread: string, needle: string, stitch: string): string =>
      needle === ''
        ? `Thread ${thread}; lockstitch, ${stitch} long.`
        : `Thread ${thread}; needle ${needle}; lockstitch, ${stitch} long.`,
    magnets: (count: number, magnet: string): string =>
      `Put in ${counted(count, 'magnet', 'magnets')}: ${magnet}`,
    testMagnet: (pole: 'north' | 'south'): string =>
      pole === 'north'
        ? 'North face outward, away from the glass. Hold the red face of the test magnet to the outside face of the panel, over the magnet: it must push away.'
        : 'South face outward, away from the glass. Hold the red face of the test magnet to the outside face of the panel, over the magnet: it must pull.',
    testEach: (count: number): string => `Test all ${count} on each panel before sewing on, and again after.`,
    closePockets: (): string => 'Close the straight side of each pocket with the edge finish.',
    bind: (panels: number, binding: string): string =>
      `Bind ${counted(panels, 'panel', 'panels')}: ${binding}`,
    bindingCut: (length: string, panels: number): string =>
      panels === 1 ? `Cut length ${length}.` : `Cut length ${length} each, ${panels} lengths.`,
    bindingStart: (edge: string, overlap: string): string =>
      `Begin in the middle of the ${edge}, at the two ticks, never at a corner. Overlap the ends ${overlap} and fold the upper one under.`,
    bindingSeam: (band: string, inset: string): string =>
      `${band} shows on each face. Stitch ${inset} from the inner edge, through both faces at once.`,
    hem: (panels: number, width: string): string =>
      `Hem ${counted(panels, 'panel', 'panels')}, ${width} wide`,
    hemHow: (run: string, inset: string): string =>
      `Fold to the inside along the finished line, ${run} round. Stitch ${inset} from the folded edge. Fold corners flat, notched where marked.`,
    hotCut: (panels: number): string => `Seal the edge of ${counted(panels, 'panel', 'panels')}`,
    hotCutHow: (run: string): string =>
      `Cut along the finished line, ${run} round, slowly enough that the yarns seal. Sew the straight side of each pocket shut.`,
    glassMagnets: (count: number, magnet: string): string =>
      `Prepare ${counted(count, 'magnet', 'magnets')} for inside the glass: ${magnet}`,
    wrap: (count: number, film: string, strip: string, length: string): string =>
      `Wrap: cut ${film} in strips ${strip} wide, then in lengths of ${length}, ${count} of them. Fold each round its magnet and seal.`,
    tape: (count: number, tape: string, length: string): string =>
      `Tape: ${counted(count, 'piece', 'pieces')} of ${tape}, ${length} long, on the side that goes to the glass.`,
    glassPole: (pole: 'north' | 'south'): string =>
      pole === 'north'
        ? 'Mark the face that goes into the room: south. Check that each draws to a panel pocket the right way round.'
        : 'Mark the face that goes into the room: north. Check that each draws to a panel pocket the right way round.',
    check: (): string => 'Check and label each panel',
    checkLabel: (): string => 'Write opening and pattern on its label.',
  },
  exploded: {
    keyed: (): string => 'marked',
    fasteners: (count: number, fastener: string): string =>
      `Round the edge: ${counted(count, 'fastener', 'fasteners')}, ${fastener}`,
    steel: (count: number, strip: string): string =>
      `Inside the glass, taped: ${counted(count, 'piece', 'pieces')} of ${strip}`,
    title: (): string => 'The layers, from the outside in',
    binding: (binding: string, band: string): string => `Binding: ${binding}, ${band} on each face`,
    hem: (band: string): string => `Hem, ${band} wide, folded to the inside`,
    cloth: (cloth: string): string => `Cloth, outside face up: ${cloth}`,
    magnets: (count: number, magnet: string, pole: string): string =>
      `${counted(count, 'magnet', 'magnets')}, ${pole} face outward: ${magnet}`,
    pockets: (count: number, pieces: readonly string[]): string =>
      `${counted(count, 'pocket patch', 'pocket patches')}: ${some(pieces, 8)}`,
    layer: (name: string): string =>
      (
        ({
          ...{ fabric: 'cloth', wrapFilm: 'wrap film', tape: 'tape', glass: 'glass', air: 'air' },
          ...{
            standOff: 'air under the gasket',
            laminated: 'laminated glass',
            acrylic: 'acrylic',
            film: 'film',
          },
        }) as Record<string, string>
      )[name] ?? name,
    between: (layers: string): string => `Between the magnets: ${layers}`,
    inside: (count: number, magnet: string): string =>
      `Inside the glass, wrapped and taped: ${counted(count, 'magnet', 'magnets')}, ${magnet}`,
  },
  check: {
    marks: (): string => 'Poles as marked, each inside magnet draws',
    fasteners: (): string => 'Fasteners hold when pulled by hand',
    title: (): string => 'Checks of each finished panel',
    what: (): string => 'Check',
    nominal: (): string => 'Should be',
    measured: (): string => 'Measured',
    width: (): string => 'Width',
    height: (): string => 'Height',
    holdPoints: (from: number, to: number): string => `Hold point ${from} to ${to}, centres`,
    band: (): string => 'Band seen on each face',
    stitchInset: (): string => 'Stitch line from the inner edge',
    stitchLength: (): string => 'Length of a stitch',
    pocketsClosed: (): string => 'Pockets sewn shut',
    poles: (pole: string): string => `Poles by the test magnet, ${pole} outward`,
    all: (count: number): string => `all ${count}`,
  },
  /** @source sources.md#acrylic-tape-practice */
  install: {
    markNote: (dot: string, other: string, side: 'outside' | 'inside'): string =>
      side === 'outside'
        ? `${dot}: the dot is outward. ${other}: the dot is toward the glass. Measure from the two heavy edges.`
        : `${dot}: the dot is to the room. ${other}: the dot is toward the glass. Measure from the two heavy edges.`,
    keyedOnly: (): string =>
      'This panel is keyed: it draws at every point one way only. Where it pushes off, it is on the wrong way round.',
    steelNote: (): string => 'Pieces of steel strip at the numbers. Measure from the two heavy edges.',
    fastenerNote: (): string => 'Fasteners at the numbers. Measure from the two heavy edges.',
    insideSteel: (): string => 'Set the steel inside',
    insideSteelHow: (): string =>
      'Each piece at its number, taped side to the glass. Its magnet draws it only weakly from the side: mark its place first, then stick.',
    fastenerClean: (): string => 'Clean the frame',
    fastenerCleanHow: (): string =>
      'Where the fasteners go, wash off dirt and wax. Cups and hook and loop need it clean, dry and smooth.',
    fastenerHang: (): string => 'Mark, then fasten the upper side first',
    fastenerHangHow: (): string =>
      'Hold the panel up with tape, mark each point on the frame through it, and set the frame halves from the upper corners down. Draw the cloth even, not tight.',
    fastenerTakeOff: (): string => 'Taking off',
    fastenerTakeOffHow: (): string =>
      'Loosen from a lower corner, each fastener straight off. Store dry, flat or rolled.',
    title: (): string => 'Install sheet',
    clean: (): string => 'Clean the glass and the magnets',
    cleanHow: (): string =>
      'Isopropyl alcohol and water, half and half, on a lint-free cloth. Let it dry. Do not touch the cleaned places.',
    warm: (): string => 'Work warm and dry',
    warmHow: (): string =>
      'Glass, tape and magnets from 21 to 38 °C (70 to 100 °F), never under 10 °C (50 °F). No dew on the glass.',
    hang: (): string => 'Hang the panel outside first',
    hangHow: (): string =>
      'Outside face to you, up arrow up. Use the order in the table: upper corners, upper side, lower corners, the rest. Low-tack tape holds it meanwhile.',
    insideFirst: (): string => 'Set the magnets inside',
    insideHow: (): string =>
      'Each at its number, marked face into the room. It draws to its partner through the glass: let it find its place with the tape still covered, mark round it, then stick.',
    press: (): string => 'Press each one hard for 10 seconds: 100 kPa (15 psi) over its face.',
    dwell: (): string => 'Leave it 72 hours',
    dwellHow: (): string =>
      'The tape takes 72 hours to reach its full hold. Take the panels off, or leave them slack, until then.',
    takeOff: (): string => 'Taking off and keeping',
    takeOffHow: (): string =>
      'Peel from a lower corner. Lay panels flat or roll them mesh outward, pockets apart, dry. Do not fold over a magnet.',
    panel: (pattern: string, turned: boolean, size: string): string =>
      turned
        ? `Panel ${pattern}, pattern turned over. Opening ${size}.`
        : `Panel ${pattern}. Opening ${size}.`,
    fromOutside: (): string => 'Seen from outside',
    fromInside: (): string => 'Seen from inside',
    pole: (pole: 'north' | 'south'): string => (pole === 'north' ? 'N' : 'S'),
    poleNote: (letter: string, pole: 'north' | 'south', side: 'outside' | 'inside'): string =>
      side === 'outside'
        ? `${letter}: on the panel the ${pole} face is outward. Measure from the two heavy edges.`
        : `${letter}: inside the glass the ${pole} face is to the room. Measure from the two heavy edges.`,
    number: (): string => 'No.',
    across: (view: 'outside' | 'inside', side: 'left' | 'right'): string =>
      `${view === 'outside' ? 'Outside' : 'Inside'}, from ${side}`,
    upFrom: (): string => 'Up from lower side',
    order: (): string => 'Order',
    without: (names: readonly string[]): string => `No panel yet, see the work order: ${some(names)}.`,
    inches: (): string => 'inches, to the nearest 1/16',
    millimetres: (): string => 'millimetres, to the nearest whole one',
    tableNoteBox: (unit: string): string =>
      `Magnet centres, measured up from a rule held level at the lowest point of the opening and across from one held upright at its outermost point. In ${unit}.`,
    tableNote: (unit: string): string =>
      `Magnet centres, square to the sides of the opening and measured from them, as if its corners were sharp. In ${unit}.`,
  },
  lay: {
    title: (): string => 'Lay',
    heading: (lay: string, cloth: string): string => `${lay} · ${cloth}`,
    figures: (width: string, length: string, density: string, pieces: number): string =>
      `Roll ${width} wide, ${length} used, ${density} of it in pieces. ${counted(pieces, 'piece', 'pieces')}.`,
    offcut: (name: string, place: string, size: string, density: string, pieces: number): string =>
      `On the offcut “${name}”${place === '' ? '' : ` (${place})`}, ${size}, ${density} of it in pieces. ${counted(pieces, 'piece', 'pieces')}. Measure it before cutting.`,
    rows: (rows: number): string => `The roll runs on over ${rows} rows.`,
    ownPockets: (openings: string): string =>
      `${openings === '' ? 'Its' : `For ${openings}: its`} panels take the pockets of this lay.`,
    oneWay: (): string => 'All pieces lie one way of the cloth.',
    shaded: (): string => 'Darker: pocket patches.',
    keptClear: (places: number): string => `Crossed: ${counted(places, 'place', 'places')} kept clear.`,
  },
  pocket: {
    title: (): string => 'Pocket patches',
    note: (): string =>
      'At full size: measure the bar. The lower side goes to the edge of the panel; the tick is its middle.',
    name: (piece: string, count: number): string => `${piece} · cut ${count}`,
    for: (patterns: readonly string[]): string => `For ${some(patterns, 8)}`,
  },
  label: {
    title: (kind: 'shelf' | 'sewn'): string => (kind === 'shelf' ? 'Shelf labels' : 'Sewn-in labels'),
    panel: (pattern: string, turned: boolean): string =>
      turned ? `Panel ${pattern}, turned over` : `Panel ${pattern}`,
    offcuts: (): string => 'Offcut labels',
    alongAcross: (size: string): string => `${size} (along × across)`,
    batch: (batch: string): string => `Batch ${batch}`,
  },
  template: {
    title: (): string => 'Template sheets',
    note: (): string =>
      'At full size: measure the bar. Cut the cloth or film through the paper, or cut one out and draw round it.',
    copies: (here: number, needed: number): string =>
      `${counted(here, 'copy', 'copies')} on this page; the job needs ${needed}.`,
    pocketNote: (): string => 'The straight side goes to the edge of the panel; the tick is its middle.',
    film: (film: string, count: number): string => `${film} · cut ${count}`,
    filmNote: (magnet: string, size: string): string =>
      `For ${magnet}, each ${size}. Lay the magnet on its outline, fold along the dashed line, seal the three open sides.`,
  },
  piece: {
    name: (piece: string, count: number): string => `${piece} · cut ${count}`,
    turnedOver: (): string => 'pattern turned over',
    units: (): string => 'units: millimetres',
  },
  buy: {
    title: (): string => 'Buy list',
    noSupplier: (): string => 'No supplier named',
    item: (): string => 'Item',
    used: (): string => 'Used',
    buy: (): string => 'Buy',
    left: (): string => 'Left over',
    cost: (): string => 'Cost',
    packs: (count: number, each: string): string => `${count} × ${each}`,
    roll: (name: string, width: string): string => `${name}, ${width} wide`,
    total: (cost: string): string => `All suppliers together: ${cost}`,
    note: (): string => 'Whole packs at the prices of the shop’s catalogue, before tax and carriage.',
    csv: (currency: string): readonly string[] => [
      ...['supplier', 'item', 'name', 'unit', 'used', 'packs', 'pack quantity', 'left over'],
      ...[`pack price, ${currency}`, `cost, ${currency}`],
    ],
  },
  quote: {
    title: (): string => 'Quote',
    for: (): string => 'For',
    from: (): string => 'From',
    job: (name: string, id: string, date: string): string => `${name} · ${id} · ${date}`,
    opening: (): string => 'Panel for',
    price: (): string => 'Price',
    size: (size: string): string => `Opening ${size}`,
    subtotal: (): string => 'Panels',
    tax: (rate: string): string => `Tax ${rate}`,
    total: (): string => 'Total',
    valid: (days: number, until: string): string =>
      `Valid for ${counted(days, 'day', 'days')}, until ${until}.`,
    exits: (names: readonly string[]): string =>
      `Marked as emergency exit: ${some(names)}. A panel there must come off from inside with one hand and no tool, and local rules come first.`,
    without: (names: readonly string[]): string => `Not in this quote: ${some(names)}.`,
    unsettled: (names: readonly string[]): string =>
      `Priced, but how it is to be made is not settled yet: ${some(names)}. It is not begun before that is.`,
    options: (): string => 'Options',
    difference: (): string => 'More or less',
    optionsNote: (): string =>
      'Each for all panels, in place of what is above, with tax; from a plan of its own.',
    option: (names: readonly string[]): string => names.join(', '),
    optionUnsettled: (name: string): string => `${name} (how it is made is not settled yet)`,
    optionHem: (width: string): string => `hem ${width} wide`,
    optionHotCut: (): string => 'edge cut hot',
    optionMagnets: (): string => 'pairs of magnets',
    optionHold: (): string => 'otherwise held',
    terms: (): string => 'Terms',
    csv: (currency: string): readonly string[] => [
      ...['opening', 'name', 'place', 'width mm', 'height mm', 'cloth', `price, ${currency}`],
    ],
  },
  costs: {
    title: (): string => 'Costs, for the shop alone',
    about: (): string => 'Not for the customer. Minutes are the shop’s own standard times: estimates.',
    material: (): string => 'Material',
    bought: (): string => 'Bought for',
    charged: (): string => 'Charged',
    labour: (): string => 'Labour',
    labourOf: (minutes: string, rate: string): string => `Labour, ${minutes} at ${rate} an hour`,
    overhead: (rate: string): string => `Overhead ${rate}`,
    cost: (): string => 'Cost',
    price: (markup: string): string => (markup === '' ? 'Price' : `Price, with a markup of ${markup}`),
    margin: (margin: string): string => `Margin, ${margin} of the price`,
    sums: (): string => 'From cost to price',
    csv: (currency: string): readonly string[] => [
      'kind',
      'name',
      'quantity',
      'minutes',
      `cost, ${currency}`,
    ],
  },
  cut: {
    title: (): string => 'Cut list',
    nothing: (): string => 'There is nothing to cut: no opening has a panel yet.',
    pieces: (): string => 'Pieces of cloth',
    piece: (): string => 'Piece',
    count: (): string => 'Count',
    size: (): string => 'Cut size',
    cloth: (): string => 'Cloth',
    strip: (kind: 'binding' | 'wrapFilm' | 'tape', name: string): string =>
      ({ binding: `Binding: ${name}`, wrapFilm: `Wrap film: ${name}`, tape: `Tape: ${name}` })[kind],
    stock: (length: string): string => `From rolls of ${length}`,
    roll: (): string => 'Roll',
    lengths: (): string => 'Cut, in this order',
    left: (): string => 'Left over',
    lengthFor: (count: number, length: string, whom: string): string =>
      count === 1 ? `${length} (${whom})` : `${count} × ${length} (${whom})`,
    csv: (): readonly string[] => [
      'kind',
      'material',
      'piece or roll',
      'count',
      'length mm',
      'width mm',
      'for',
    ],
  },
} as const;
