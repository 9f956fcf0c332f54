import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useCurrent } from '../app/useCurrent.ts';
import type { Opening } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { StageFindings } from '../findings/StageFindings.tsx';
import { useJob, useWork } from '../job/work.ts';
import { WALK } from '../openings/readingPlaces.ts';
import { useAddOpening } from '../openings/useAddOpening.ts';
import { showSize } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { OneReading } from './OneReading.tsx';

/** Measuring with a phone in the hand: one reading after the other, round the opening. */
export function WindowStage() {
  const w = useWords();
  const { id } = useWork();
  const { opening } = useCurrent();
  const add = useAddOpening('window');
  if (!opening)
    return (
      <section className="empty empty-first">
        <h1>{w.window.title}</h1>
        <p>{w.strip.empty}</p>
        <button type="button" className="main-button" onClick={add}>
          {w.strip.addFirst}
        </button>
      </section>
    );
  if (opening.survey.method !== 'tape')
    return (
      <section className="empty">
        <h1>{w.openings.title(opening.id, opening.name)}</h1>
        <p>{w.window.otherMethod}</p>
        <Link href={`/jobs/${id}/openings/${opening.id}`}>{w.window.toOpenings}</Link>
      </section>
    );
  return <Round key={opening.id} opening={opening} add={add} />;
}

/** The first reading that is not there yet; where all are there, the first. */
function firstMissing(opening: Opening): number {
  const taken = new Set(opening.survey.method === 'tape' ? opening.survey.readings.map(({ of }) => of) : []);
  return Math.max(
    0,
    WALK.findIndex((of) => !taken.has(of)),
  );
}

function Round({ opening, add }: { readonly opening: Opening; readonly add: () => void }) {
  const w = useWords();
  const [step, setStep] = useState(() => firstMissing(opening));
  const of = WALK[step];
  return (
    <div className="window-stage">
      <h1>{w.openings.title(opening.id, opening.name)}</h1>
      {of ? (
        <OneReading
          key={of}
          opening={opening}
          of={of}
          step={step}
          back={() => setStep((now) => Math.max(0, now - 1))}
          next={() => setStep((now) => now + 1)}
        />
      ) : (
        <Done opening={opening} again={() => setStep(0)} add={add} />
      )}
    </div>
  );
}

interface DoneProps {
  readonly opening: Opening;
  readonly again: () => void;
  readonly add: () => void;
}

/** All round: what came of it, what does not fit, and where to go on. */
function Done({ opening, again, add }: DoneProps) {
  const w = useWords();
  const units = useUnits();
  const [, go] = useLocation();
  const { id } = useWork();
  const { plan } = useCurrent();
  const openings = useJob((state) => state.document.openings);
  const next = openings[openings.findIndex((one) => one.id === opening.id) + 1];
  const shape = plan?.shape;
  return (
    <section className="window-done">
      <h2>{w.window.done}</h2>
      <p role="status">
        {shape
          ? w.window.doneSize(showSize(shape.width.value, shape.height.value, units))
          : w.window.doneNothing}
      </p>
      <StageFindings stage="openings" opening={opening.id} />
      <div className="window-ways">
        {next ? (
          <button type="button" className="main-button" onClick={() => go(`/jobs/${id}/window/${next.id}`)}>
            {w.window.nextOpening(w.openings.title(next.id, next.name))}
          </button>
        ) : (
          <button type="button" className="main-button" onClick={add}>
            {w.window.newOpening}
          </button>
        )}
        <button type="button" onClick={again}>
          {w.window.again}
        </button>
      </div>
    </section>
  );
}
