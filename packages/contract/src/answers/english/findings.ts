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
  finished: 'the finished edge',
  cut: 'the cut line',
  band: 'the inner edge of the binding or hem',
  stitch: 'the stitch line',
};
const PANEL_REASONS: Readonly<Record<string, string>> = {
  OFFSET_VANISHES: 'nothing is left of it',
  OFFSET_SPLITS: 'it falls into several parts',
};

const KINDS: Readonly<Record<string, string>> = {
  fabric: 'fabric',
  binding: 'binding',
  magnet: 'magnet',
  wrapFilm: 'wrap film',
  tape: 'tape',
  thread: 'thread',
  steelStrip: 'steel strip',
  fastener: 'fastener',
};

const patternFindings = {
  SHARED_PATTERN: (f, show) => {
    const turned =
      String(f.numbers.turnedOver ?? '') === ''
        ? ''
        : ` and, turned over, ${show.openings(f.numbers.turnedOver)}`;
    return {
      what: `Pattern ${f.where.pattern ?? ''} serves ${show.openings(f.numbers.asIs)}${turned}.`,
      why: `The shapes agree within ${show.fine(f.numbers.deviation)}.`,
      do: 'Draw the pattern once; label each panel with its opening.',
    };
  },
  NEAR_MISS: (f, show) => ({
    what: `${opening(f, show)} nearly fits pattern ${f.where.pattern ?? ''}: it is ${show.fine(f.numbers.deviation)} off, ${show.fine(f.numbers.over)} more than shapes that share a pattern may be.`,
    why:
      Number(f.numbers.over) < Number(f.numbers.spread)
        ? `The two are known to ${show.fine(f.numbers.spread)} together, so they may be alike all the same.`
        : '',
    do: 'Leave it its own pattern, or measure again if they ought to be alike.',
  }),
  SHARED_WITHIN_SPREAD: (f, show) => ({
    what: `${pattern(f, show)}: ${show.openings(f.numbers.members)} and the pattern are known only to ${show.fine(f.numbers.spread)} together.`,
    why: `Shapes that share a pattern may differ by ${show.fine(f.numbers.tolerance)}; these readings cannot tell that surely.`,
    do: 'Take another reading of each, or lay the printed pattern on the window before cutting.',
  }),
  PATTERN_MEAN_IMPOSSIBLE: (f, show) => ({
    what: `${pattern(f, show)}: ${show.openings(f.numbers.members)} have no mean; the first of them is the pattern.`,
    why: 'A mean is taken corner by corner, and theirs are not made of the same lines and arcs.',
    do: 'Choose one of them as the pattern.',
  }),
  TURNED_OVER_FACES_DIFFER: (f, show) => ({
    what: `${pattern(f, show)} serves ${show.openings(f.numbers.turnedOver)} turned over, and the faces of ${f.numbers.fabric} differ.`,
    why: 'A piece of such cloth cannot be turned over.',
    do: 'Cut the turned-over panels as pieces of their own, as the lay does.',
  }),
} satisfies Partial<FindingWords>;

