import type { FindingWords } from '../words.ts';
import { opening } from './where.ts';

/** What can hurt someone. Each defers to local rules and to those who are licensed. */
export const cautions = {
  EXIT_OPENING: (f, show) => ({
    what: `${opening(f, show)} ist ein Notausstieg.`,
    why: 'Eine Blende daran muss sofort abgehen: von innen, im Dunkeln und ohne Werkzeug.',
    do: 'Keine Magnete oder Befestigungen innen, die sie verriegeln; Schild und Griff sichtbar lassen; örtliche Vorschriften befolgen.',
  }),
  REMOVE_BEFORE_DRIVING: (f, show) => ({
    what: f.where.opening
      ? `${opening(f, show)}: Hier sieht hindurch, wer fährt. Die Blende vor der Fahrt abnehmen.`
      : 'Alle Blenden abnehmen, bevor das Fahrzeug oder Boot sich bewegt.',
    why: 'Eine Blende versperrt die Sicht, und keine Magnetangabe hier gilt während der Fahrt.',
    do: 'In jede Blende ein Schild einnähen, das dies sagt.',
  }),
  MAGNETS_PINCH: (f, show) => ({
    what: `Losgelassen schlagen zwei dieser Magnete mit etwa ${show.force(f.numbers.touching)} aufeinander (Schätzung).`,
    why: 'Sie quetschen die Haut und können splittern.',
    do: 'Voneinander fern halten, bis sie eingeschlagen sind; seitlich auseinander schieben; Schutzbrille tragen.',
  }),
  MAGNETS_SWALLOWED: () => ({
    what: 'Magnete von Kindern fern halten.',
    why: 'Zwei verschluckte Magnete können den Darm abklemmen und töten.',
    do: 'Jeden Magneten einschlagen und einnähen; wurde einer verschluckt, sofort ärztliche Hilfe holen.',
  }),
  MAGNETS_IMPLANTS: (f, show) => ({
    what: `Die Magnete von Herzschrittmachern und anderen Implantaten fern halten: alle dieses Auftrags zusammen mindestens ${show.length(f.numbers.distance)} (Schätzung).`,
    why: 'Ein starker Magnet in der Nähe kann ihre Arbeit stören.',
    do: 'Den Kunden darauf hinweisen; für den Abstand gilt, was der behandelnde Arzt sagt.',
  }),
  MAGNETS_COMPASS: (f, show) => ({
    what: `Die Magnete dieses Auftrags zusammen können einen Steuerkompass näher als ${show.length(f.numbers.steering)} ablenken, einen Regelkompass näher als ${show.length(f.numbers.standard)} (Schätzung).`,
    why: 'Nach ihm wird das Boot gesteuert.',
    do: 'Blenden und innere Magnete weiter weg verstauen und den Kompass mit ihnen an Ort und Stelle kompensieren.',
  }),
  HOT_KNIFE_FUMES: () => ({
    what: 'Ein heißes Messer auf beschichtetem Stoff macht Dämpfe, und es verbrennt.',
    why: 'Erhitzte Vinylbeschichtung kann Chlorwasserstoff abgeben; der schadet Lunge und Augen.',
    do: 'Unter einer Absaugung oder im Freien schneiden, Brennbares wegräumen, das Datenblatt des Stoffs befolgen.',
  }),
  SOLVENT_FIRE: () => ({
    what: 'Lösemittel zum Reinigen brennen, und ihr Dampf auch.',
    why: '',
    do: 'Lüften, Flammen und Zündflammen löschen, Handschuhe tragen, die Angaben auf dem Gebinde befolgen.',
  }),
  TAPE_DWELL: () => ({
    what: 'Das Klebeband braucht sauberes, trockenes, warmes Glas und Zeit.',
    why: 'Acrylschaumband erreicht seine Festigkeit nach etwa drei Tagen (übliche Praxis, ohne Quelle).',
    do: 'Reinigen, jeden Magneten fest andrücken und keine Blende vor der Zeit einhängen, die für das Band angegeben ist.',
  }),
  STEEL_EDGES: () => ({
    what: 'Geschnittenes Stahlband hat scharfe Kanten und rostet, wo das Zink durchtrennt ist.',
    why: '',
    do: 'Enden feilen und lackieren, Handschuhe tragen, nichts Blankes ans Glas legen.',
  }),
  CUPS_LET_GO: () => ({
    what: 'Saugnäpfe lösen sich von selbst, mit der Zeit, in Sonne, Kälte und Höhe.',
    why: 'Luft kriecht unter den Rand.',
    do: 'Jeden Tag neu andrücken und nichts daran hängen, was nicht fallen darf.',
  }),
  FIXINGS_IN_FRAME: (f, show) => ({
    what: `${show.number(f.numbers.fixings, 0)} Schrauben, Niete oder Stifte gehen in den Rahmen.`,
    why: 'Ein Rahmen kann Leitungen, Airbags oder die Glaskante verbergen, und ein Loch lässt Wasser ein.',
    do: 'Vor dem Bohren dahinter sehen, Tiefenanschlag setzen, Schutzbrille tragen, jedes Loch abdichten, die Regeln von Fahrzeug oder Bau befolgen.',
  }),
  HEAT_INSIDE: () => ({
    what: 'Ein abgestelltes Fahrzeug oder ein geschlossener Raum wird gefährlich heiß, mit oder ohne Blende.',
    why: 'In der Sonne erwärmt sich ein Auto um etwa 2 °C (3 °F) in fünf Minuten, und offene Fenster bremsen das kaum. Eine dunkle Blende erwärmt auch das Glas: Verbundglas, beschichtete und doppelte Scheiben können springen.',
    do: 'Nie ein Kind, einen gebrechlichen Menschen oder ein Tier darin lassen. Wo die Scheiben nicht einfaches Glas sind, beim Glashersteller nachfragen.',
  }),
  HOLD_IS_ESTIMATE: () => ({
    what: 'Angaben zu Haltekraft und Wind sind Schätzungen, keine Messungen.',
    why: 'Wirkliche Magnete, Klebebänder, Scheiben und Böen weichen von den Zahlen ab, aus denen sie gerechnet sind.',
    do: 'Erst eine Blende am abgestellten Fahrzeug im Wind ausprobieren, bevor man den anderen traut.',
  }),
} satisfies Partial<FindingWords>;
