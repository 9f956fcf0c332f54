import type { SheetInput } from '../options.ts';
import type { Words } from '../words.ts';
import { cautionText } from '../work/cautionText.ts';
import type { Step } from '../work/step.ts';

/** How the set is fitted, from the cleaning to the keeping: by what holds its panels. */
export function fittingSteps(input: SheetInput, words: Words): readonly Step[] {
  const by = new Set(input.plan.hold.flatMap(({ openings }) => openings.map((one) => one.by)));
  const magnets = by.has('magnets');
  const glass = magnets || by.has('steel') || by.size === 0;
  return [
    ...(glass ? glassSteps(input, words, magnets || by.size === 0, by.has('steel')) : []),
    ...(by.has('fastener') ? fastenerSteps(input, words) : []),
  ];
}

function glassSteps(input: SheetInput, words: Words, magnets: boolean, steel: boolean): readonly Step[] {
  const { install, caution } = words;
  const cautions = [
    cautionText(input, 'MAGNETS_PINCH', caution.magnetsPinch()),
    cautionText(input, 'MAGNETS_IMPLANTS', caution.magnetsImplants()),
  ];
  const keyed = input.plan.hold.some(({ poles }) => poles === 'keyed');
  return [
    { title: install.clean(), lines: [install.cleanHow()], cautions: [caution.solvent()] },
    { title: install.warm(), lines: [install.warmHow()], cautions: [] },
    { title: install.hang(), lines: [install.hangHow()], cautions: [] },
    ...(magnets
      ? [{ title: install.insideFirst(), lines: [install.insideHow(), install.press()], cautions }]
      : []),
    ...(steel
      ? [{ title: install.insideSteel(), lines: [install.insideSteelHow(), install.press()], cautions }]
      : []),
    { title: install.dwell(), lines: [install.dwellHow()], cautions: [] },
    {
      title: install.takeOff(),
      lines: [install.takeOffHow(), ...(keyed ? stackLines(input) : [])],
      cautions: [caution.magnetsSwallow()],
    },
  ];
}

/** Panels that push one another off in the stack. */
const stackLines = ({ plan, options }: SheetInput): readonly string[] =>
  plan.findings
    .filter(({ code }) => code === 'STACK_FIGHTS')
    .map((finding) => options.say(finding, options.language));

function fastenerSteps({ plan, options }: SheetInput, { install }: Words): readonly Step[] {
  const cautions = plan.findings
    .filter(({ code }) => code === 'CUPS_LET_GO' || code === 'FIXINGS_IN_FRAME')
    .map((finding) => options.say(finding, options.language));
  return [
    { title: install.fastenerClean(), lines: [install.fastenerCleanHow()], cautions: [] },
    { title: install.fastenerHang(), lines: [install.fastenerHangHow()], cautions },
    { title: install.fastenerTakeOff(), lines: [install.fastenerTakeOffHow()], cautions: [] },
  ];
}
