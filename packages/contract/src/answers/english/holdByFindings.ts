import { joinWords } from '../show.ts';
import type { FindingWords } from '../words.ts';
import { sayPart } from './readings.ts';
import { opening } from './where.ts';
import { wrongWay } from './wrongWay.ts';

const points = (text: string): string => joinWords(text.split(' '));

const APART: Readonly<Record<string, string>> = {
  pocket: 'The pocket leaves the outside magnet too little room.',
  glass: 'The glass left free inside has no room for the inside magnet and its tape.',
  apart: 'The inside magnet reaches no further, and the pocket ends before it.',
};
const NO_KEY: Readonly<Record<string, string>> = {
  tooFew: 'One point alone cannot tell which way round it lies.',
  alike: 'Whatever the poles, the panel would draw in a wrong way too.',
  steel: 'Steel draws either pole.',
  fastener: 'Fasteners have no poles.',
};

/** What holds and where, when it is not the rule’s own. */
export const holdByFindings = {
  FASTENER_STRENGTH_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: nobody has tried yet how much “${f.numbers.fastener}” holds.`,
    why: `Each of ${show.number(f.numbers.count, 0)} would need ${show.force(f.numbers.pull)} straight off and ${show.force(f.numbers.along)} along the surface (estimate).`,
    do: 'Pull a few with a spring balance, and enter the least and the most in the catalogue.',
  }),
  FASTENER_ALLOWANCE: (f, show) => ({
    what: `“${f.numbers.fastener}” asks for ${show.length(f.numbers.beyond)} beyond the traced line; that stands in place of the job’s ${show.length(f.numbers.fit)}.`,
    why: 'A fastener sits on the frame, a magnet on the glass.',
    do: 'To have another allowance, set one for the opening.',
  }),
  HAND_EDGE_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: a hold point is set by hand on ${f.numbers.edge}, where the panel has none such or is shorter.`,
    why: `Its edges are ${joinWords(f.numbers.known.split(' ').map(sayPart))}.`,
    do: 'Take the point out, or set it on an edge the panel has.',
  }),
  HAND_POINT_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: point ${show.number(f.numbers.index, 0)} of ${sayPart(f.where.edge)} is moved or taken out by hand, and the rule sets ${show.number(f.numbers.points, 0)} there.`,
    why: 'The panel or the spacing has changed since.',
    do: 'Take that change out, or make it again.',
  }),
  HAND_POINT_OFF_EDGE: (f, show) => ({
    what: `${opening(f, show)}: point ${show.number(f.numbers.index, 0)} of ${sayPart(f.where.edge)} is moved by ${show.length(f.numbers.by)}, past the end of its edge.`,
    why: 'It stays where the rule sets it.',
    do: 'Move it by less, or set a point on the next edge.',
  }),
  HAND_ELSEWHERE: (f, show) => ({
    what: `${opening(f, show)}: its hold points set by hand are not followed; its pattern follows those of ${show.opening(f.numbers.follows)}.`,
    why: 'One panel serves both openings, so they have one layout.',
    do: 'Keep one of the two, or give this opening a pattern of its own.',
  }),
  HAND_OPENING_UNKNOWN: (f, show) => ({
    what: `${show.number(f.numbers.points, 0)} changes to hold points are kept for ${f.numbers.opening}, which is no opening of this job.`,
    why: '',
    do: 'They are followed again when the opening comes back; else they do no harm.',
  }),
  HAND_GAP_WIDE: (f, show) => ({
    what: `${opening(f, show)}: set by hand, hold points ${points(f.where.point ?? '')} are ${show.length(f.numbers.gap)} apart; the shop lets ${show.length(f.numbers.limit)} pass.`,
    why: 'A long edge lifts and draws harder on its ends.',
    do: 'Add a point between them, or move one.',
  }),
  POINTS_CANNOT_MEET_MARGIN: (f, show) => ({
    what: `${opening(f, show)}: more hold points do not bring the margin to ${show.number(f.numbers.asked, 2)}; with ${show.number(f.numbers.points, 0)} it is ${show.number(f.numbers.best, 2)} (estimate).`,
    why: 'More would lie over one another. The layout is that of the spacing.',
    do: 'Use stronger magnets, or see which would hold.',
  }),
  MAGNETS_CANNOT_MEET: (f, show) => {
    const { pocket, outside, inside, moved, flange } = f.numbers;
    const ways = [
      ...(pocket === undefined ? [] : [`a pocket of ${show.length(pocket)}`]),
      ...(outside === undefined ? [] : [`${outside} outside with ${inside} inside`]),
      ...(moved === undefined ? [] : [`the point moved ${show.length(moved)} along its edge`]),
    ];
    const frame = flange === 0 ? '' : ` The inner frame covers ${show.length(flange)} of the glass.`;
    return {
      what: `${opening(f, show)}: at hold point ${points(f.where.point ?? '')} the two magnets cannot stand opposite one another; ${show.length(f.numbers.lacking)} is lacking.`,
      why: `${APART[f.numbers.because] ?? ''}${frame}`,
      do:
        ways.length === 0
          ? 'No larger pocket, other magnet or other place was found; use another fastener there.'
          : `What would do: ${joinWords(ways, 'or')}.`,
    };
  },
  HOLD_PROPOSAL: (f, show) => {
    const n = f.numbers;
    const count = (value: number | undefined) => show.number(value ?? 0, 0);
    const ways = [
      ...(n.outside === undefined
        ? []
        : [
            `${count(n.points)} pairs of ${n.outside} with ${n.inside}, margin ${show.number(n.margin ?? 0, 2)}`,
          ]),
      ...(n.discs === undefined
        ? []
        : [
            `${count(n.discPoints)} pairs of discs ${n.discs} in pockets of ${show.length(n.discPocket ?? 0)}`,
          ]),
      ...(n.blocks === undefined
        ? []
        : [
            `${count(n.blockPoints)} pairs of blocks ${n.blocks} in pockets of ${show.length(n.blockPocket ?? 0)}`,
          ]),
      ...(n.steel === undefined
        ? []
        : [
            `${n.steelMagnet} at ${count(n.steelPoints)} points on a steel strip ${n.steel} on the frame beside the glass`,
          ]),
      ...(n.fastener === undefined ? [] : [`${count(n.fastenerPoints)} of “${n.fastener}”`]),
      ...(n.toTry === undefined
        ? []
        : [`“${n.toTry}”, if a trial shows ${show.force(n.toTryPull ?? 0)} each`]),
    ];
    return {
      what: `${opening(f, show)}: what would hold it (estimate): ${joinWords(ways, 'or')}.`,
      why: 'Each was worked out for this panel, this glass and this wind.',
      do: 'Choose one, and try it before you trust it. The stronger the magnets, the harder they pinch.',
    };
  },
  NEIGHBOURS_NEAR: (f, show) => ({
    what: `${opening(f, show)}: hold points ${points(f.numbers.points)} are ${show.length(f.numbers.apart)} apart, nearer than three times the magnet; pull changes by up to ${show.percent(f.numbers.change)} (estimate).`,
    why: 'Like poles side by side weaken one another, unlike ones help.',
    do: 'The margins count it. Set them farther apart where it matters.',
  }),
  POLES_CANNOT_KEY: (f, show) => ({
    what: `${opening(f, show)}: its ${show.number(f.numbers.points, 0)} hold points cannot be keyed; one pole is out everywhere.`,
    why: NO_KEY[f.numbers.because] ?? '',
    do: 'Choose one pole out everywhere, or move a point so that the layout is the same in one way only.',
  }),
  KEYED_WRONG_WAY: (f, show) => ({
    what: `${opening(f, show)}: put on wrong, ${wrongWay({ ...f.numbers, turnedOver: f.numbers.over === 1 }, f.numbers.points, show)}.`,
    why: 'No other choice of poles leaves fewer pulling in the worst wrong way.',
    do: 'Mark which way is up on the panel and beside the glass; a wrong way that pulls holds less than it seems.',
  }),
  STACK_FIGHTS: (f, show) => ({
    what: `Stacked in the job’s order, the panels of ${show.opening(f.numbers.below)} and ${show.opening(f.numbers.above)} push one another off, at one point with ${show.force(f.numbers.push)} (estimate).`,
    why: 'Keyed panels have both poles out; one pole out everywhere stacks flat.',
    do: 'Put a sheet of card between them, or roll them singly.',
  }),
} satisfies Partial<FindingWords>;
