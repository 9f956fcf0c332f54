import { type ReactNode, Suspense, useEffect, useState } from 'react';
import { Link, Redirect, useParams } from 'wouter';
import { JobStrip } from '../drawing/JobStrip.tsx';
import { MoneyContext, UnitsContext } from '../fields/useUnits.ts';
import { STAGES } from '../findings/stageOf.ts';
import { useFindings } from '../findings/useFindings.ts';
import { useDrawn } from '../job/whenDrawn.ts';
import { openWork, useCatalogue, useJob, usePlan, useWork, type Work, WorkContext } from '../job/work.ts';
import { useAddOpening } from '../openings/useAddOpening.ts';
import type { Server } from '../server/server.ts';
import { useWords } from '../text/useWords.ts';
import { Conflict } from './Conflict.tsx';
import { JobBar } from './JobBar.tsx';
import { LiveWords } from './LiveWords.tsx';
import { PageBar } from './PageBar.tsx';
import { SaveWords } from './SaveWords.tsx';
import { StageNav } from './StageNav.tsx';
import { fetchLaterStages, isView, VIEWS, type ViewName } from './stageViews.ts';
import { sentenceOf } from './useAsk.ts';
import { useCurrent } from './useCurrent.ts';
import { useUndoKeys } from './useUndoKeys.ts';

/** One job, opened from the server. */
export function JobPage({ id, server }: { readonly id: string; readonly server: Server }) {
  const w = useWords();
  const [work, setWork] = useState<Work | null>(null);
  const [sentence, setSentence] = useState<string | null>(null);
  const [round, setRound] = useState(0);
  // A new round opens the job again.
  useEffect(() => {
    let current = true;
    let opened: Work | null = null;
    setSentence(null);
    openWork(server, id).then(
      (one) => {
        opened = one;
        if (current) setWork(one);
        else one.stop();
      },
      (error) => current && setSentence(sentenceOf(error)),
    );
    return () => {
      current = false;
      void opened?.jobSave.flush().finally(() => opened?.stop());
    };
  }, [id, server, round]);
  if (work)
    return (
      <WorkContext value={work}>
        <Bench />
      </WorkContext>
    );
  return (
    <>
      <PageBar />
      <main id="main" className="page-note">
        <h1>{sentence ?? w.app.loading}</h1>
        {sentence ? (
          <button type="button" onClick={() => setRound((one) => one + 1)}>
            {w.app.again}
          </button>
        ) : null}
      </main>
    </>
  );
}

/** The job laid out: its openings in a row, the stages with their results, and the stage being worked on. */
function Bench() {
  const w = useWords();
  const { id, job } = useWork();
  const { stage } = useParams<{ stage?: string }>();
  const units = useJob((state) => state.document.units);
  const name = useJob((state) => state.document.name);
  const currency = useCatalogue((catalogue) => catalogue.currency);
  useUndoKeys(job);
  useDrawn();
  useEffect(() => {
    const timer = setTimeout(fetchLaterStages, 800);
    return () => clearTimeout(timer);
  }, []);
  useEffect(() => {
    document.title = `${name} · Panewright`;
  }, [name]);
  if (!isView(stage)) return <Redirect to={`/jobs/${id}/openings`} replace />;
  const View = VIEWS[stage];
  return (
    <UnitsContext value={units}>
      <MoneyContext value={currency}>
        {stage === 'window' ? (
          <WindowBar />
        ) : (
          <>
            <JobBar />
            <Strip stage={stage} />
            <StageNav stage={stage} />
          </>
        )}
        <Conflict />
        <main id="main" tabIndex={-1}>
          <Suspense fallback={<p className="working">{w.app.loading}</p>}>
            <PlanFirst stage={stage}>
              <View />
            </PlanFirst>
          </Suspense>
        </main>
        <LiveWords />
      </MoneyContext>
    </UnitsContext>
  );
}

/** Stages drawn from the plan: before the first one there is nothing to say of them, least of all that they are empty. */
const FROM_PLAN: readonly ViewName[] = ['patterns', 'panels', 'hold'];

function PlanFirst({ stage, children }: { readonly stage: ViewName; readonly children: ReactNode }) {
  const w = useWords();
  const waits = usePlan((state) => state.plan === null && state.fault === null);
  return waits && FROM_PLAN.includes(stage) ? <p className="working">{w.stages.working}</p> : children;
}

/** With a phone in the hand only what is needed there: the way back, and where the work is kept. */
function WindowBar() {
  const w = useWords();
  const { id, job } = useWork();
  const { opening } = useCurrent();
  return (
    <header className="window-bar">
      <Link href={`/jobs/${id}/openings${opening ? `/${opening.id}` : ''}`}>{w.window.toDrawing}</Link>
      <span className="save-state">
        <SaveWords document={job} />
      </span>
    </header>
  );
}

function Strip({ stage }: { readonly stage: ViewName }) {
  const { id } = useWork();
  const add = useAddOpening();
  const openings = useJob((state) => state.document.openings);
  const plans = usePlan((state) => state.openings);
  const findings = useFindings();
  const { opening } = useCurrent();
  const here = (STAGES as readonly string[]).slice(1, 5).includes(stage) ? stage : 'openings';
  return (
    <JobStrip
      openings={openings}
      plans={plans}
      findings={findings}
      selected={opening?.id ?? null}
      href={(one) => `/jobs/${id}/${here}/${one}`}
      add={add}
      elevations={`/jobs/${id}/elevations${opening ? `/${opening.id}` : ''}`}
    />
  );
}
