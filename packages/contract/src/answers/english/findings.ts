import type { Finding } from '@panewright/design';
import { joinWords, type Show } from '../show.ts';
import type { FindingWords } from '../words.ts';
import { cautions } from './cautions.ts';
import { partsOf, sayCause, sayPart } from './readings.ts';

const opening = (f: Finding, show: Show): string =>
  f.where.opening
    ? `Opening ${show.opening(f.where.opening)}`
    : f.where.pattern
      ? `Pattern ${f.where.pattern}`
      : 'The job';
const pattern = (f: Finding, show: Show): string =>
  f.where.pattern ? `Pattern ${f.where.pattern}` : opening(f, show);
const edge = (f: Finding): string => sayPart(f.where.edge ?? f.numbers.edge);

/** What each refusal of the tape survey says of the readings. */
function impossibleSurvey(f: Finding, show: Show): string {
  const n = f.numbers;
  switch (n.refusal) {
    case 'TAPE_READINGS_INSUFFICIENT':
      return `the readings do not fix the shape: ${joinWords(partsOf(n.wouldHelp), 'or')} would help`;
    case 'TAPE_SIDES_CANNOT_CLOSE':
      return `the ${sayPart(n.longest)} of ${show.length(n.length)} is longer than ${joinWords(partsOf(n.others))} together reach (${show.length(n.reach)})`;
    case 'TAPE_RADII_TOO_LARGE':
      return `the two roundings take ${show.length(n.taken)} of the ${sayPart(n.side)}, which is ${show.length(n.length)} long`;
    case 'TAPE_NOT_CONVEX':
      return `the corner at ${sayPart(n.corner)} would point inward`;
    case 'TAPE_VALUE_NOT_POSITIVE':
      return `the ${sayPart(n.of)} reads ${show.length(n.value)}`;
    case 'TAPE_RADIUS_NOT_POSITIVE':
      return `the radius at ${sayPart(n.corner)} comes out as ${show.length(n.radius)}`;
    default:
      return 'the readings do not settle on one shape';
  }
}

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
};

