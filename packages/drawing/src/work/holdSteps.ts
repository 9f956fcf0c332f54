import type { HoldPlan, MarkingStep } from '@panewright/design';
import { stripPiece, tapePieces, wrapSize } from '@panewright/design';
import { fineLengthText, lengthText } from '../figures.ts';
import type { Words } from '../words.ts';
import { shortCaution } from './notices.ts';
import type { PanelWork } from './panelSteps.ts';
import type { Step } from './step.ts';

/** What goes into the panel at its hold points: magnets in pockets, or fasteners through the cloth. */
export function panelHoldStep(work: PanelWork): Step {
  return work.named.fastener === undefined ? magnetStep(work) : fastenerStep(work);
}

/** What goes behind the glass: wrapped magnets or bare steel; nothing for fasteners. */
export function glassStep(work: PanelWork): readonly Step[] {
  if (work.named.fastener !== undefined) return [];
  return [work.named.strip === undefined ? wrapStep(work) : steelStep(work)];
}

function magnetStep(work: PanelWork): Step {
  const { words, named, panel, hold, points, panels, notices } = work;
  const name = named.outside?.name ?? panel.choices.hold.outside;
  const lines =
    hold?.poles === 'keyed'
      ? keyedLines(hold, points * panels, words)
      : [words.work.testMagnet(panel.choices.hold.poleOut), words.work.testEach(points)];
  return {
    title: words.work.magnets(points * panels, name),
    lines: [...lines, words.work.closePockets()],
    cautions: shortCaution(notices, 'magnets', words),
  };
}

/** The marking plan, in the order of work; points that are done alike stand in one line. */
function keyedLines({ openings }: HoldPlan, magnets: number, words: Words): readonly string[] {
  const steps = openings[0]?.marking?.steps ?? [];
  return [
    words.work.keyedMagnets(),
    words.work.dotTest(),
    words.work.stackAndDot(2 * magnets),
    ...at(steps, 'SEW_IN', 'out', words.work.dotOut),
    ...at(steps, 'SEW_IN', 'toGlass', words.work.dotToGlass),
    words.work.checkDraws(),
  ];
}

function at(
  steps: readonly MarkingStep[],
  code: 'SEW_IN' | 'FIX_INSIDE',
  dot: 'out' | 'toRoom' | 'toGlass',
  say: (points: string) => string,
): readonly string[] {
  const points = steps.flatMap((step) => (step.code === code && step.dot === dot ? [step.point] : []));
  return points.length === 0 ? [] : [say(points.join(', '))];
}

function fastenerStep({ input, words, named, panel, points, panels }: PanelWork): Step {
  const { units, language } = input.options;
  const { fastener } = named;
  if (fastener === undefined) throw new Error('no fastener is named');
  const along = fastener.kind === 'hookAndLoop' && fastener.laid === 'run';
  return {
    title: words.work.fasteners(points * panels, fastener.name),
    lines: [
      along
        ? words.work.fastenerRun(lengthText(panel.edging.run.value, units))
        : words.work.fastenerHow(fineLengthText(fastener.inset, units, language)),
    ],
    cautions: input.plan.findings
      .filter(({ code }) => code === 'CUPS_LET_GO' || code === 'FIXINGS_IN_FRAME')
      .map((finding) => input.options.say(finding, language)),
  };
}

function wrapStep({ input, words, named, panel, hold, points, panels, notices }: PanelWork): Step {
  const { units, language } = input.options;
  const { inside, wrapFilm, tape } = named;
  const lines = [];
  if (inside !== undefined && wrapFilm !== undefined) {
    const wrap = wrapSize(inside, wrapFilm);
    lines.push(
      words.work.wrap(
        points * panels,
        wrapFilm.name,
        fineLengthText(wrap.stripWidth, units, language),
        fineLengthText(wrap.cutLength, units, language),
      ),
    );
  }
  if (inside !== undefined && tape !== undefined) {
    const pieces = tapePieces(inside, tape);
    lines.push(words.work.tape(pieces.count, tape.name, fineLengthText(pieces.length, units, language)));
  }
  const steps = hold?.openings[0]?.marking?.steps ?? [];
  const poles =
    hold?.poles === 'keyed'
      ? [
          ...at(steps, 'FIX_INSIDE', 'toRoom', words.work.dotToRoom),
          ...at(steps, 'FIX_INSIDE', 'toGlass', words.work.dotInsideToGlass),
        ]
      : [words.work.glassPole(panel.choices.hold.poleOut)];
  return {
    title: words.work.glassMagnets(points * panels, inside?.name ?? panel.choices.hold.inside),
    lines: [...lines, ...poles],
    cautions: shortCaution(notices, 'magnets', words),
  };
}

function steelStep({ input, words, named, points, panels }: PanelWork): Step {
  const { units, language } = input.options;
  const { strip, outside, tape } = named;
  if (strip === undefined) throw new Error('no steel strip is named');
  const lines = [];
  if (outside !== undefined) {
    const long = stripPiece(outside);
    lines.push(words.work.steelCut(fineLengthText(long, units, language)));
    if (tape !== undefined) {
      const shape = { kind: 'block' as const, width: long, height: strip.width, thickness: strip.thickness };
      const pieces = tapePieces({ shape }, tape);
      lines.push(words.work.tape(pieces.count, tape.name, fineLengthText(pieces.length, units, language)));
    }
  }
  return {
    title: words.work.steelPieces(points * panels, strip.name),
    lines,
    cautions: input.plan.findings
      .filter(({ code }) => code === 'STEEL_EDGES')
      .map((finding) => input.options.say(finding, language)),
  };
}
