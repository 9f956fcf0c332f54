import { useEffect, useId, useState } from 'react';
import { deriveOpenings, type Job, type Opening, type Outline, type Revision } from '../contract.ts';
import { outlinePath } from '../drawing/outlinePath.ts';
import { boxAround, fitView } from '../drawing/view.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useCatalogue, useJob, useWork } from '../job/work.ts';
import { fieldWords, valueWords } from '../merge/fieldWords.ts';
import { changesBetween, pathKey } from '../merge/merge.ts';
import { useWords } from '../text/useWords.ts';
import { sentenceOf } from './useAsk.ts';

/** A revision, or the page itself. */
type Which = number | 'page';

interface Props {
  readonly revisions: readonly Revision[];
  readonly before: number;
  readonly close: () => void;
}

/** Two revisions side by side: every field that differs, and the openings that changed one over the other. */
export function Compare({ revisions, before: first, close }: Props) {
  const w = useWords();
  const c = w.keep.revisions;
  const [before, setBefore] = useState<Which>(first);
  const [after, setAfter] = useState<Which>('page');
  const [old, oldSentence] = useRevision(before);
  const [now, nowSentence] = useRevision(after);
  const sentence = oldSentence ?? nowSentence;
  const names = new Map(revisions.map(({ revision, note }) => [revision, note]));
  const nameOf = (which: Which) =>
    which === 'page' ? c.page : [w.revisions.one(which), names.get(which)].filter(Boolean).join(', ');
  return (
    <section className="compare">
      <div className="fields">
        <WhichField label={c.before} value={before} set={setBefore} revisions={revisions} nameOf={nameOf} />
        <WhichField label={c.with} value={after} set={setAfter} revisions={revisions} nameOf={nameOf} />
        <button type="button" onClick={close}>
          {w.app.close}
        </button>
      </div>
      {sentence ? (
        <p className="field-sentence" role="alert">
          {sentence}
        </p>
      ) : null}
      {old && now ? (
        <SideBySide old={old} now={now} heads={[nameOf(before), nameOf(after)]} />
      ) : sentence ? null : (
        <p className="working">{c.loading}</p>
      )}
    </section>
  );
}

/** A revision from the server, or the page's own state; with a sentence where it cannot be had. */
function useRevision(which: Which): readonly [Job | null, string | null] {
  const { id, server } = useWork();
  const page = useJob((state) => state.document);
  const [found, setFound] = useState<readonly [Which, Job] | null>(null);
  const [sentence, setSentence] = useState<string | null>(null);
  useEffect(() => {
    let current = true;
    setSentence(null);
    if (which !== 'page')
      server.openJob(id, which).then(
        ({ job }) => current && setFound([which, job]),
        (error) => current && setSentence(sentenceOf(error)),
      );
    return () => {
      current = false;
    };
  }, [id, server, which]);
  if (which === 'page') return [page, null];
  return [found?.[0] === which ? found[1] : null, sentence];
}

interface WhichProps {
  readonly label: string;
  readonly value: Which;
  readonly set: (which: Which) => void;
  readonly revisions: readonly Revision[];
  readonly nameOf: (which: Which) => string;
}

function WhichField({ label, value, set, revisions, nameOf }: WhichProps) {
  const id = useId();
  const all: readonly Which[] = ['page', ...revisions.map(({ revision }) => revision)];
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-line">
        <select
          id={id}
          value={value}
          onChange={({ target }) => set(target.value === 'page' ? 'page' : Number(target.value))}
        >
          {all.map((one) => (
            <option key={one} value={one}>
              {nameOf(one)}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}

interface SideProps {
  readonly old: Job;
  readonly now: Job;
  readonly heads: readonly [string, string];
}

function SideBySide({ old, now, heads }: SideProps) {
  const w = useWords();
  const c = w.keep.revisions;
  const units = useUnits();
  const changes = changesBetween(old, now);
  if (changes.length === 0) return <p role="status">{c.same}</p>;
  return (
    <>
      <p role="status">{c.count(changes.length)}</p>
      <Overlaid old={old} now={now} />
      <table className="compare-table">
        <thead>
          <tr>
            <th scope="col">{c.field}</th>
            {heads.map((head) => (
              <th scope="col" key={head}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {changes.map(({ path, before, after }) => (
            <tr key={pathKey(path)}>
              <th scope="row">{fieldWords(path, [now, old], w)}</th>
              <td>{valueWords(path, before, units, w)}</td>
              <td>{valueWords(path, after, units, w)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** The openings whose readings differ, each version's outline over the other's, to one scale within a drawing. */
function Overlaid({ old, now }: Pick<SideProps, 'old' | 'now'>) {
  const w = useWords();
  const catalogue = useCatalogue((one) => one);
  const outlines = (job: Job) =>
    new Map(
      deriveOpenings(job, catalogue).openings.map(({ opening, shape }) => [opening, shape?.outline ?? null]),
    );
  const [before, after] = [outlines(old), outlines(now)];
  const survey = (job: Job, id: string) =>
    JSON.stringify(job.openings.find((one: Opening) => one.id === id)?.survey ?? null);
  const ids = [...new Set([...before.keys(), ...after.keys()])].filter(
    (id) => survey(old, id) !== survey(now, id),
  );
  const nameOf = (id: string) => {
    const opening = [...now.openings, ...old.openings].find((one) => one.id === id);
    return opening ? w.openings.title(opening.id, opening.name) : id;
  };
  return (
    <div className="compare-drawings">
      {ids.map((id) => (
        <OverlaidOne
          key={id}
          name={nameOf(id)}
          before={before.get(id) ?? null}
          after={after.get(id) ?? null}
        />
      ))}
    </div>
  );
}

const [WIDE, HIGH] = [240, 170];

interface OverlaidProps {
  readonly name: string;
  readonly before: Outline | null;
  readonly after: Outline | null;
}

function OverlaidOne({ name, before, after }: OverlaidProps) {
  const w = useWords();
  const both = [before, after].filter((one) => one !== null);
  if (both.length === 0) return null;
  const view = fitView(boxAround(both), WIDE, HIGH, { x: 10, top: 10, bottom: 10 });
  return (
    <figure>
      <svg viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={w.keep.revisions.overlaid(name)}>
        <g transform={view.world}>
          {after ? <path d={outlinePath(after)} className="compare-after" /> : null}
          {before ? <path d={outlinePath(before)} className="compare-before" /> : null}
        </g>
      </svg>
      <figcaption>{w.keep.revisions.overlaid(name)}</figcaption>
    </figure>
  );
}
