import { joinWords } from '../show.ts';
import type { FindingWords } from '../words.ts';
import { sayPart } from './readings.ts';
import { opening } from './where.ts';
import { wrongWay } from './wrongWay.ts';

const points = (text: string): string => joinWords(text.split(' '), 'und');

const APART: Readonly<Record<string, string>> = {
  pocket: 'Die Tasche lässt dem äußeren Magneten zu wenig Platz.',
  glass: 'Das innen freie Glas hat keinen Platz für den inneren Magneten und sein Klebeband.',
  apart: 'Weiter reicht der innere Magnet nicht, und die Tasche endet vorher.',
};
const NO_KEY: Readonly<Record<string, string>> = {
  tooFew: 'Ein Punkt allein zeigt nicht, wie herum er liegt.',
  alike: 'Bei jeder Wahl der Pole würde die Blende auch falsch herum haften.',
  steel: 'Stahl zieht jeden Pol an.',
  fastener: 'Befestigungen haben keine Pole.',
};

/** Was hält und wo, wenn es nicht die Regel ist. */
export const holdByFindings = {
  FASTENER_STRENGTH_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: Noch niemand hat erprobt, wie viel „${f.numbers.fastener}“ hält.`,
    why: `Jede von ${show.number(f.numbers.count, 0)} müsste ${show.force(f.numbers.pull)} gerade ab und ${show.force(f.numbers.along)} längs der Fläche halten (Schätzung).`,
    do: 'Einige mit einer Federwaage abziehen, und den kleinsten und größten Wert in den Katalog eintragen.',
  }),
  FASTENER_ALLOWANCE: (f, show) => ({
    what: `„${f.numbers.fastener}“ verlangt ${show.length(f.numbers.beyond)} über die Anrisslinie hinaus; das gilt anstelle der ${show.length(f.numbers.fit)} des Auftrags.`,
    why: 'Eine Befestigung sitzt auf dem Rahmen, ein Magnet auf dem Glas.',
    do: 'Für eine andere Zugabe bei der Öffnung eine eigene angeben.',
  }),
  HAND_EDGE_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: Ein Haltepunkt ist von Hand auf ${f.numbers.edge} gesetzt; die Blende hat dort keine solche Kante oder ist kürzer.`,
    why: `Ihre Kanten sind ${joinWords(f.numbers.known.split(' ').map(sayPart), 'und')}.`,
    do: 'Den Punkt herausnehmen oder auf eine vorhandene Kante setzen.',
  }),
  HAND_POINT_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: Punkt ${show.number(f.numbers.index, 0)} von ${sayPart(f.where.edge)} ist von Hand versetzt oder entfernt, und die Regel setzt dort ${show.number(f.numbers.points, 0)}.`,
    why: 'Blende oder Abstand haben sich seither geändert.',
    do: 'Diese Änderung herausnehmen oder neu vornehmen.',
  }),
  HAND_POINT_OFF_EDGE: (f, show) => ({
    what: `${opening(f, show)}: Punkt ${show.number(f.numbers.index, 0)} von ${sayPart(f.where.edge)} ist um ${show.length(f.numbers.by)} versetzt, über das Ende seiner Kante hinaus.`,
    why: 'Er bleibt, wo die Regel ihn setzt.',
    do: 'Ihn weniger versetzen, oder einen Punkt auf die nächste Kante setzen.',
  }),
  HAND_ELSEWHERE: (f, show) => ({
    what: `${opening(f, show)}: Ihre von Hand gesetzten Haltepunkte gelten nicht; das Schnittmuster folgt denen von ${show.opening(f.numbers.follows)}.`,
    why: 'Eine Blende dient beiden Öffnungen, also haben sie eine Anordnung.',
    do: 'Eine der beiden behalten, oder dieser Öffnung ein eigenes Schnittmuster geben.',
  }),
  HAND_OPENING_UNKNOWN: (f, show) => ({
    what: `${show.number(f.numbers.points, 0)} Änderungen an Haltepunkten sind für ${f.numbers.opening} aufbewahrt; so heißt keine Öffnung dieses Auftrags.`,
    why: '',
    do: 'Sie gelten wieder, wenn die Öffnung zurückkommt; sonst schaden sie nicht.',
  }),
  HAND_GAP_WIDE: (f, show) => ({
    what: `${opening(f, show)}: Von Hand gesetzt liegen die Haltepunkte ${points(f.where.point ?? '')} ${show.length(f.numbers.gap)} auseinander; die Werkstatt lässt ${show.length(f.numbers.limit)} zu.`,
    why: 'Eine lange Kante hebt sich ab und zieht stärker an ihren Enden.',
    do: 'Einen Punkt dazwischen setzen, oder einen versetzen.',
  }),
  POINTS_CANNOT_MEET_MARGIN: (f, show) => ({
    what: `${opening(f, show)}: Mehr Haltepunkte bringen die Sicherheit nicht auf ${show.number(f.numbers.asked, 2)}; mit ${show.number(f.numbers.points, 0)} beträgt sie ${show.number(f.numbers.best, 2)} (Schätzung).`,
    why: 'Mehr lägen übereinander. Die Anordnung ist die nach dem Abstand.',
    do: 'Stärkere Magnete nehmen, oder nachsehen, welche halten würden.',
  }),
  MAGNETS_CANNOT_MEET: (f, show) => {
    const { pocket, outside, inside, moved, flange } = f.numbers;
    const ways = [
      ...(pocket === undefined ? [] : [`eine Tasche von ${show.length(pocket)}`]),
      ...(outside === undefined ? [] : [`${outside} außen mit ${inside} innen`]),
      ...(moved === undefined ? [] : [`der Punkt um ${show.length(moved)} längs der Kante versetzt`]),
    ];
    const frame = flange === 0 ? '' : ` Der innere Rahmen deckt ${show.length(flange)} vom Glas ab.`;
    return {
      what: `${opening(f, show)}: An Haltepunkt ${points(f.where.point ?? '')} können die beiden Magnete nicht einander gegenüber sitzen; es fehlen ${show.length(f.numbers.lacking)}.`,
      why: `${APART[f.numbers.because] ?? ''}${frame}`,
      do:
        ways.length === 0
          ? 'Keine größere Tasche, kein anderer Magnet und kein anderer Platz wurde gefunden; dort eine andere Befestigung nehmen.'
          : `Was ginge: ${joinWords(ways, 'oder')}.`,
    };
  },
  HOLD_PROPOSAL: (f, show) => {
    const n = f.numbers;
    const count = (value: number | undefined) => show.number(value ?? 0, 0);
    const ways = [
      ...(n.outside === undefined
        ? []
        : [
            `${count(n.points)} Paare ${n.outside} mit ${n.inside}, Sicherheit ${show.number(n.margin ?? 0, 2)}`,
          ]),
      ...(n.discs === undefined
        ? []
        : [
            `${count(n.discPoints)} Paare Scheiben ${n.discs} in Taschen von ${show.length(n.discPocket ?? 0)}`,
          ]),
      ...(n.blocks === undefined
        ? []
        : [
            `${count(n.blockPoints)} Paare Blöcke ${n.blocks} in Taschen von ${show.length(n.blockPocket ?? 0)}`,
          ]),
      ...(n.steel === undefined
        ? []
        : [
            `${n.steelMagnet} an ${count(n.steelPoints)} Punkten auf einem Stahlband ${n.steel} am Rahmen neben dem Glas`,
          ]),
      ...(n.fastener === undefined ? [] : [`${count(n.fastenerPoints)} Stück „${n.fastener}“`]),
      ...(n.toTry === undefined
        ? []
        : [`„${n.toTry}“, wenn ein Versuch je ${show.force(n.toTryPull ?? 0)} ergibt`]),
    ];
    return {
      what: `${opening(f, show)}: Was sie halten würde (Schätzung): ${joinWords(ways, 'oder')}.`,
      why: 'Jedes wurde für diese Blende, dieses Glas und diesen Wind berechnet.',
      do: 'Eines wählen, und vor dem Vertrauen ausprobieren. Je stärker die Magnete, desto härter quetschen sie.',
    };
  },
  NEIGHBOURS_NEAR: (f, show) => ({
    what: `${opening(f, show)}: Die Haltepunkte ${points(f.numbers.points)} liegen ${show.length(f.numbers.apart)} auseinander, näher als das Dreifache des Magneten; die Zugkraft ändert sich um bis zu ${show.percent(f.numbers.change)} (Schätzung).`,
    why: 'Gleiche Pole nebeneinander schwächen einander, ungleiche helfen.',
    do: 'Die Sicherheiten rechnen es ein. Wo es darauf ankommt, weiter auseinander setzen.',
  }),
  POLES_CANNOT_KEY: (f, show) => ({
    what: `${opening(f, show)}: Ihre ${show.number(f.numbers.points, 0)} Haltepunkte lassen sich nicht verschlüsseln; überall zeigt ein Pol nach außen.`,
    why: NO_KEY[f.numbers.because] ?? '',
    do: 'Überall einen Pol nach außen wählen, oder einen Punkt so versetzen, dass die Anordnung nur auf eine Weise passt.',
  }),
  KEYED_WRONG_WAY: (f, show) => ({
    what: `${opening(f, show)}: falsch angesetzt, ${wrongWay({ ...f.numbers, turnedOver: f.numbers.over === 1 }, f.numbers.points, show)}.`,
    why: 'Keine andere Wahl der Pole lässt im schlimmsten falschen Fall weniger ziehen.',
    do: 'Oben an der Blende und neben dem Glas kennzeichnen; falsch angesetzt hält sie weniger, als es scheint.',
  }),
  STACK_FIGHTS: (f, show) => ({
    what: `In der Reihenfolge des Auftrags gestapelt stoßen die Blenden von ${show.opening(f.numbers.below)} und ${show.opening(f.numbers.above)} einander ab, an einem Punkt mit ${show.force(f.numbers.push)} (Schätzung).`,
    why: 'Verschlüsselte Blenden haben beide Pole außen; mit einem Pol außen liegen sie flach.',
    do: 'Einen Bogen Pappe dazwischen legen, oder sie einzeln rollen.',
  }),
} satisfies Partial<FindingWords>;
