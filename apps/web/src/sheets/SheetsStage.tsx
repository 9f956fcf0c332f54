import { useEffect, useState } from 'react';
import { sentenceOf } from '../app/useAsk.ts';
import type { Catalogue, Job, OperationInput } from '../contract.ts';
import { PLAN_SEED } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import { useFindings } from '../findings/useFindings.ts';
import type { DocumentState } from '../job/documentStore.ts';
import { useCatalogue, useJob, useWork } from '../job/work.ts';
import type { SheetFile } from '../server/server.ts';
import { isMeasured } from '../survey/surveyOf.ts';
import { useWords } from '../text/useWords.ts';
import { fileUrl, saveFile } from './saveFile.ts';
import { zipOf } from './zipOf.ts';

type Paper = Extract<NonNullable<OperationInput<'sheets'>['paper']>, string>;
type Made =
  | { readonly kind: 'making' }
  | { readonly kind: 'made'; readonly files: readonly SheetFile[] }
  | { readonly kind: 'failed'; readonly sentence: string };

/** Everything to print and to cut by, made from the job as it is on the page. */
export function SheetsStage() {
  const w = useWords();
  const job = useJob((state) => state.document);
  const stale = useJob((state) => Object.keys(state.refused).length > 0);
  const stops = useFindings().some((one) => one.severity === 'stop');
  const [paper, setPaper] = useState<Paper>(job.units === 'in' ? 'letter' : 'a4');
  const made = useSheets(paper);
  if (!job.openings.some(isMeasured)) return <p className="empty">{w.sheets.empty}</p>;
  return (
    <div className="stage stage-single">
      <h2>{w.sheets.title}</h2>
      <p>{w.sheets.about}</p>
      {stale ? <p className="needs">{w.sheets.stale}</p> : null}
      {stops ? <p className="needs">{w.sheets.stops}</p> : null}
      <SelectField
        label={w.sheets.paper}
        value={paper}
        options={(['letter', 'a4', 'a3', 'tabloid'] as const).map((value) => ({
          value,
          label: w.sheets.papers[value],
        }))}
        set={setPaper}
        className="field-short"
      />
      <div aria-live="polite" aria-busy={made.kind === 'making'}>
        {made.kind === 'making' ? (
          <p className="working">
            <span className="working-bar" aria-hidden="true" />
            {w.sheets.making}
          </p>
        ) : null}
        {made.kind === 'failed' ? <p className="field-sentence">{made.sentence}</p> : null}
      </div>
      {made.kind === 'made' ? <SheetList files={made.files} name={job.name} /> : null}
    </div>
  );
}

/** The revision the sheets bear: none where it cannot be saved; null while a save is on its way. */
function revisionToPrint({ save, revision }: DocumentState<Job>): string | null {
  if (save.kind === 'saved') return `${revision}`;
  return save.kind === 'failed' || save.kind === 'conflict' ? '' : null;
}

/** Asks for the sheets a moment after the last edit; a newer job supersedes an older. */
function useSheets(paper: Paper): Made {
  const { server } = useWork();
  const job: Job = useJob((state) => state.document);
  const revision = useJob(revisionToPrint);
  const catalogue: Catalogue = useCatalogue((all) => all);
  const [made, setMade] = useState<Made>({ kind: 'making' });
  useEffect(() => {
    const controller = new AbortController();
    setMade({ kind: 'making' });
    if (revision === null) return;
    const timer = setTimeout(() => {
      const input = { job, catalogue, seed: PLAN_SEED, paper, date: today(), revision };
      server.sheets(input, controller.signal).then(
        (files) => setMade({ kind: 'made', files }),
        (error) => controller.signal.aborted || setMade({ kind: 'failed', sentence: sentenceOf(error) }),
      );
    }, 250);
    return () => {
      clearTimeout(timer);
      controller.abort();
    };
  }, [server, job, catalogue, paper, revision]);
  return made;
}

function SheetList({ files, name }: { readonly files: readonly SheetFile[]; readonly name: string }) {
  const w = useWords();
  const zipName = `${name.replace(/[^\p{L}\p{N} ._-]+/gu, ' ').trim() || w.sheets.allName}.zip`;
  return (
    <>
      <h3>{w.sheets.list}</h3>
      <ul className="sheet-list">
        {files.map((file) => (
          <li key={file.path}>
            <span>
              <b>{file.title}</b> <span className="about">{file.path}</span>
            </span>
            <span className="buttons">
              {file.mediaType === 'application/pdf' ? (
                <button
                  type="button"
                  aria-label={w.sheets.printOf(file.title)}
                  onClick={() => open(fileUrl(file), '_blank')}
                >
                  {w.sheets.print}
                </button>
              ) : null}
              <button
                type="button"
                aria-label={w.sheets.downloadOf(file.title)}
                onClick={() => saveFile(file)}
              >
                {w.sheets.download}
              </button>
            </span>
          </li>
        ))}
      </ul>
      <div className="buttons">
        <button
          type="button"
          className="main-button"
          onClick={() => saveFile({ path: zipName, mediaType: 'application/zip', bytes: zipOf(files) })}
        >
          {w.sheets.all}
        </button>
      </div>
    </>
  );
}

/** The reader's own day, as the sheets are dated. */
function today(): string {
  const now = new Date();
  const two = (value: number) => `${value}`.padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
