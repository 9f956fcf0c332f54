import type { Finding } from '@panewright/design';
import { joinWords } from '../show.ts';
import type { FindingWords } from '../words.ts';
import { cautions } from './cautions.ts';
import { holdByFindings } from './holdByFindings.ts';
import { partsOf, sayPart } from './readings.ts';
import { surveyFindings } from './surveyFindings.ts';
import { opening, pattern } from './where.ts';

const edge = (f: Finding): string => sayPart(f.where.edge);

const PANEL_LINES: Readonly<Record<string, string>> = {
  finished: 'die fertige Kante',
  cut: 'die Schnittlinie',
  band: 'die Innenkante von Einfassung oder Saum',
  stitch: 'die Nahtlinie',
};
const PANEL_REASONS: Readonly<Record<string, string>> = {
  OFFSET_VANISHES: 'es bleibt nichts von ihr übrig',
  OFFSET_SPLITS: 'sie zerfällt in mehrere Teile',
};

const KINDS: Readonly<Record<string, string>> = {
  fabric: 'keinen Stoff',
  binding: 'kein Einfassband',
  magnet: 'keinen Magneten',
  wrapFilm: 'keine Folie',
  tape: 'kein Klebeband',
  thread: 'kein Garn',
  steelStrip: 'kein Stahlband',
  fastener: 'keine Befestigung',
};

const patternFindings = {
  SHARED_PATTERN: (f, show) => {
    const turned =
      String(f.numbers.turnedOver ?? '') === '' ? '' : ` und gewendet ${show.openings(f.numbers.turnedOver)}`;
    return {
      what: `Schnittmuster ${f.where.pattern ?? ''} gilt für ${show.openings(f.numbers.asIs)}${turned}.`,
      why: `Die Formen stimmen auf ${show.fine(f.numbers.deviation)} überein.`,
      do: 'Das Schnittmuster einmal zeichnen; jede Blende mit ihrer Öffnung beschriften.',
    };
  },
  NEAR_MISS: (f, show) => ({
    what: `${opening(f, show)} passt fast zu Schnittmuster ${f.where.pattern ?? ''}: Die Abweichung ist ${show.fine(f.numbers.deviation)}, ${show.fine(f.numbers.over)} mehr, als Formen mit gemeinsamem Schnittmuster haben dürfen.`,
    why: '',
    do: 'Bei einem eigenen Schnittmuster lassen, oder neu messen, wenn sie gleich sein müssten.',
  }),
  SHARED_WITHIN_SPREAD: (f, show) => ({
    what: `${pattern(f, show)}: ${show.openings(f.numbers.members)} und das Schnittmuster sind zusammen nur auf ${show.fine(f.numbers.spread)} bekannt.`,
    why: `Formen mit gemeinsamem Schnittmuster dürfen sich um ${show.fine(f.numbers.tolerance)} unterscheiden; das können diese Messungen nicht sicher sagen.`,
    do: 'Jede noch einmal messen, oder das gedruckte Schnittmuster vor dem Zuschnitt ans Fenster halten.',
  }),
  PATTERN_MEAN_IMPOSSIBLE: (f, show) => ({
    what: `${pattern(f, show)}: ${show.openings(f.numbers.members)} haben kein Mittel; das Schnittmuster ist die erste.`,
    why: 'Gemittelt wird Ecke für Ecke, und sie sind nicht aus denselben Strecken und Bögen gemacht.',
    do: 'Eine von ihnen als Schnittmuster wählen.',
  }),
  TURNED_OVER_FACES_DIFFER: (f, show) => ({
    what: `${pattern(f, show)} gilt gewendet für ${show.openings(f.numbers.turnedOver)}, und ${f.numbers.fabric} hat zwei verschiedene Seiten.`,
    why: 'Ein Teil aus solchem Stoff kann nicht gewendet werden.',
    do: 'Die gewendeten Blenden als eigene Teile zuschneiden, wie es die Schnittlage tut.',
  }),
} satisfies Partial<FindingWords>;

