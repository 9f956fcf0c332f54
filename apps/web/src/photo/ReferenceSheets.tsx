import { useState } from 'react';
import { sentenceOf } from '../app/useAsk.ts';
import type { Opening, OutlineSurvey } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { useWork } from '../job/work.ts';
import { fileUrl, saveFile } from '../sheets/saveFile.ts';
import { today } from '../text/today.ts';
import { useWords } from '../text/useWords.ts';
import { PhotoReadingField } from './PhotoReadingField.tsx';
import { setupIn, setupOf } from './setupOf.ts';

interface Props {
  readonly opening: Opening;
  readonly survey: OutlineSurvey;
}

/** The sheets to print, on which paper, and what a rule reads on their bars. */
export function ReferenceSheets({ opening, survey }: Props) {
  const w = useWords();
  const units = useUnits();
  const { job, server } = useWork();
  const [making, setMaking] = useState(false);
  const [sentence, setSentence] = useState<string | null>(null);
  const { paper, ruled } = setupOf(survey, units);
  const make = async (then: typeof saveFile) => {
    setMaking(true);
    setSentence(null);
    try {
      then(await server.referenceSheets({ paper, date: today() }));
    } catch (error) {
      setSentence(sentenceOf(error));
    }
    setMaking(false);
  };
  const one = (ruled.x === undefined) !== (ruled.y === undefined);
  return (
    <section>
      <h3>{w.photo.sheets.title}</h3>
      <p className="about">{w.photo.sheets.about}</p>
      <SelectField
        label={w.photo.sheets.paper}
        className="field-short"
        value={paper}
        options={(['A4', 'Letter'] as const).map((value) => ({ value, label: w.photo.sheets.papers[value] }))}
        set={(value) =>
          job.edit(`photo.${opening.id}.paper`, (draft) => {
            setupIn(draft, opening.id).paper = value;
          })
        }
      />
      <p className="buttons">
        <button type="button" disabled={making} onClick={() => make((file) => open(fileUrl(file), '_blank'))}>
          {w.photo.sheets.make}
        </button>
        <button type="button" disabled={making} onClick={() => make(saveFile)}>
          {w.photo.sheets.save}
        </button>
      </p>
      <div aria-live="polite">
        {making ? <p>{w.photo.sheets.making}</p> : null}
        {sentence ? <p className="field-sentence">{sentence}</p> : null}
      </div>
      <div className="fields">
        {(['x', 'y'] as const).map((axis) => (
          <PhotoReadingField
            key={axis}
            entry={`photo.${opening.id}.ruled.${axis}`}
            label={axis === 'x' ? w.photo.sheets.ruledX : w.photo.sheets.ruledY}
            reading={ruled[axis]}
            put={(draft, reading) => {
              const into = setupIn(draft, opening.id).ruled;
              if (reading) into[axis] = reading;
              else delete into[axis];
            }}
          />
        ))}
      </div>
      <p className={one ? 'needs' : 'about'}>{one ? w.photo.sheets.ruledOne : w.photo.sheets.ruledAbout}</p>
    </section>
  );
}
