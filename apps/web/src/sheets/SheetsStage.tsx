import { useState } from 'react';
import { useFindings } from '../findings/useFindings.ts';
import { useJob } from '../job/work.ts';
import { isMeasured } from '../survey/surveyOf.ts';
import { useWords } from '../text/useWords.ts';
import type { Words } from '../text/words.ts';
import { SheetChoices } from './SheetChoices.tsx';
import { SheetList } from './SheetList.tsx';
import { rememberedSettings, rememberSettings, type SheetSettings } from './settings.ts';
import { type Made, useSheets } from './useSheets.ts';

/** Everything to print and to cut by, made from the job as it is on the page. */
export function SheetsStage() {
  const w = useWords();
  const job = useJob((state) => state.document);
  const stale = useJob((state) => Object.keys(state.refused).length > 0);
  const stops = useFindings().some((one) => one.severity === 'stop');
  const [settings, setSettings] = useState<SheetSettings>(() => rememberedSettings(location.origin));
  const { made, stop, again } = useSheets(settings);
  if (!job.openings.some(isMeasured)) return <p className="empty">{w.sheets.empty}</p>;
  const set = (more: Partial<SheetSettings>) => {
    const next = { ...settings, ...more };
    rememberSettings(next);
    setSettings(next);
  };
  return (
    <div className="stage stage-single">
      <h2>{w.sheets.title}</h2>
      <p>{w.sheets.about}</p>
      {stale ? <p className="needs">{w.sheets.stale}</p> : null}
      {stops ? <p className="needs">{w.sheets.stops}</p> : null}
      <SheetChoices settings={settings} set={set} />
      <Progress made={made} stop={stop} again={again} />
      {made.kind === 'made' ? <SheetList files={made.files} name={job.name} /> : null}
    </div>
  );
}

interface ProgressProps {
  readonly made: Made;
  readonly stop: () => void;
  readonly again: () => void;
}

function soFar({ done, of, stage }: Extract<Made, { kind: 'making' }>, w: Words): string {
  if (of === 0) return w.sheets.making;
  return stage === 'plan' ? w.sheets.planSoFar(done, of) : w.sheets.madeSoFar(done, of);
}

function Progress({ made, stop, again }: ProgressProps) {
  const w = useWords();
  return (
    <div aria-live="polite" aria-busy={made.kind === 'making'}>
      {made.kind === 'making' ? (
        <div className="working">
          {made.of > 0 ? (
            <progress value={made.done} max={made.of} aria-label={w.sheets.making} />
          ) : (
            <span className="working-bar" aria-hidden="true" />
          )}
          <span aria-hidden={made.of > 0}>{soFar(made, w)}</span>
          <button type="button" onClick={stop}>
            {w.sheets.stop}
          </button>
        </div>
      ) : null}
      {made.kind === 'failed' ? <p className="field-sentence">{made.sentence}</p> : null}
      {made.kind === 'stopped' ? <p>{w.sheets.stopped}</p> : null}
      {made.kind === 'stopped' || made.kind === 'failed' ? (
        <button type="button" className="main-button" onClick={again}>
          {w.sheets.make}
        </button>
      ) : null}
    </div>
  );
}