const panelFindings = {
  ITEM_NOT_IN_CATALOGUE: (f, show) => ({
    what: `${opening(f, show)}: Der Katalog hat ${KINDS[String(f.numbers.kind)] ?? 'keinen Eintrag'} „${show.text(f.numbers.id)}“.`,
    why: 'Ohne ihn lässt sich für diese Öffnung nichts berechnen.',
    do: 'Etwas anderes wählen, oder es in den Katalog aufnehmen.',
  }),
  PANEL_IMPOSSIBLE: (f, show) => ({
    what: `${pattern(f, show)}: Die Blende lässt sich nicht herstellen: ${PANEL_LINES[String(f.numbers.line)] ?? 'eine ihrer Linien'} geht nicht auf, ${PANEL_REASONS[String(f.numbers.refusal)] ?? 'sie kreuzt sich selbst'}.`,
    why: 'Zugabe, Saum oder Einfassung sind zu breit für die Form.',
    do: 'Einen schmaleren Kantenabschluss oder eine andere Zugabe wählen.',
  }),
  CORNER_TOO_TIGHT_FOR_BINDING: (f, show) => ({
    what: `${pattern(f, show)}: Hier (${edge(f)}) hat die fertige Kante einen Radius von ${show.fine(f.numbers.radius)}; ${show.text(f.numbers.binding)} geht um ${show.fine(f.numbers.least)} und mehr.`,
    why: 'Um eine engere Ecke wirft ein gerade geschnittenes Band Falten.',
    do: 'Die Ecke der Blende stärker runden, das Band dort auf Gehrung legen, oder ein biegsameres wählen.',
  }),
  EDGE_NAME_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: Für „${f.numbers.edge}“ ist eine Zugabe angegeben, und so heißt keine Kante.`,
    why: 'Stattdessen gilt die Zugabe für alle Kanten.',
    do: `Eine dieser Kanten nennen: ${joinWords(partsOf(f.numbers.known), 'oder')}.`,
  }),
  FABRIC_NOT_FOR_HEAT: (f, show) => ({
    what: `${pattern(f, show)}: ${show.text(f.numbers.fabric)} darf nicht heiß geschnitten werden.`,
    why: 'Seine Kante verschmilzt nicht, und die erhitzte Beschichtung kann gesundheitsschädliche Dämpfe abgeben.',
    do: 'Einfassen oder säumen, oder einen Stoff wählen, der für Hitze gekennzeichnet ist.',
  }),
  HEM_NEEDS_NOTCHED_CORNERS: (f, show) => ({
    what: `${pattern(f, show)}: Der Saum muss an ${show.number(f.numbers.corners, 0)} Ecken eingeschnitten werden.`,
    why: 'Um eine Außenecke gefaltet ist mehr Stoff da als Platz.',
    do: 'Die Zugabe vor dem Falten bis zur fertigen Kante einschneiden.',
  }),
} satisfies Partial<FindingWords>;

const PULL_REASONS: Readonly<Record<string, string>> = {
  GAP_NOT_POSITIVE: 'Zwischen den Magneten liegt nichts.',
  GAP_TOO_SMALL: 'Die Magnete berühren sich fast.',
};

const holdFindings = {
  HOLD_POINTS_OVERLAP: (f, show) => ({
    what: `${pattern(f, show)}: Die Haltepunkte ${joinWords((f.where.point ?? '').split(' '), 'und')} liegen ${show.length(f.numbers.apart)} auseinander, und jede Tasche ist ${show.length(f.numbers.pocket)} breit.`,
    why: 'Zwei Taschen können nicht an derselben Stelle sitzen.',
    do: 'Eine kleinere Tasche oder einen weiteren Abstand nehmen.',
  }),
  HOLD_POINT_ON_OBSTRUCTION: (f, show) => ({
    what: `${opening(f, show)}: Haltepunkt ${f.where.point ?? ''} liegt ${show.length(f.numbers.gap)} von ${f.numbers.obstruction}; sein Magnet reicht ${show.length(f.numbers.reach)} weit.`,
    why: 'Ein Magnet dort läge nicht flach auf dem Glas oder wäre im Weg.',
    do: 'Einen anderen Abstand oder einen kleineren Magneten wählen, oder das Hindernis versetzen.',
  }),
  MAGNET_DOES_NOT_FIT_POCKET: (f, show) =>
    f.numbers.need > 0
      ? {
          what: `${pattern(f, show)}: An Haltepunkt ${f.where.point ?? ''} braucht der eingeschlagene Magnet ${show.length(f.numbers.need)}; eine Tasche von ${show.length(f.numbers.pocket)} lässt dort ${show.length(f.numbers.room)}.`,
          why: 'Nähte, Einfassung und Ecke nehmen einen Teil des Taschenteils.',
          do: 'Eine größere Tasche oder einen kleineren Magneten nehmen.',
        }
      : {
          what: `${pattern(f, show)}: An Haltepunkt ${f.where.point ?? ''} lässt eine Tasche von ${show.length(f.numbers.pocket)} gar keinen Platz.`,
          why: 'Die Blende ist dort zu klein für das Taschenteil und seine Nähte.',
          do: 'Eine größere Blende, einen schmaleren Kantenabschluss oder eine andere Befestigung nehmen.',
        },
  PULL_TOO_WEAK: (f, show) => ({
    what: `${opening(f, show)}: ${show.number(f.numbers.count, 0)} Haltepunkte von je mindestens ${show.force(f.numbers.pull)} halten ${show.number(f.numbers.margin, 2)} mal, was ein Wind von ${show.speed(f.numbers.wind)} verlangt; gefordert ist ${show.number(f.numbers.asked, 2)} mal (Schätzung).`,
    why:
      f.numbers.letsGoAt === 0
        ? 'Sie rutschte unter ihrem eigenen Gewicht ab, ganz ohne Wind.'
        : `${f.numbers.mode === 'slip' ? 'Zuerst rutschte sie ab' : 'Zuerst würde sie abgezogen'}, bei einem Wind von etwa ${show.speed(f.numbers.letsGoAt)}.`,
    do: 'Stärkere Magnete oder mehr Haltepunkte nehmen, und vor dem Vertrauen ausprobieren.',
  }),
  CORNER_MAY_CREEP: (f, show) => ({
    what: `Öffnung ${show.opening(f.numbers.opening)}, hier die schwächste: Haltepunkt ${f.numbers.point} kann bei einem mittleren Wind von ${show.speed(f.numbers.low)} bis ${show.speed(f.numbers.high)} nachzugeben beginnen, unter den geforderten ${show.speed(f.numbers.wind)} (Schätzung).`,
    why: `Als Ganzes bleibt die Blende bis etwa ${show.speed(f.numbers.whole)} daran; die Kante gibt zuerst nach. Sie zieht ihre Enden nach innen, umso stärker, je straffer der Stoff: gerechnet für ${show.number(f.numbers.slackLow, 1)} bis ${show.number(f.numbers.slackHigh, 1)} % Lose, und die anderen Blenden sind ähnlich.`,
    do: 'Die Lose messen und bei den Gewohnheiten eintragen; das Gewebe ohne Zug einnähen, die Haltepunkte enger setzen, und eine Blende im Wind ausprobieren, bevor man dem Satz traut.',
  }),
  PULL_REFUSED: (f, show) => ({
    what: `${opening(f, show)}: Die Haltekraft über einen Spalt von ${show.fine(f.numbers.gap)} lässt sich nicht berechnen.`,
    why:
      PULL_REASONS[f.numbers.refusal] ?? 'Spalt oder Magnete liegen außerhalb dessen, wofür die Formel gilt.',
    do: 'Glasschichten und Magnete prüfen; über einen so weiten Spalt größere Magnete oder eine andere Befestigung nehmen.',
  }),
  GRADE_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: Die Güte „${f.numbers.grade}“ von ${f.numbers.magnet} ist nicht bekannt.`,
    why: 'Kraft und Wärmegrenze eines Magneten folgen aus seiner Güte.',
    do: 'Die Güte eingeben, wie sie beim Händler steht, etwa N42 oder N42SH.',
  }),
  MAGNETS_PUSH_OFF_CENTRE: (f, show) => ({
    what: `${opening(f, show)}: ${f.numbers.outside} und ${f.numbers.inside} drängen einander aus der Mitte.`,
    why: 'Ist ein Magnet viel kleiner als der andere, zieht es ihn zu dessen Rand.',
    do: 'Magnete gleicher Größe paaren.',
  }),
  HEAT_WEAKENS_MAGNETS: (f, show) => ({
    what: `Bei ${show.number(f.numbers.hottest, 0)} °C kann ${f.numbers.magnet} dauerhaft an Kraft verlieren: Er verträgt etwa ${show.number(f.numbers.limit, 0)} °C (Schätzung); die ${show.number(f.numbers.label, 0)} °C auf seiner Packung gelten für einen längeren Magneten.`,
    why: 'Ein flacher Magnet verliert Kraft schon unter der Grenze seiner Güte.',
    do: 'Eine Güte für mehr Wärme oder einen dickeren Magneten wählen.',
  }),
  CURVED_GLASS: (f, show) => ({
    what: `${opening(f, show)}: Das Glas ist gewölbt, und die Haltekraft ist für ebenes Glas gerechnet.`,
    why: 'Auf einer Wölbung liegen die Magnete nicht flach, und der Spalt ist weiter.',
    do: 'Erst ein Paar Magnete am Glas ausprobieren.',
  }),
} satisfies Partial<FindingWords>;