const surveyFindings = {
  READING_MISSING: (f, show) => ({
    what: `${opening(f, show)} lacks ${joinWords(partsOf(f.numbers.readings))}.`,
    why: 'Four sides, four radii and a diagonal fix the shape; without one it would be a guess.',
    do: 'Take the reading. A sharp corner has the radius 0.',
  }),
  READING_SUSPECT: (f, show) => {
    const { of, entered, corrected, confidence, cause, orOf, orEntered } = f.numbers;
    const slip = sayCause(cause);
    const or =
      orOf === undefined ? '' : ` It may instead be the ${sayPart(orOf)}, read as ${show.text(orEntered)}.`;
    return {
      what: `${opening(f, show)}: the ${sayPart(of)}, read as ${show.text(entered)}, does not fit the others; ${show.length(corrected)} would.${or}`,
      why: `${slip === '' ? 'No common slip explains it' : `Perhaps ${slip}`} (confidence ${show.percent(confidence)}).`,
      do: `Measure the ${sayPart(of)} again before cutting.`,
    };
  },
  READINGS_DISAGREE: (f, show) => ({
    what: `${opening(f, show)}: the readings miss closing by ${show.fine(f.numbers.misclosure)}, more than their stated spread explains.`,
    why: 'No single reading stands out as the wrong one.',
    do: 'Measure both diagonals and the longest sides again.',
  }),
  SURVEY_IMPOSSIBLE: (f, show) => ({
    what: `${opening(f, show)}: no such shape exists: ${impossibleSurvey(f, show)}.`,
    why: 'At least one reading is wrong, or is of another part of the opening.',
    do: 'Check the entries against the notes, then measure again.',
  }),
  NO_CHECK_READING: (f, show) => ({
    what: `${opening(f, show)}: nothing checks the readings.`,
    why: 'With just as many readings as the shape needs, a misread one cannot be seen.',
    do: 'Add the other diagonal, or a width at mid height.',
  }),
  OUT_OF_SQUARE: (f, show) => ({
    what: `${opening(f, show)} is out of square: ${show.fine(f.numbers.offset)} at ${sayPart(f.numbers.corner)} (${show.number(f.numbers.degrees, 2)}°).`,
    why: 'The panel follows the opening as it was measured.',
    do: 'Mark top and outside on the panel: it goes on one way only.',
  }),
} satisfies Partial<FindingWords>;

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
    why: '',
    do: 'Leave it its own pattern, or measure again if they ought to be alike.',
  }),
  TURNED_OVER_FACES_DIFFER: (f, show) => ({
    what: `${pattern(f, show)} is needed both ways up, and its cloth has two different faces.`,
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
    what: `${opening(f, show)}: an allowance is set for “${edge(f)}”, and no edge is called so.`,
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

const holdFindings = {
  HOLD_POINTS_OVERLAP: (f, show) => ({
    what: `${pattern(f, show)}: hold points ${show.text(f.numbers.first ?? f.where.point)} and ${show.text(f.numbers.second)} overlap.`,
    why: 'Two pockets cannot be sewn in one place.',
    do: 'Use a smaller pocket, or a wider spacing.',
  }),
  HOLD_POINT_ON_OBSTRUCTION: (f, show) => ({
    what: `${opening(f, show)}: hold point ${show.text(f.where.point ?? f.numbers.point)} sits on ${show.text(f.numbers.name ?? f.numbers.obstruction)}.`,
    why: 'A magnet there would not lie flat on the glass.',
    do: 'Move the point along its edge, or leave it out and check the spacing.',
  }),
  MAGNET_DOES_NOT_FIT_POCKET: (f, show) => ({
    what: `${pattern(f, show)}: the wrapped magnet needs ${show.length(f.numbers.needs)}; the pocket leaves ${show.length(f.numbers.leaves)} at hold point ${show.text(f.where.point ?? f.numbers.point)}.`,
    why: 'Seams and binding take part of the patch.',
    do: 'Use a larger pocket or a smaller magnet.',
  }),
  PULL_TOO_WEAK: (f, show) => ({
    what: `${opening(f, show)}: the magnets hold ${show.number(f.numbers.margin, 2)} times what the stated weather asks; ${show.number(f.numbers.asked, 2)} times is wanted (estimate).`,
    why: `It would let go at a wind of about ${show.speed(f.numbers.letsGoAt)}.`,
    do: 'Use stronger magnets or more of them, and try it before you trust it.',
  }),
  GAP_TOO_WIDE_FOR_MODEL: (f, show) => ({
    what: `${opening(f, show)}: the gap of ${show.fine(f.numbers.gap)} between the magnets is wider than their pull can be vouched for.`,
    why: 'So far apart hardly any pull is left.',
    do: 'Use larger magnets, a thinner stack, or another fastener.',
  }),
  MAGNETS_PUSH_OFF_CENTRE: (f, show) => ({
    what: `${opening(f, show)}: this pair of magnets pushes itself off centre.`,
    why: 'When one magnet is much smaller than the other it is drawn toward the other’s rim.',
    do: 'Pair magnets of the same size.',
  }),
  HEAT_WEAKENS_MAGNETS: (f, show) => ({
    what: `${opening(f, show)}: at ${show.number(f.numbers.hottest, 0)} °C the magnets may lose strength for good; they bear about ${show.number(f.numbers.limit, 0)} °C (estimate).`,
    why: 'Thin magnets lose strength below the limit on their label.',
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
    what: `${show.text(f.numbers.name ?? f.numbers.material ?? f.where.item)}: a strip of ${show.length(f.numbers.length)} is longer than what is sold in one piece (${show.length(f.numbers.stock)}).`,
    why: '',
    do: 'Buy a longer roll, or join two lengths mid-edge.',
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
  ...cuttingFindings,
  ...cautions,
};
