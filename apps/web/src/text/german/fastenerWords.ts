/** Words of steel strips and fasteners in the catalogue, in German. */
export const fastenerWords = {
  stripWidth: 'Breite des Bandes',
  fastenerKind: 'Art',
  fastenerKinds: {
    snap: 'Druckknopf',
    hookAndLoop: 'Klettband',
    turnButton: 'Drehverschluss',
    suctionCup: 'Saugnapf',
  },
  spacing: 'Abstände an einer Kante höchstens',
  beyond: 'Stoff über die Anrisslinie hinaus',
  inset: 'Mitte, von der fertigen Kante',
  face: 'Breite über alles',
  fixings: 'Schrauben, Niete oder Stifte je Stück',
  laid: 'Verlegt',
  laids: { run: 'durchgehend an den Kanten', pads: 'als Stück an jedem Punkt' },
  padLength: 'Länge eines Stücks',
  cupDiameter: 'Durchmesser des Napfes',
  strength: 'Wie viel sie hält',
  strengths: { unknown: 'noch nicht bekannt', shop: 'von der Werkstatt erprobt', source: 'aus einer Quelle' },
  strengthAbout:
    'Eine mit der Federwaage abziehen, gerade ab und längs, mehrmals; den kleinsten und den größten Wert eintragen. Bei Klettband: je mm Länge.',
  strengthUnknown:
    'Bis die Werkstatt sie erprobt hat, wird keine Sicherheit für sie genannt (ein Saugnapf wird aus dem Luftdruck gerechnet).',
  pullLow: 'Gerade ab, kleinster Wert, N',
  pullHigh: 'Gerade ab, größter Wert, N',
  alongLow: 'Längs der Fläche, kleinster Wert, N',
  alongHigh: 'Längs der Fläche, größter Wert, N',
  tested: 'Wie und wann erprobt',
  strengthSource: 'Quelle',
};