const panelFindings = {
  ITEM_NOT_IN_CATALOGUE: (f, show) => ({
    what: `${opening(f, show)}: the catalogue has no ${KINDS[String(f.numbers.kind)] ?? 'entry'} “${show.text(f.numbers.id)}”.`,
    why: 'Without it nothing can be worked out for this opening.',
    do: 'Choose another, or add it to the catalogue.',
  }),
  PANEL_IMPOSSIBLE: (f, show) => ({
    what: `${pattern(f, show)}: the panel cannot be made: ${PANEL_LINES[String(f.numbers.line)] ?? 'one of its lines'} does not work out, ${PANEL_REASONS[String(f.numbers.refusal)] ?? 'it crosses itself'}.`,
    why: 'The fit allowance, hem or binding is too wide for the shape.',
    do: 'Choose a narrower finish or another fit allowance.',
  }),
  CORNER_TOO_TIGHT_FOR_BINDING: (f, show) => ({
    what: `${pattern(f, show)}: at the ${edge(f)} the finished edge turns with a radius of ${show.fine(f.numbers.radius)}; ${show.text(f.numbers.binding)} goes round ${show.fine(f.numbers.least)} or more.`,
    why: 'Round a tighter corner a straight-cut binding puckers.',
    do: 'Round the panel’s corner more, mitre the binding there, or choose one that bends tighter.',
  }),
  EDGE_NAME_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: an allowance is set for “${f.numbers.edge}”, and no edge is called so.`,
    why: 'The allowance for all edges was used instead.',
    do: `Name one of ${joinWords(partsOf(f.numbers.known))}.`,
  }),
  FABRIC_NOT_FOR_HEAT: (f, show) => ({
    what: `${pattern(f, show)}: ${show.text(f.numbers.fabric)} may not be cut hot.`,
    why: 'Its edge does not seal, and the heated coating may give off harmful fumes.',
    do: 'Bind or hem it, or choose a cloth marked for heat.',
  }),
  HEM_NEEDS_NOTCHED_CORNERS: (f, show) => ({
    what: `${pattern(f, show)}: the hem must be notched at ${show.number(f.numbers.corners, 0)} corners.`,
    why: 'Folded round an outward corner there is more cloth than room.',
    do: 'Notch the allowance up to the finished edge before folding.',
  }),
} satisfies Partial<FindingWords>;

const PULL_REASONS: Readonly<Record<string, string>> = {
  GAP_NOT_POSITIVE: 'Nothing lies between the magnets.',
  GAP_TOO_SMALL: 'The magnets all but touch.',
};

const holdFindings = {
  HOLD_POINTS_OVERLAP: (f, show) => ({
    what: `${pattern(f, show)}: hold points ${joinWords((f.where.point ?? '').split(' '))} are ${show.length(f.numbers.apart)} apart, and each pocket is ${show.length(f.numbers.pocket)} wide.`,
    why: 'Two pockets cannot be sewn in one place.',
    do: 'Use a smaller pocket, or a wider spacing.',
  }),
  HOLD_POINT_ON_OBSTRUCTION: (f, show) => ({
    what: `${opening(f, show)}: hold point ${f.where.point ?? ''} is ${show.length(f.numbers.gap)} from ${f.numbers.obstruction}; its magnet reaches ${show.length(f.numbers.reach)}.`,
    why: 'A magnet there would not lie flat on the glass, or would be in the way.',
    do: 'Choose another spacing or a smaller magnet, or move what is in the way.',
  }),
  MAGNET_DOES_NOT_FIT_POCKET: (f, show) =>
    f.numbers.need > 0
      ? {
          what: `${pattern(f, show)}: at hold point ${f.where.point ?? ''} the wrapped magnet needs ${show.length(f.numbers.need)}; a pocket of ${show.length(f.numbers.pocket)} leaves ${show.length(f.numbers.room)} there.`,
          why: 'Seams, binding and the corner take part of the patch.',
          do: 'Use a larger pocket or a smaller magnet.',
        }
      : {
          what: `${pattern(f, show)}: at hold point ${f.where.point ?? ''} a pocket of ${show.length(f.numbers.pocket)} leaves no room at all.`,
          why: 'The panel is too small there for the patch and its seams.',
          do: 'Use a larger panel, a narrower finish or another fastener.',
        },
  PULL_TOO_WEAK: (f, show) => ({
    what: `${opening(f, show)}: ${show.number(f.numbers.count, 0)} hold points of at least ${show.force(f.numbers.pull)} each hold ${show.number(f.numbers.margin, 2)} times what a wind of ${show.speed(f.numbers.wind)} asks; ${show.number(f.numbers.asked, 2)} times is wanted (estimate).`,
    why:
      f.numbers.letsGoAt === 0
        ? 'It would slide down under its own weight, with no wind at all.'
        : `${f.numbers.mode === 'slip' ? 'It would slide down first' : 'It would be drawn off first'}, at a wind of about ${show.speed(f.numbers.letsGoAt)}.`,
    do: 'Use stronger magnets or more hold points, and try it before you trust it.',
  }),
  CORNER_MAY_CREEP: (f, show) => ({
    what: `Opening ${show.opening(f.numbers.opening)}, the weakest here: hold point ${f.numbers.point} may begin to give at a mean wind of ${show.speed(f.numbers.low)} to ${show.speed(f.numbers.high)}, below the ${show.speed(f.numbers.wind)} asked for (estimate).`,
    why: `The panel as a whole stays on up to about ${show.speed(f.numbers.whole)}; the edge gives first. It pulls its ends inward, harder the tauter the cloth: this is for ${show.number(f.numbers.slackLow, 1)} to ${show.number(f.numbers.slackHigh, 1)} % of slack, and the other panels are alike.`,
    do: 'Measure the slack and enter it with the habits; sew the mesh in without strain, set hold points closer, and try one panel in the wind before you trust the set.',
  }),
  PULL_REFUSED: (f, show) => ({
    what: `${opening(f, show)}: the pull across a gap of ${show.fine(f.numbers.gap)} cannot be worked out.`,
    why:
      PULL_REASONS[f.numbers.refusal] ??
      'The gap or the magnets are outside of what the formula is good for.',
    do: 'Look at the glass layers and the magnets; across a gap so wide use larger magnets or another fastener.',
  }),
  GRADE_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: the grade “${f.numbers.grade}” of ${f.numbers.magnet} is not known.`,
    why: 'Strength and heat limit of a magnet follow from its grade.',
    do: 'Enter the grade as the seller prints it, such as N42 or N42SH.',
  }),
  MAGNETS_PUSH_OFF_CENTRE: (f, show) => ({
    what: `${opening(f, show)}: ${f.numbers.outside} and ${f.numbers.inside} push each other off centre.`,
    why: 'When one magnet is much smaller than the other it is drawn toward the other’s rim.',
    do: 'Pair magnets of the same size.',
  }),
  HEAT_WEAKENS_MAGNETS: (f, show) => ({
    what: `At ${show.number(f.numbers.hottest, 0)} °C ${f.numbers.magnet} may lose strength for good: it bears about ${show.number(f.numbers.limit, 0)} °C (estimate); its label’s ${show.number(f.numbers.label, 0)} °C is for a longer magnet.`,
    why: 'A thin magnet loses strength below the limit of its grade.',
    do: 'Choose a grade for more heat, or a thicker magnet.',
  }),
  CURVED_GLASS: (f, show) => ({
    what: `${opening(f, show)}: the glass is curved, and the pull is worked out for flat glass.`,
    why: 'On a curve the magnets do not lie flat and the gap is wider.',
    do: 'Try one pair of magnets on the glass first.',
  }),
} satisfies Partial<FindingWords>;

