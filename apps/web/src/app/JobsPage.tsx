import { type FormEvent, useEffect, useId, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { emptyJob, type Job, type UnitName } from '../contract.ts';
import { NameField } from '../fields/NameField.tsx';
import { FindInJobs } from '../find/FindInJobs.tsx';
import { addJob, fetchCopies, type ListedJob, listJobs } from '../offline/keptJobs.ts';
import type { Server } from '../server/server.ts';
import { showWhen } from '../text/showWhen.ts';
import { useWords } from '../text/useWords.ts';
import { AskAgain } from './AskAgain.tsx';
import { newId } from './newId.ts';
import { PageBar } from './PageBar.tsx';
import { sentenceOf, useAsk } from './useAsk.ts';

/** The list of jobs, a new one, and the demo. */
export function JobsPage({ server }: { readonly server: Server }) {
  const w = useWords();
  const [, go] = useLocation();
  const [jobs, again] = useAsk(() => listJobs(server));
  const [sentence, setSentence] = useState<string | null>(null);
  const [copied, setCopied] = useState(0);
  const add = async (job: Job) => {
    try {
      await addJob(server, job);
      go(`/jobs/${job.id}/${job.openings.length > 0 ? 'openings' : 'job'}`);
    } catch (error) {
      setSentence(sentenceOf(error));
    }
  };
  const openDemo = async () => {
    try {
      const demo = await server.demoJob();
      await add({ ...demo, id: newId('demo') });
    } catch (error) {
      setSentence(sentenceOf(error));
    }
  };
  // A job opened here once, or merely listed, can be opened again where there is no network.
  useEffect(() => {
    if (jobs.kind !== 'there' || !jobs.value.reached) return;
    const fetchAll = () =>
      fetchCopies(server, jobs.value.jobs).then(
        () => setCopied((one) => one + 1),
        () => {},
      );
    const timer = setTimeout(fetchAll, 1500);
    return () => clearTimeout(timer);
  }, [jobs, server]);
  const shown = jobs.kind === 'there' ? jobs.value.jobs.filter((one) => !one.removed) : [];
  return (
    <>
      <PageBar />
      <main id="main" className="jobs-page">
        <h1>{w.jobs.title}</h1>
        {sentence ? (
          <p className="field-sentence" role="alert">
            {sentence}
          </p>
        ) : null}
        <FindInJobs round={copied} />
        <AskAgain sentence={jobs.kind === 'failed' ? jobs.sentence : null} again={again} />
        {jobs.kind === 'there' && !jobs.value.reached ? <p role="status">{w.keep.here}</p> : null}
        {jobs.kind === 'there' && shown.length === 0 ? <p className="empty">{w.jobs.empty}</p> : null}
        <ul className="job-list">
          {shown.map((job) => (
            <JobCard key={job.id} job={job} />
          ))}
        </ul>
        <NewJob start={(name, units) => add(emptyJob(newId('job'), name, units))} />
        <section className="jobs-demo">
          <p>{w.jobs.demoAbout}</p>
          <button type="button" onClick={openDemo}>
            {w.jobs.demo}
          </button>
        </section>
      </main>
    </>
  );
}

function JobCard({ job }: { readonly job: ListedJob }) {
  const w = useWords();
  return (
    <li>
      <Link href={`/jobs/${job.id}/openings`} className="job-card">
        <b>{job.name}</b>
        {job.customer ? <span>{job.customer}</span> : null}
        <span className="about">
          {[
            w.jobs.openings(job.openings),
            job.savedAt ? w.jobs.changed(showWhen(job.savedAt)) : '',
            job.revision > 0 ? w.jobs.revision(job.revision) : w.keep.notThere,
          ]
            .filter(Boolean)
            .join(', ')}
        </span>
        {job.waits === 'needsYou' ? <strong className="needs">{w.keep.needsYou}</strong> : null}
        {job.waits === 'away' && job.revision > 0 ? <span>{w.keep.save.kept}</span> : null}
      </Link>
    </li>
  );
}

function NewJob({ start }: { readonly start: (name: string, units: UnitName) => void }) {
  const w = useWords();
  const [name, setName] = useState('');
  const [units, setUnits] = useState<UnitName>('in');
  const [sentence, setSentence] = useState<string | null>(null);
  const id = useId();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() === '') setSentence(w.jobs.needName);
    else start(name.trim(), units);
  };
  return (
    <form className="new-job" onSubmit={submit}>
      <h2>{w.jobs.newTitle}</h2>
      <NameField
        label={w.jobs.newName}
        value={name}
        most={100}
        sentence={sentence}
        placeholder={w.jobs.newPlaceholder}
        set={(value) => {
          setName(value);
          setSentence(null);
        }}
      />
      <div className="field">
        <label htmlFor={`${id}-units`}>{w.jobs.newUnits}</label>
        <span className="field-line">
          <select
            id={`${id}-units`}
            value={units}
            onChange={(event) => setUnits(event.target.value as UnitName)}
          >
            <option value="in">{w.app.units.in}</option>
            <option value="mm">{w.app.units.mm}</option>
          </select>
        </span>
      </div>
      <button type="submit" className="main-button">
        {w.jobs.start}
      </button>
    </form>
  );
}
