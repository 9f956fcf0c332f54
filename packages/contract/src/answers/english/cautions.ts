import type { FindingWords } from '../words.ts';
import { opening } from './where.ts';

/** What can hurt someone. Each defers to local rules and to those who are licensed. */
export const cautions = {
  EXIT_OPENING: (f, show) => ({
    what: `${opening(f, show)} is an emergency exit.`,
    why: 'A panel on it must come off at once, from inside and in the dark, without a tool.',
    do: 'Put no inside magnets or fasteners that lock it, leave the exit’s marks and handle in sight, and follow local codes.',
  }),
  REMOVE_BEFORE_DRIVING: (f, show) => ({
    what: f.where.opening
      ? `${opening(f, show)}: the driver sees through it. Take the panel off before the vehicle is driven.`
      : 'Take every panel off before the vehicle or vessel moves.',
    why: 'A panel blocks the view, and no magnet figure here holds on the move.',
    do: 'Sew a label that says so into each panel.',
  }),
  MAGNETS_PINCH: (f, show) => ({
    what: `Let go, two of these magnets meet with about ${show.force(f.numbers.touching)} (estimate).`,
    why: 'They pinch skin, and can break and throw splinters.',
    do: 'Keep them apart until they are wrapped, slide them apart sideways, and wear eye protection.',
  }),
  MAGNETS_SWALLOWED: () => ({
    what: 'Keep magnets away from children.',
    why: 'Two swallowed magnets can pinch the bowel and kill.',
    do: 'Wrap and sew in every magnet; if one was swallowed, get a doctor at once.',
  }),
  MAGNETS_IMPLANTS: (f, show) => ({
    what: `Keep the magnets away from pacemakers and other implants: all of this job’s together at least ${show.length(f.numbers.distance)} (estimate).`,
    why: 'A strong magnet close by can change how they work.',
    do: 'Tell the customer, and follow what the implant’s doctor says of distance.',
  }),
  MAGNETS_COMPASS: (f, show) => ({
    what: `This job’s magnets together can turn a steering compass nearer than ${show.length(f.numbers.steering)}, and a standard compass nearer than ${show.length(f.numbers.standard)} (estimate).`,
    why: 'A boat is steered by it.',
    do: 'Stow panels and inside magnets farther off, and swing the compass with them in place.',
  }),
  HOT_KNIFE_FUMES: () => ({
    what: 'A hot knife on coated cloth gives off fumes, and it burns.',
    why: 'Heated vinyl coatings can give off hydrogen chloride, which harms lungs and eyes.',
    do: 'Cut under an extractor or outdoors, keep away what can burn, and follow the cloth’s data sheet.',
  }),
  SOLVENT_FIRE: () => ({
    what: 'Cleaning solvents burn, and their vapour does too.',
    why: '',
    do: 'Air the place, keep flames and pilot lights out, wear gloves, and follow the label.',
  }),
  TAPE_DWELL: () => ({
    what: 'The tape needs clean, dry, warm glass and time.',
    why: 'Acrylic foam tape reaches its strength over about three days (common practice, no source).',
    do: 'Clean, press each magnet down well, and hang no panel before the tape maker’s stated time.',
  }),
  // sources.md#mclaren-2005
  STEEL_EDGES: () => ({
    what: 'Cut steel strip has sharp edges, and rusts where the zinc is cut.',
    why: '',
    do: 'File the ends, paint them, wear gloves, and let nothing bare lie against the glass.',
  }),
  CUPS_LET_GO: () => ({
    what: 'Suction cups let go by themselves, with time, sun, cold and height.',
    why: 'Air creeps in under the rim.',
    do: 'Press them on anew each day, and hang nothing from them that may not fall.',
  }),
  FIXINGS_IN_FRAME: (f, show) => ({
    what: `${show.number(f.numbers.fixings, 0)} screws, rivets or posts go into the frame.`,
    why: 'A frame may hide wires, pipes, airbags or the edge of the glass, and a hole lets water in.',
    do: 'Look behind before you drill, set a stop on the drill, wear eye protection, seal every hole, and follow the vehicle’s or builder’s rules.',
  }),
  HEAT_INSIDE: () => ({
    what: 'A parked vehicle or a closed room gets dangerously hot, with or without a panel.',
    why: 'In the sun a car warms by about 3 °F (2 °C) every five minutes, and open windows hardly slow it. A dark panel heats the glass too: laminated, coated or double panes can crack.',
    do: 'Never leave a child, a frail person or an animal inside. Ask the glass maker where the panes are not plain single glass.',
  }),
  HOLD_IS_ESTIMATE: () => ({
    what: 'Pull and wind figures are estimates, not measurements.',
    why: 'Real magnets, tape, glass and gusts differ from the figures they are worked out from.',
    do: 'Try one panel on the parked vehicle in the wind before you trust the rest.',
  }),
} satisfies Partial<FindingWords>;