const cuttingFindings = {
  PIECE_WIDER_THAN_ROLL: (f, show) => ({
    what: `Piece ${show.text(f.numbers.piece)} needs ${show.length(f.numbers.leastWidth)} across the roll; ${show.text(f.numbers.fabric)} leaves ${show.length(f.numbers.usableWidth)}.`,
    why: 'The widest roll is narrower than the piece in every way it may be turned.',
    do: 'Choose a cloth sold wider, let the grain run either way, or divide the panel.',
  }),
  STRIP_LONGER_THAN_ROLL: (f, show) => ({
    what: `${show.text(f.numbers.binding)}: a strip of ${show.length(f.numbers.length)} is longer than what is sold in one piece (${show.length(f.numbers.stock)}).`,
    why: '',
    do: 'Buy a longer roll, or join two lengths mid-edge.',
  }),
  LAY_PLACES_GIVEN_UP: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: not every piece could stay where it was put by hand: ${joinWords(f.numbers.pieces.split(' '))}.`,
    why: 'The job has changed since: a piece is larger, may no longer be turned that way, or is not cut any more.',
    do: 'They were laid anew about the others. Look at the lay, and move them again where that helps.',
  }),
  OFFCUTS_USED: (f, show) => ({
    what: `Offcuts of the stock take ${f.numbers.pieces} of the pieces: ${show.text(f.numbers.offcuts)}.`,
    why: `Without them ${show.money(f.numbers.saved)} more of cloth would be bought.`,
    do: 'Measure each offcut and look it over for faults before cutting.',
  }),
  KEPT_TOGETHER_COSTS: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: keeping pieces together costs ${show.money(f.numbers.price)}: ${f.numbers.length <= 0 ? 'cloth of a dearer roll' : `${show.length(f.numbers.length)} more cloth`} is bought.`,
    why: 'Piece by piece, offcuts of the stock would take more.',
    do: 'Choose a smaller group, or let pieces come from wherever they save, under the rules for cutting.',
  }),
  KEPT_TOGETHER_CLOTHS: (f, show) => ({
    what: `The panels of “${show.text(f.numbers.place)}” (${show.openings(f.numbers.openings)}) do not all come from one piece of cloth.`,
    why: `They are of several cloths: ${show.text(f.numbers.fabrics)}. Those of each cloth are kept together.`,
    do: 'Give them one cloth where they are to match.',
  }),
  KEPT_TOGETHER_CUT: (f, show) => ({
    what: `The offcut “${show.text(f.numbers.offcut)}” is marked as cut for this job, but no longer has a lay.`,
    why: `${f.numbers.openings ? `${show.openings(f.numbers.openings)}: nothing` : 'Nothing'} that is kept together fits whole on it beside the other lays.`,
    do: 'If it is cut already, keep smaller groups together or none; if it is not, mark it as not cut yet.',
  }),
  SAME_WAY_COSTS: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: laying all pieces one way costs ${show.money(f.numbers.price)}: ${f.numbers.length <= 0 ? 'cloth of a dearer roll' : `${show.length(f.numbers.length)} more cloth`} is bought.`,
    why: 'Turned each as it may lie, the pieces take a shorter lay or a cheaper roll.',
    do: 'Let each piece lie as its grain allows, where the difference would not be seen.',
  }),
  SAME_WAY_GRAINS: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: not all pieces lie one way.`,
    why: `The length of the roll is chosen to run up ${show.openings(f.numbers.up)}, and across ${show.openings(f.numbers.across)}. Each keeps what was chosen.`,
    do: 'Choose the same for all of them, or “either way”.',
  }),
  SAME_WAY_TOO_WIDE: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: not all pieces lie one way; no roll takes ${show.openings(f.numbers.openings)} that way.`,
    why: 'Up or across, some piece is wider than the widest roll. Each lies as its grain allows.',
    do: 'Enter a wider roll of this cloth in the catalogue, or lift the rule.',
  }),
  LAY_ROLL_NOT_SOLD: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: the lay made by hand is for a roll ${show.length(f.numbers.width)} wide, and none is sold.`,
    why: 'The catalogue’s widths have changed.',
    do: 'The program’s own lay is used. Lay by hand anew, or enter the width again in the catalogue.',
  }),
  LAY_REFUSED: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: the pieces cannot be laid (${show.text(f.numbers.refusal)}).`,
    why: 'A piece has a shape that cannot be cut.',
    do: 'Look at the panels named above: one has an edge that crosses itself or no area.',
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
