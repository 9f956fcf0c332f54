import { useMemo, useState } from 'react';
import { AskAgain } from '../app/AskAgain.tsx';
import { newId } from '../app/newId.ts';
import { sentenceOf } from '../app/useAsk.ts';
import {
  keptPatternOf,
  knownSegments,
  type Opening,
  type OpeningPlan,
  type OpeningShape,
  type PatternPlan,
  surveyOfKept,
} from '../contract.ts';
import { useCatalogue, useWork } from '../job/work.ts';
import { openingIn } from '../openings/readingEdits.ts';
import { showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { DescribeForm } from './DescribeForm.tsx';
import { KeptCard } from './KeptCard.tsx';
import { type FoundPattern, useKept } from './useKept.ts';

interface Props {
  readonly opening: Opening;
  readonly plan: OpeningPlan & { readonly shape: OpeningShape };
  readonly pattern: PatternPlan;
}

/** Whether an opening's shape was made before, in this job or another; and its pattern kept for the next time. */
export function MadeBefore({ opening, plan, pattern }: Props) {
  const w = useWords();
  const { id, server } = useWork();
  const tolerance = useCatalogue((catalogue) => catalogue.habits.patternTolerance);
  const [told, setTold] = useState('');
  const segments = useMemo(() => knownSegments(opening, plan.shape), [opening, plan.shape]);
  const { answer, asking, sentence, again } = useKept(server, {
    like: { segments, within: Math.min(100, 2 * tolerance) },
  });
  const own = answer?.patterns.find(
    ({ pattern: kept, fit }) =>
      kept.from.job === id &&
      fit!.deviation < SAME &&
      kept.from.openings.some((one) => one.id === opening.id),
  );
  return (
    <section className="kept-here">
      <h2>{w.kept.before(opening.id)}</h2>
      <p role="status" className="about">
        {told ? `${told} ` : ''}
        {asking && !answer ? w.kept.searching : ''}
        {answer?.patterns.length === 0 ? w.kept.beforeNone : ''}
      </p>
      <AskAgain sentence={sentence} again={again} />
      <ul className="kept-list">
        {answer?.patterns.map((found) => (
          <KeptCard key={found.pattern.id} found={found} heading="h3">
            <Fit found={found} opening={opening} tolerance={tolerance} tell={setTold} />
          </KeptCard>
        ))}
      </ul>
      {answer && answer.more > 0 ? <p className="about">{w.kept.beforeMore(answer.more)}</p> : null}
      {own ? <p>{w.kept.keptAlready(own.pattern.name)}</p> : null}
      <Keep
        pattern={pattern}
        kept={(name) => {
          setTold(w.kept.keptNow(name));
          again();
        }}
      />
    </section>
  );
}

/** Shapes that differ by less than this are one, mm: what a number in a file is rounded to. */
const SAME = 0.005;

function Fit({
  found: { pattern, fit },
  opening,
  tolerance,
  tell,
}: {
  readonly found: FoundPattern;
  readonly opening: Opening;
  readonly tolerance: number;
  readonly tell: (what: string) => void;
}) {
  const w = useWords();
  const { job } = useWork();
  if (!fit) return null;
  const { deviation, sigma, turnedOver, place } = fit;
  const { survey } = opening;
  const inUse = survey.method === 'outline' && survey.from.pattern?.id === pattern.id;
  const use = () => {
    const problem = job.edit(`kept.${opening.id}.${pattern.id}`, (draft) => {
      openingIn(draft, opening.id).survey = surveyOfKept(pattern, place);
    });
    job.settle();
    tell(problem ? problem.sentence : w.kept.nowUsed(pattern.name, opening.id));
  };
  return (
    <>
      <p>
        {deviation <= tolerance
          ? w.kept.fits(showSmall(deviation), showSmall(sigma))
          : w.kept.misses(showSmall(deviation), showSmall(deviation - tolerance))}{' '}
        {turnedOver ? w.kept.turnedOver : w.kept.upright}
      </p>
      {inUse ? (
        <p className="about">
          {w.kept.inUse(opening.id)} {w.kept.check}
        </p>
      ) : (
        <button type="button" onClick={use} aria-label={`${w.kept.use(opening.id)}: ${pattern.name}`}>
          {w.kept.use(opening.id)}
        </button>
      )}
    </>
  );
}

function Keep({ pattern, kept }: { readonly pattern: PatternPlan; readonly kept: (name: string) => void }) {
  const w = useWords();
  const { job, jobSave, planner, server } = useWork();
  const document = job.store.getState().document;
  const first = document.openings.find(({ id }) => id === pattern.members[0]!.opening);
  const suggested = [document.site.name || document.name, first?.name]
    .filter(Boolean)
    .join(', ')
    .slice(0, 100);
  const keep = async (name: string, notes: string): Promise<string | null> => {
    try {
      // So that the revision it is said to come from holds what is kept.
      await jobSave.flush();
      const { document: current, revision } = job.store.getState();
      const keeping = { id: newId('kept'), name, notes, revision: revision > 0 ? revision : null };
      const date = new Date().toISOString().slice(0, 10);
      const { openings } = planner.store.getState();
      await server.keepPattern(keptPatternOf(current, openings, pattern, { ...keeping, date }));
      kept(name);
      return null;
    } catch (error) {
      return sentenceOf(error);
    }
  };
  return (
    <details>
      <summary>{w.kept.keep}</summary>
      <p className="about">{w.kept.keepAbout}</p>
      <DescribeForm key={pattern.pattern} name={suggested} notes="" action={w.kept.keep} put={keep} />
    </details>
  );
}