const cuttingFindings = {
  PIECE_WIDER_THAN_ROLL: (f, show) => ({
    what: `Teil ${show.text(f.numbers.piece)} braucht ${show.length(f.numbers.leastWidth)} quer zur Rolle; ${show.text(f.numbers.fabric)} lässt ${show.length(f.numbers.usableWidth)}.`,
    why: 'Auch die breiteste Rolle ist schmaler als das Teil, wie man es auch drehen darf.',
    do: 'Einen breiteren Stoff wählen, den Fadenlauf freigeben, oder die Blende teilen.',
  }),
  STRIP_LONGER_THAN_ROLL: (f, show) => ({
    what: `${show.text(f.numbers.binding)}: Ein Streifen von ${show.length(f.numbers.length)} ist länger, als er am Stück verkauft wird (${show.length(f.numbers.stock)}).`,
    why: '',
    do: 'Eine längere Rolle kaufen, oder zwei Längen in der Mitte einer Kante ansetzen.',
  }),
  LAY_PLACES_GIVEN_UP: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: Nicht jedes Teil konnte bleiben, wo es von Hand liegt: ${joinWords(f.numbers.pieces.split(' '), 'und')}.`,
    why: 'Der Auftrag hat sich seitdem geändert: Ein Teil ist größer, darf nicht mehr so gedreht werden, oder wird nicht mehr zugeschnitten.',
    do: 'Sie sind um die anderen herum neu ausgelegt. Die Schnittlage ansehen, und wieder verschieben, wo es hilft.',
  }),
  OFFCUTS_USED: (f, show) => ({
    what: `Reststücke aus dem Bestand nehmen ${f.numbers.pieces} der Teile auf: ${show.text(f.numbers.offcuts)}.`,
    why: `Ohne sie wäre für ${show.money(f.numbers.saved)} mehr Stoff zu kaufen.`,
    do: 'Jedes Reststück vor dem Zuschnitt nachmessen und auf Fehler durchsehen.',
  }),
  KEPT_TOGETHER_COSTS: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: Das Zusammenhalten kostet ${show.money(f.numbers.price)}: ${f.numbers.length <= 0 ? 'Stoff von einer teureren Rolle' : `${show.length(f.numbers.length)} mehr Stoff`} ist zu kaufen.`,
    why: 'Teil für Teil nähmen Reststücke aus dem Bestand mehr auf.',
    do: 'Kleinere Gruppen wählen oder Teile nehmen, wo sie sparen, bei den Regeln für den Zuschnitt.',
  }),
  KEPT_TOGETHER_CLOTHS: (f, show) => ({
    what: `Die Blenden von „${show.text(f.numbers.place)}“ (${show.openings(f.numbers.openings)}) kommen nicht alle aus einem Stück Stoff.`,
    why: `Sie sind aus mehreren Stoffen: ${show.text(f.numbers.fabrics)}. Die aus demselben Stoff bleiben zusammen.`,
    do: 'Ihnen denselben Stoff geben, wo sie gleich aussehen sollen.',
  }),
  KEPT_TOGETHER_CUT: (f, show) => ({
    what: `Das Reststück „${show.text(f.numbers.offcut)}“ ist als für diesen Auftrag zugeschnitten vermerkt, hat aber keine Schnittlage mehr.`,
    why: `${f.numbers.openings ? `${show.openings(f.numbers.openings)}: Nichts` : 'Nichts'}, was zusammenbleibt, passt neben den anderen Schnittlagen ganz darauf.`,
    do: 'Ist es schon zugeschnitten, kleinere Gruppen oder nichts zusammenhalten; sonst als noch nicht zugeschnitten vermerken.',
  }),
  SAME_WAY_COSTS: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: Alles in einer Richtung auszulegen kostet ${show.money(f.numbers.price)}: ${f.numbers.length <= 0 ? 'Stoff von einer teureren Rolle' : `${show.length(f.numbers.length)} mehr Stoff`} ist zu kaufen.`,
    why: 'Jedes so gedreht, wie es liegen darf, brauchen die Teile eine kürzere Schnittlage oder eine billigere Rolle.',
    do: 'Jedes Teil liegen lassen, wie sein Fadenlauf es erlaubt, wo man den Unterschied nicht sähe.',
  }),
  SAME_WAY_GRAINS: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: Nicht alle Teile liegen in einer Richtung.`,
    why: `Die Länge der Rolle soll bei ${show.openings(f.numbers.up)} nach oben laufen, bei ${show.openings(f.numbers.across)} quer. Jede behält, was gewählt ist.`,
    do: 'Für alle dasselbe wählen, oder „beliebig“.',
  }),
  SAME_WAY_TOO_WIDE: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: Nicht alle Teile liegen in einer Richtung; keine Rolle nimmt ${show.openings(f.numbers.openings)} so auf.`,
    why: 'Längs oder quer ist eines der Teile breiter als die breiteste Rolle. Jedes liegt, wie sein Fadenlauf es erlaubt.',
    do: 'Eine breitere Rolle dieses Stoffs in den Katalog aufnehmen oder die Regel aufheben.',
  }),
  LAY_ROLL_NOT_SOLD: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: Die Schnittlage von Hand ist für eine ${show.length(f.numbers.width)} breite Rolle, und die gibt es nicht zu kaufen.`,
    why: 'Die Breiten im Katalog haben sich geändert.',
    do: 'Es gilt die Schnittlage des Programms. Von Hand neu auslegen, oder die Breite wieder in den Katalog aufnehmen.',
  }),
  LAY_REFUSED: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: Die Teile lassen sich nicht auslegen (${show.text(f.numbers.refusal)}).`,
    why: 'Ein Teil hat eine Form, die sich nicht zuschneiden lässt.',
    do: 'Die oben genannten Blenden ansehen: Eine hat eine Kante, die sich kreuzt, oder keine Fläche.',
  }),
} satisfies Partial<FindingWords>;

/** It does not compile while a code of the plan has no words. */
export const findings: FindingWords = {
  ...surveyFindings,
  ...patternFindings,
  ...panelFindings,
  ...holdFindings,
  ...holdByFindings,
  ...cuttingFindings,
  ...cautions,
};
