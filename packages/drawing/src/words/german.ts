import type { Words } from '../words.ts';

const some = (names: readonly string[], most = 6): string =>
  names.length <= most
    ? names.join(', ')
    : `${names.slice(0, most).join(', ')} und ${names.length - most} weitere`;

const counted = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

/** German sentences of the sheets. A panel is a Blende, a lay a Schnittlage, warp and grain Kette and Fadenlauf. */
export const german: Words = {
  page: {
    number: (page, pages) => `${page} / ${pages}`,
    made: (date, revision) => (revision === '' ? date : `${date} · Fassung ${revision}`),
    jobLine: (job, date, revision) => `${job} · ${date}${revision === '' ? '' : ` · Fassung ${revision}`}`,
    corrected: (across, along) => `Für diesen Drucker berichtigt: quer × ${across}, längs × ${along}.`,
    caution: () => 'VORSICHT',
    stop: () => 'SO NICHT HERSTELLBAR',
    doubt: () => 'VOR DEM ZUSCHNITT PRÜFEN',
  },
  pattern: {
    title: (pattern) => `Schnittmuster ${pattern}`,
    outsideFace: () => 'Diese Seite ist die Außenseite.',
    up: () => 'oben',
    finishedSize: (size) => `Fertige Blende ${size}`,
    cutSize: (size) => `Zuschnitt ${size}`,
    grain: (run) => `Fadenlauf: ${run}`,
    warpUp: () => 'Kette senkrecht',
    warpAcross: () => 'Kette waagerecht',
    warpEither: () => 'beliebig',
    servesCount: (count) => (count === 1 ? 'Für 1 Öffnung' : `Für ${count} Öffnungen`),
    serves: (names) => `Für: ${names.join('; ')}.`,
    servesSome: (names, more) =>
      names.length === 0 ? `Für ${more} Öffnungen.` : `Für: ${names.join('; ')}; und ${more} weitere.`,
    turnedOver: (name) => `${name} (gewendet)`,
    turned: (name, degrees) => `${name} (um ${degrees}° gedreht)`,
    holdCount: (count) => `${counted(count, 'Haltepunkt', 'Haltepunkte')}, gezählt ab der Ecke unten links`,
    joinCheck: (from, to, length) => `Zusammengefügt messen: Haltepunkt ${from} bis ${to} sind ${length}.`,
    tiles: (count) => (count === 1 ? '1 Blatt' : `${count} Blätter`),
    joining: () =>
      'Rechten und oberen Rand am Rahmen abschneiden. Jedes Blatt so auf das nächste legen, dass die Kreuze im Kreis aufeinander liegen, und kleben. Leere Blätter fehlen.',
    measureFirst: () => 'Erst diese Seite messen, dann den Rest drucken',
    measureNote: (square, bar, most) =>
      `In Originalgröße drucken. Das Quadrat misst ${square} in beiden Richtungen, der Balken ${bar}. Weicht das Quadrat um mehr als ${most} ab: Drucker auf 100 % stellen und neu drucken.`,
    rollNote: () =>
      'Das Schnittmuster selbst steht auf der nächsten Seite, für einen Rollendrucker. Vor dem Zuschnitt dessen eigenes Quadrat und eigenen Balken messen.',
    rollMeasure: (square, bar, most) =>
      `In Originalgröße drucken, dann messen: das Quadrat ${square} in beiden Richtungen, ${bar}. Weicht das Quadrat um mehr als ${most} ab: Drucker berichtigen und neu drucken.`,
    longBar: (length) => `der lange Balken ${length}`,
    holdLabel: (number, patch) => `${number} · ${patch}`,
    joins: (label) => `an ${label}`,
    tileOf: (label, count) => `Blatt ${label}, ${count} insgesamt`,
    tileCheck: (bar, square) => `Balken ${bar}, Quadrat ${square}`,
    key: () => 'Linien und Zeichen',
    keyCut: () => 'Hier den Stoff schneiden',
    keyFinished: () => 'Kante der fertigen Blende',
    keyStitch: () => 'Nahtlinie',
    keyPocket: () => 'Tasche, auf der Innenseite',
    keyHold: () => 'Kreuz im Kreis: Mitte eines Magneten. Strich: seine Stelle an der Kante.',
    keyCentre: () => 'V: Mitte einer Seite.',
    keyBindingStart: () => 'Zwei Striche: Hier beginnt das Einfassband.',
    bindingStarts: () => 'Bandanfang',
  },
  reference: {
    title: () => 'Bezugsblätter für Fotos einer Folie mit Umriss',
    sheet: (n) => `Bezugsblatt ${n} von 4`,
    print: () =>
      'In Originalgröße drucken, ohne „an Seite anpassen“. Drucker dehnen trotzdem: die Balken zeigen, um wie viel.',
    places: () =>
      'Untere linke Ecke jeder Marke, mm von der unteren linken Ecke des Blattes, wie gezeichnet. Jede Marke ist 60 mm im Quadrat.',
    place: (id, x, y) => `${id}:  x ${x.toFixed(1)}  y ${y.toFixed(1)}`.replaceAll('.', ','),
    rule: () =>
      'Beide Balken von Endstrich zu Endstrich mit dem Stahllineal messen, möglichst auf ein Fünftel Millimeter, und das Gelesene eintragen.',
    lay: () =>
      'Alle vier Blätter flach auf die Fläche kleben, auf der die Linie ist, nahe ihren Ecken. Zwei davon um ein Viertel drehen. Keine Linie verdecken. Dann nichts bewegen, bis die Fotos gemacht sind.',
    bar: (axis, length) => `${axis}: ${length} mm`,
  },
  printer: {
    title: () => 'Prüfseite für den Drucker',
    how: () =>
      'Diese Seite in Originalgröße drucken, auf dem Drucker und dem Papier für die Schnittmuster. Beide Balken von Endstrich zu Endstrich mit dem Stahllineal messen. Faktor = Sollmaß ÷ gemessen. Beide Faktoren für diesen Drucker eintragen; Schnittmuster und Schablonen werden dann maßhaltig gedruckt. Diese Seite wird immer unberichtigt gedruckt.',
    example: (nominal, measured, factor) =>
      `Beispiel: Ein Balken von ${nominal}, gemessen ${measured}, ergibt den Faktor ${factor}. Liegt ein Faktor nicht zwischen 0,97 und 1,03, verkleinert oder vergrößert der Drucker die Seiten: das abschalten.`,
    across: (length) => `x: ${length} quer`,
    along: (length) => `y: ${length} in Einzugsrichtung`,
    axis: () => 'Balken',
    acrossName: () => 'quer zum Einzug',
    alongName: () => 'in Einzugsrichtung',
    nominal: () => 'Sollmaß',
    measured: () => 'Gemessen',
    factor: () => 'Faktor',
  },
  edge: (edge) =>
    (
      ({
        ...{ bottom: 'unteren Seite', right: 'rechten Seite', top: 'oberen Seite', left: 'linken Seite' },
      }) as Record<string, string>
    )[edge] ?? edge.replace(/^side(\d+)$/, 'Seite $1'),
  site: (kind) => ({ camper: 'Wohnmobil', boat: 'Boot', house: 'Haus', other: '' })[kind],
  caution: {
    hotKnife: () =>
      'Ein Heißschneider setzt an beschichtetem Gewebe saure Dämpfe frei, die der Lunge schaden. Unter Absaugung oder im Freien mit Maske gegen saure Gase schneiden, oder kalt mit der Schere. Lösemittel fernhalten.',
    magnetsPinch: () =>
      'Diese Magnete springen zusammen und klemmen. Eine Handbreit auseinander halten, Schutzbrille tragen, Werkzeug und Karten fernhalten.',
    hotKnifeShort: () => 'Heißschneider: saure Dämpfe. Absaugung oder Maske, oder kalt schneiden.',
    magnetsShort: () =>
      'Magnete quetschen: Handbreit Abstand, Schutzbrille, fern von Kindern und Implantaten.',
    magnetsSwallow: () =>
      'Zwei verschluckte Magnete können töten. Abzählen, was heraus- und zurückkommt, lose Magnete in einem geschlossenen Kasten vor Kindern sichern, jede Tasche zunähen.',
    magnetsImplants: () =>
      'Wer einen Herzschrittmacher oder ein anderes Implantat trägt, bleibt von den Magneten fern, so weit der Hersteller des Geräts es verlangt und nie näher als 150 mm.',
    compass: () =>
      'Magnete lenken den Kompass ab. Blenden und lose Magnete fernhalten, den Kompass nach der Montage prüfen.',
    solvent: () =>
      'Isopropanol brennt, seine Dämpfe entzünden sich leicht. Keine Flamme, kein Heißschneider, keine Zigarette; gut lüften; trocknen lassen.',
    driving: (names) =>
      names.length === 0
        ? 'Vor der Fahrt alle Blenden abnehmen.'
        : `Vor der Fahrt alle Blenden abnehmen. Durch diese Fenster sieht, wer fährt: ${some(names)}.`,
    drivingHere: () =>
      'Durch dieses Fenster sieht, wer fährt. Blende abnehmen, bevor sich das Fahrzeug bewegt.',
    exits: (names) =>
      `Als Notausstieg gekennzeichnet: ${some(names)}. Vor der Montage den Hinweis auf der jeweiligen Seite lesen.`,
    exitPanel: (names) =>
      `Für ${some(names)}. Vor der Herstellung nachfragen. Die Blende muss von innen mit einer Hand und ohne Werkzeug abgehen: eine Zuglasche vereinbaren und das Montageblatt lesen.`,
    exitTitle: () => 'NOTAUSSTIEG',
    exitHere: () =>
      'Hier keine Blende anbringen, oder nur so, dass eine Hand sie von innen ohne Werkzeug abnimmt. Schild und Griff des Ausstiegs bleiben sichtbar. Alle, die hier schlafen, probieren es einmal. Örtliche Vorschriften gehen vor.',
    heatInside: () =>
      'Ein abgestelltes Fahrzeug oder ein geschlossener Raum wird auch hinter einer Blende gefährlich heiß. Nie ein Kind, einen gebrechlichen Menschen oder ein Tier darin lassen.',
  },
  work: {
    keyedMagnets: () =>
      'Verschlüsselt: Nicht jeder Magnet liegt gleich herum. Ein Farbpunkt unterscheidet sie; ein Kompass ist nicht nötig.',
    dotTest: () =>
      'Auf eine Seite eines Magneten einen Punkt malen. Er prüft alle anderen: nicht mit verbauen.',
    stackAndDot: (count) =>
      `Die anderen ${count} an seine Punktseite ziehen lassen, in einem Stapel. Jedem, der vom Ende abgeht, einen Punkt auf die freie Seite malen.`,
    dotOut: (points) => `Punkt nach außen, vom Glas weg, bei: ${points}.`,
    dotToGlass: (points) => `Punkt zum Glas bei: ${points}.`,
    dotToRoom: (points) => `Innen am Glas, Punkt in den Raum bei: ${points}.`,
    dotInsideToGlass: (points) => `Innen am Glas, Punkt zum Glas bei: ${points}.`,
    checkDraws: () =>
      'Bevor eine Tasche zugenäht wird, ihren inneren Magneten daran halten: Er muss anziehen. Innere Magnete wie ihre Punkte nummerieren.',
    steelPieces: (count, strip) => `${counted(count, 'Stück', 'Stücke')} Stahlband schneiden: ${strip}`,
    steelCut: (length) =>
      `Je ${length} lang. Enden feilen, Schnitte lackieren. Kein Einschlag; beide Seiten ziehen an.`,
    fasteners: (count, fastener) => `${counted(count, 'Befestigung', 'Befestigungen')} setzen: ${fastener}`,
    fastenerHow: (inset) =>
      `Mitte jeweils ${inset} von der fertigen Kante, an ihrer Marke. Jetzt die Hälfte an der Blende, die am Rahmen beim Anbringen.`,
    fastenerRun: (length) =>
      `Das Flauschband rundum an die Kante nähen, ${length}; das Hakenband kommt an den Rahmen.`,
    title: () => 'Arbeitsauftrag',
    customer: (name) => `Für ${name}`,
    onFront: (numbers) => `Titelseite, Nr.\u00a0${numbers.join(', ')}.`,
    wholeJob: () => 'In der Reihenfolge der Arbeit',
    notes: () => 'Notizen zum Auftrag',
    job: () => 'Der Auftrag',
    panels: () => 'Blenden',
    panelsOf: (panels, patterns) => `${panels}, nach ${counted(patterns, 'Schnittmuster', 'Schnittmustern')}`,
    holdPoints: () => 'Haltepunkte',
    layName: (lay) => `Schnittlage ${lay}`,
    layFigures: (cloth, width, length) => `${cloth}, ${width} breit, ${length} lang`,
    layOffcut: (cloth, name, place) =>
      `${cloth}, auf dem Reststück „${name}“${place === '' ? '' : ` (${place})`}`,
    estimate: () => 'Zeit (Schätzung)',
    minutes: () => 'min',
    minutesHeading: () => 'Minuten',
    operation: () => 'Arbeit',
    times: () => 'Anzahl',
    estimated: () => 'Schätzung',
    used: () => 'Gebraucht',
    printPatterns: (count) => `${counted(count, 'Schnittmuster', 'Schnittmuster')} drucken und zusammenfügen`,
    printHow: () =>
      'Das Quadrat auf jeder Titelseite messen, bevor der Rest gedruckt wird. Blätter an den Kreuzen im Kreis zusammenfügen. Das angegebene Maß zwischen zwei Haltepunkten prüfen.',
    layCloth: (count) => `Stoff auslegen und ${counted(count, 'Schnittlage', 'Schnittlagen')} zuschneiden`,
    layHow: () =>
      'Nach dem Lagenbild. Überall dieselbe Seite oben und die Kette in derselben Richtung. Jedes Teil beschriften, bevor es den Tisch verlässt.',
    keptTogether: (together) =>
      together === 'panel'
        ? 'Die Teile jeder Schnittlage für sich halten: Jede Blende bekommt die Taschen ihrer eigenen Schnittlage.'
        : 'Die Teile jeder Schnittlage für sich halten: Die Blenden eines Ortes sind in einer Schnittlage und bekommen deren Taschen.',
    oneWay: () => 'Alle Teile eines Stoffs liegen in einer Richtung: keines um ein Viertel drehen.',
    cutBinding: (count) => `${counted(count, 'Länge', 'Längen')} Einfassband ablängen`,
    cutBindingHow: () =>
      'Rolle für Rolle nach der Zuschnittliste. Jede Länge mit der dort genannten Öffnung beschriften.',
    markTest: () => 'Prüfmagnet kennzeichnen',
    markTestHow: () =>
      'Die Nordseite mit dem Kompass suchen: Sie zieht das Südende der Nadel an. Diese Seite rot anmalen. Für alle Prüfungen dieses Auftrags diesen einen Magneten nehmen.',
    makePanels: (count) =>
      `Blenden herstellen: ${counted(count, 'Abschnitt', 'Abschnitte')} auf den folgenden Seiten`,
    makeHow: () =>
      'Ein Abschnitt je Schnittmuster. Jeden Schritt abhaken, wenn alle seine Blenden fertig sind.',
    fit: () => 'Satz montieren',
    fitHow: () => 'Nach dem Montageblatt: Es zeigt jede Öffnung von außen und von innen.',
    section: (pattern, panels) => `${pattern} · ${counted(panels, 'Blende', 'Blenden')}`,
    onePanel: () => 'Eine Blende',
    finished: () => 'Fertigmaß',
    cut: () => 'Zuschnitt',
    clothName: () => 'Stoff',
    grain: () => 'Fadenlauf',
    mass: () => 'Masse',
    pictureNote: () => 'Von außen gesehen. Die Zahlen sind Haltepunkte.',
    cutPanels: (count, pattern) => `${counted(count, 'Blende', 'Blenden')} ${pattern} zuschneiden`,
    cloth: (cloth, size) => `${cloth}, je ${size}.`,
    piece: (piece, count, lays) =>
      lays.length === 0
        ? `Teil ${piece}: ${count}.`
        : `Teil ${piece}: ${count}, in Schnittlage ${lays.join(', ')}.`,
    turnedOver: (count) =>
      `${count} davon mit gewendetem Schnittmuster: Der Stoff hat eine rechte und eine linke Seite.`,
    faceUp: () => 'Bei jedem Teil die Außenseite mit Kreide kennzeichnen.',
    mark: (points) => `${counted(points, 'Haltepunkt', 'Haltepunkte')} auf jeder Blende anzeichnen`,
    markHow: () =>
      'Durch das Schnittmuster auf die Innenseite: jede Mitte, jede Tasche, den Strich an der Kante.',
    markSides: (bound) =>
      bound
        ? 'Die Mitte jeder Seite anzeichnen und die zwei Striche am Anfang des Einfassbands.'
        : 'Die Mitte jeder Seite anzeichnen.',
    pockets: (all, each, panels) =>
      panels === 1
        ? `${counted(all, 'Tasche', 'Taschen')} aufnähen`
        : `${all} Taschen aufnähen, ${each} je Blende`,
    pocketPieces: (pieces) => `Taschenteile, jedes an seinem Haltepunkt: ${pieces.join('; ')}.`,
    pocketPiece: (piece, points) => `${piece} an ${points.join(', ')}`,
    pocketHow: (seam, tack) =>
      `Gerade Seite an die Kante der Blende. Die runde Seite ${seam} vom Rand steppen; die gerade Seite bleibt offen. An beiden Enden ${tack} verriegeln.`,
    thread: (thread, needle, stitch) =>
      needle === ''
        ? `Faden ${thread}; Doppelsteppstich, ${stitch} lang.`
        : `Faden ${thread}; Nadel ${needle}; Doppelsteppstich, ${stitch} lang.`,
    magnets: (count, magnet) => `${counted(count, 'Magnet', 'Magnete')} einsetzen: ${magnet}`,
    testMagnet: (pole) =>
      pole === 'north'
        ? 'Nordseite nach außen, vom Glas weg. Die rote Seite des Prüfmagneten an die Außenseite der Blende halten, über den Magneten: Sie muss abstoßen.'
        : 'Südseite nach außen, vom Glas weg. Die rote Seite des Prüfmagneten an die Außenseite der Blende halten, über den Magneten: Sie muss anziehen.',
    testEach: (count) => `Vor dem Aufnähen alle ${count} jeder Blende prüfen, danach noch einmal.`,
    closePockets: () => 'Die gerade Seite jeder Tasche mit dem Kantenabschluss schließen.',
    bind: (panels, binding) => `${counted(panels, 'Blende', 'Blenden')} einfassen: ${binding}`,
    bindingCut: (length, panels) =>
      panels === 1 ? `Zuschnittlänge ${length}.` : `Zuschnittlänge je ${length}, ${panels} Längen.`,
    bindingStart: (edge, overlap) =>
      `In der Mitte der ${edge} beginnen, an den zwei Strichen, nie an einer Ecke. Die Enden ${overlap} überlappen und das obere einschlagen.`,
    bindingSeam: (band, inset) =>
      `Auf jeder Seite sind ${band} zu sehen. ${inset} von der Innenkante steppen, durch beide Seiten zugleich.`,
    hem: (panels, width) => `${counted(panels, 'Blende', 'Blenden')} säumen, ${width} breit`,
    hemHow: (run, inset) =>
      `An der Fertiglinie nach innen umschlagen, ringsum ${run}. ${inset} von der Bruchkante steppen. Ecken flach legen, wo gezeichnet einknipsen.`,
    hotCut: (panels) => `Kante von ${counted(panels, 'Blende', 'Blenden')} verschweißen`,
    hotCutHow: (run) =>
      `An der Fertiglinie schneiden, ringsum ${run}, so langsam, dass die Fäden verschmelzen. Die gerade Seite jeder Tasche zunähen.`,
    glassMagnets: (count, magnet) =>
      `${counted(count, 'Magnet', 'Magnete')} für die Innenseite des Glases vorbereiten: ${magnet}`,
    wrap: (count, film, strip, length) =>
      `Hülle: ${film} in Streifen von ${strip} Breite schneiden, diese in Längen von ${length}, ${count} Stück. Um je einen Magneten falten und verschweißen.`,
    tape: (count, tape, length) =>
      `Klebeband: ${count} Stück ${tape}, ${length} lang, auf die Seite zum Glas.`,
    glassPole: (pole) =>
      pole === 'north'
        ? 'Die Seite zum Raum kennzeichnen: Süd. Prüfen, dass jeder richtig herum an eine Tasche der Blende zieht.'
        : 'Die Seite zum Raum kennzeichnen: Nord. Prüfen, dass jeder richtig herum an eine Tasche der Blende zieht.',
    check: () => 'Jede Blende prüfen und beschriften',
    checkLabel: () => 'Öffnung und Schnittmuster auf das Etikett schreiben.',
  },
  exploded: {
    keyed: () => 'nach Marke',
    fasteners: (count, fastener) => `Am Rand: ${counted(count, 'Befestigung', 'Befestigungen')}, ${fastener}`,
    steel: (count, strip) => `Innen am Glas, geklebt: ${counted(count, 'Stück', 'Stücke')} ${strip}`,
    title: () => 'Die Schichten, von außen nach innen',
    binding: (binding, band) => `Einfassband: ${binding}, ${band} auf jeder Seite`,
    hem: (band) => `Saum, ${band} breit, nach innen umgeschlagen`,
    cloth: (cloth) => `Stoff, Außenseite oben: ${cloth}`,
    magnets: (count, magnet, pole) =>
      `${counted(count, 'Magnet', 'Magnete')}, ${pole}-Seite nach außen: ${magnet}`,
    pockets: (count, pieces) => `${counted(count, 'Tasche', 'Taschen')}: ${some(pieces, 8)}`,
    layer: (name) =>
      (
        ({
          ...{ fabric: 'Stoff', wrapFilm: 'Hüllfolie', tape: 'Klebeband', glass: 'Glas', air: 'Luft' },
          ...{ standOff: 'Luft unter der Dichtung', laminated: 'Verbundglas', acrylic: 'Acrylglas' },
          film: 'Folie',
        }) as Record<string, string>
      )[name] ?? name,
    between: (layers) => `Zwischen den Magneten: ${layers}`,
    inside: (count, magnet) =>
      `Innen am Glas, umhüllt und geklebt: ${counted(count, 'Magnet', 'Magnete')}, ${magnet}`,
  },
  check: {
    marks: () => 'Pole nach Marke, jeder innere Magnet zieht an',
    fasteners: () => 'Befestigungen halten, von Hand gezogen',
    title: () => 'Prüfung jeder fertigen Blende',
    what: () => 'Prüfung',
    nominal: () => 'Sollmaß',
    measured: () => 'Gemessen',
    width: () => 'Breite',
    height: () => 'Höhe',
    holdPoints: (from, to) => `Haltepunkt ${from} bis ${to}, Mitten`,
    band: () => 'Sichtbares Band auf jeder Seite',
    stitchInset: () => 'Naht von der Innenkante',
    stitchLength: () => 'Stichlänge',
    pocketsClosed: () => 'Taschen zugenäht',
    poles: (pole) => `Pole mit dem Prüfmagneten, ${pole} außen`,
    all: (count) => `alle ${count}`,
  },
  install: {
    markNote: (dot, other, side) =>
      side === 'outside'
        ? `${dot}: Punkt nach außen. ${other}: Punkt zum Glas. Von den zwei dicken Kanten messen.`
        : `${dot}: Punkt zum Raum. ${other}: Punkt zum Glas. Von den zwei dicken Kanten messen.`,
    keyedOnly: () =>
      'Diese Blende ist verschlüsselt: Nur auf eine Weise zieht sie an jedem Punkt an. Wo sie abstößt, sitzt sie falsch herum.',
    steelNote: () => 'Stücke Stahlband an den Nummern. Von den zwei dicken Kanten messen.',
    fastenerNote: () => 'Befestigungen an den Nummern. Von den zwei dicken Kanten messen.',
    insideSteel: () => 'Den Stahl innen setzen',
    insideSteelHow: () =>
      'Jedes Stück an seine Nummer, Klebeseite zum Glas. Sein Magnet zieht es seitlich nur schwach: erst den Platz anzeichnen, dann kleben.',
    fastenerClean: () => 'Den Rahmen reinigen',
    fastenerCleanHow: () =>
      'Wo die Befestigungen sitzen, Schmutz und Wachs abwaschen. Saugnäpfe und Klettband brauchen es sauber, trocken und glatt.',
    fastenerHang: () => 'Anzeichnen, dann oben zuerst befestigen',
    fastenerHangHow: () =>
      'Die Blende mit Klebeband halten, jeden Punkt durch sie auf dem Rahmen anzeichnen, die Rahmenhälften von den oberen Ecken abwärts setzen. Den Stoff glatt ziehen, nicht stramm.',
    fastenerTakeOff: () => 'Abnehmen',
    fastenerTakeOffHow: () =>
      'Von einer unteren Ecke her lösen, jede Befestigung gerade ab. Trocken lagern, flach oder gerollt.',
    title: () => 'Montageblatt',
    clean: () => 'Glas und Magnete reinigen',
    cleanHow: () =>
      'Isopropanol und Wasser, halb und halb, auf einem fusselfreien Tuch. Trocknen lassen. Gereinigte Stellen nicht berühren.',
    warm: () => 'Warm und trocken arbeiten',
    warmHow: () =>
      'Glas, Klebeband und Magnete zwischen 21 und 38 °C, nie unter 10 °C. Kein Tau auf dem Glas.',
    hang: () => 'Zuerst die Blende außen anhängen',
    hangHow: () =>
      'Außenseite nach außen, Pfeil nach oben. Reihenfolge nach der Tabelle: obere Ecken, obere Seite, untere Ecken, der Rest. Solange hält schwach klebendes Band.',
    insideFirst: () => 'Die Magnete innen setzen',
    insideHow: () =>
      'Jeden an seine Nummer, gekennzeichnete Seite zum Raum. Er zieht durch das Glas zu seinem Gegenstück: mit noch bedecktem Klebeband seine Stelle finden lassen, anzeichnen, dann kleben.',
    press: () => 'Jeden 10 Sekunden fest andrücken: 100 kPa auf die ganze Fläche.',
    dwell: () => '72 Stunden warten',
    dwellHow: () =>
      'Das Klebeband braucht 72 Stunden bis zum vollen Halt. Bis dahin die Blenden abnehmen oder ohne Zug hängen lassen.',
    takeOff: () => 'Abnehmen und aufbewahren',
    takeOffHow: () =>
      'Von einer unteren Ecke abziehen. Flach legen oder mit dem Gewebe nach außen rollen, Taschen auseinander, trocken. Nicht über einen Magneten falten.',
    panel: (pattern, turned, size) =>
      turned
        ? `Blende ${pattern}, Schnittmuster gewendet. Öffnung ${size}.`
        : `Blende ${pattern}. Öffnung ${size}.`,
    fromOutside: () => 'Von außen',
    fromInside: () => 'Von innen',
    pole: (pole) => (pole === 'north' ? 'N' : 'S'),
    poleNote: (letter, pole, side) => {
      const face = pole === 'north' ? 'Nordseite' : 'Südseite';
      return side === 'outside'
        ? `${letter}: An der Blende zeigt die ${face} nach außen. Von den zwei starken Kanten messen.`
        : `${letter}: Innen am Glas zeigt die ${face} zum Raum. Von den zwei starken Kanten messen.`;
    },
    number: () => 'Nr.',
    across: (view, side) =>
      `${view === 'outside' ? 'Außen' : 'Innen'}, von ${side === 'left' ? 'links' : 'rechts'}`,
    upFrom: () => 'Von unten',
    order: () => 'Folge',
    without: (names) => `Noch keine Blende, siehe Arbeitsauftrag: ${some(names)}.`,
    inches: () => 'Zoll, auf 1/16 gerundet',
    millimetres: () => 'Millimeter, auf ganze gerundet',
    tableNoteBox: (unit: string): string =>
      `Magnetmitten, gemessen nach oben von einem Lineal, das waagerecht am tiefsten Punkt der Öffnung anliegt, und quer von einem, das senkrecht an ihrem äußersten Punkt anliegt. In ${unit}.`,
    tableNote: (unit) =>
      `Mitten der Magnete, rechtwinklig zu den Seiten der Öffnung und von ihnen gemessen, als wären die Ecken scharf. In ${unit}.`,
  },
  lay: {
    title: () => 'Schnittlage',
    heading: (lay, cloth) => `${lay} · ${cloth}`,
    figures: (width, length, density, pieces) =>
      `Rolle ${width} breit, ${length} verbraucht, davon ${density} in Teilen. ${counted(pieces, 'Teil', 'Teile')}.`,
    offcut: (name, place, size, density, pieces) =>
      `Auf dem Reststück „${name}“${place === '' ? '' : ` (${place})`}, ${size}, davon ${density} in Teilen. ${counted(pieces, 'Teil', 'Teile')}. Vor dem Zuschnitt nachmessen.`,
    rows: (rows) => `Die Rolle läuft über ${rows} Zeilen weiter.`,
    ownPockets: (openings) =>
      `${openings === '' ? 'Ihre' : `Für ${openings}: Ihre`} Blenden bekommen die Taschen dieser Schnittlage.`,
    oneWay: () => 'Alle Teile liegen in einer Richtung des Stoffs.',
    shaded: () => 'Dunkler: Taschen.',
    keptClear: (places) =>
      `Durchkreuzt: ${counted(places, 'freigehaltene Stelle', 'freigehaltene Stellen')}.`,
  },
  pocket: {
    title: () => 'Taschenteile',
    note: () =>
      'In Originalgröße: den Balken messen. Die untere Seite kommt an die Kante der Blende; der Strich ist ihre Mitte.',
    name: (piece, count) => `${piece} · ${count} × zuschneiden`,
    for: (patterns) => `Für ${some(patterns, 8)}`,
  },
  label: {
    title: (kind) => (kind === 'shelf' ? 'Regaletiketten' : 'Einnähetiketten'),
    panel: (pattern, turned) => (turned ? `Blende ${pattern}, gewendet` : `Blende ${pattern}`),
    offcuts: () => 'Etiketten für Reststücke',
    alongAcross: (size) => `${size} (längs × quer)`,
    batch: (batch) => `Partie ${batch}`,
  },
  template: {
    title: () => 'Schablonenblätter',
    note: () =>
      'In Originalgröße: den Balken messen. Stoff oder Folie durch das Papier schneiden, oder eine Schablone ausschneiden und umfahren.',
    copies: (here, needed) => `${here} auf dieser Seite; der Auftrag braucht ${needed}.`,
    pocketNote: () => 'Die gerade Seite kommt an die Kante der Blende; der Strich ist ihre Mitte.',
    film: (film, count) => `${film} · ${count} × zuschneiden`,
    filmNote: (magnet, size) =>
      `Für ${magnet}, je ${size}. Den Magneten auf seinen Umriss legen, an der gestrichelten Linie falten, die drei offenen Seiten verschweißen.`,
  },
  piece: {
    name: (piece, count) => `${piece} · ${count} × zuschneiden`,
    turnedOver: () => 'Schnittmuster gewendet',
    units: () => 'Einheit: Millimeter',
  },
  buy: {
    title: () => 'Einkaufsliste',
    noSupplier: () => 'Ohne Lieferanten',
    item: () => 'Artikel',
    used: () => 'Bedarf',
    buy: () => 'Kaufen',
    left: () => 'Rest',
    cost: () => 'Kosten',
    packs: (count, each) => `${count} × ${each}`,
    roll: (name, width) => `${name}, ${width} breit`,
    total: (cost) => `Alle Lieferanten zusammen: ${cost}`,
    note: () => 'Ganze Gebinde zu den Preisen des Katalogs der Werkstatt, ohne Steuer und Fracht.',
    csv: (currency) => [
      ...['Lieferant', 'Artikel', 'Bezeichnung', 'Einheit', 'Bedarf', 'Gebinde', 'Menge je Gebinde', 'Rest'],
      ...[`Preis je Gebinde, ${currency}`, `Kosten, ${currency}`],
    ],
  },
  quote: {
    title: () => 'Angebot',
    for: () => 'Für',
    from: () => 'Von',
    job: (name, id, date) => `${name} · ${id} · ${date}`,
    opening: () => 'Blende für',
    price: () => 'Preis',
    size: (size) => `Öffnung ${size}`,
    subtotal: () => 'Blenden',
    tax: (rate) => `Steuer ${rate}`,
    total: () => 'Gesamt',
    valid: (days, until) => `Gültig ${counted(days, 'Tag', 'Tage')}, bis ${until}.`,
    exits: (names) =>
      `Als Notausstieg gekennzeichnet: ${some(names)}. Eine Blende dort muss von innen mit einer Hand und ohne Werkzeug abgehen, und örtliche Vorschriften gehen vor.`,
    without: (names) => `Nicht in diesem Angebot: ${some(names)}.`,
    unsettled: (names) =>
      `Mit Preis, doch wie es gemacht wird, steht noch nicht fest: ${some(names)}. Vorher wird damit nicht begonnen.`,
    options: () => 'Wahlweise',
    difference: () => 'Mehr oder weniger',
    optionsNote: () => 'Jeweils für alle Blenden, statt des Obigen, mit Steuer; eigens durchgerechnet.',
    option: (names) => names.join(', '),
    optionUnsettled: (name) => `${name} (wie es gemacht wird, steht noch nicht fest)`,
    optionHem: (width) => `Saum, ${width} breit`,
    optionHotCut: () => 'heiß geschnittene Kante',
    optionMagnets: () => 'Magnetpaare',
    optionHold: () => 'anders gehalten',
    terms: () => 'Bedingungen',
    csv: (currency) => ['Öffnung', 'Name', 'Ort', 'Breite mm', 'Höhe mm', 'Stoff', `Preis, ${currency}`],
  },
  costs: {
    title: () => 'Kalkulation, nur für die Werkstatt',
    about: () => 'Nicht für den Kunden. Die Minuten sind die Richtzeiten der Werkstatt: Schätzungen.',
    material: () => 'Material',
    bought: () => 'Einkauf',
    charged: () => 'Berechnet',
    labour: () => 'Arbeit',
    labourOf: (minutes, rate) => `Arbeit, ${minutes} zu ${rate} je Stunde`,
    overhead: (rate) => `Gemeinkosten ${rate}`,
    cost: () => 'Selbstkosten',
    price: (markup) => (markup === '' ? 'Preis' : `Preis, mit ${markup} Aufschlag`),
    margin: (margin) => `Spanne, ${margin} vom Preis`,
    sums: () => 'Von den Kosten zum Preis',
    csv: (currency) => ['Art', 'Bezeichnung', 'Menge', 'Minuten', `Kosten, ${currency}`],
  },
  cut: {
    title: () => 'Zuschnittliste',
    nothing: () => 'Nichts zuzuschneiden: Noch keine Öffnung hat eine Blende.',
    pieces: () => 'Stoffteile',
    piece: () => 'Teil',
    count: () => 'Anzahl',
    size: () => 'Zuschnitt',
    cloth: () => 'Stoff',
    strip: (kind, name) =>
      ({ binding: `Einfassband: ${name}`, wrapFilm: `Hüllfolie: ${name}`, tape: `Klebeband: ${name}` })[kind],
    stock: (length) => `Aus Rollen von ${length}`,
    roll: () => 'Rolle',
    lengths: () => 'In dieser Folge ablängen',
    left: () => 'Rest',
    lengthFor: (count, length, whom) =>
      count === 1 ? `${length} (${whom})` : `${count} × ${length} (${whom})`,
    csv: () => ['Art', 'Material', 'Teil oder Rolle', 'Anzahl', 'Länge mm', 'Breite mm', 'für'],
  },
};
