import { useState } from 'react';
import { AskAgain } from '../app/AskAgain.tsx';
import { type KeptPattern, mirrorAbout, type Opening, surveyOfKept } from '../contract.ts';
import { useWork } from '../job/work.ts';
import { openingIn } from '../openings/readingEdits.ts';
import { useWords } from '../text/useWords.ts';
import { KeptCard } from './KeptCard.tsx';
import { SearchField } from './SearchField.tsx';
import { useKept } from './useKept.ts';

/** Takes a kept pattern over for an opening that is not measured yet. */
export default function BeginFromKept({ opening }: { readonly opening: Opening }) {
  const w = useWords();
  const { job, server } = useWork();
  const site = job.store.getState().document.site.name;
  const [text, setText] = useState(site);
  const { answer, asking, sentence, again } = useKept(server, { text, most: 10 });
  const begin = (pattern: KeptPattern, turnedOver: boolean) => {
    job.edit(`kept.${opening.id}.${pattern.id}`, (draft) => {
      openingIn(draft, opening.id).survey = surveyOfKept(pattern, turnedOver ? mirrorAbout(0) : undefined);
    });
    job.settle();
  };
  return (
    <>
      <p className="about">{w.kept.beginAbout}</p>
      <SearchField text={text} set={setText} />
      <p role="status" className="about">
        {asking && !answer ? w.kept.searching : ''}
        {answer?.patterns.length === 0 ? (text.trim() ? w.kept.noneFound(text.trim()) : w.kept.none) : ''}
        {answer && answer.patterns.length > 0 ? w.kept.count(answer.patterns.length, answer.more) : ''}
      </p>
      <AskAgain sentence={sentence} again={again} />
      <ul className="kept-list">
        {answer?.patterns.map((found) => (
          <KeptCard key={found.pattern.id} found={found}>
            <div className="buttons">
              <button
                type="button"
                aria-label={w.kept.beginItOf(found.pattern.name)}
                onClick={() => begin(found.pattern, false)}
              >
                {w.kept.beginIt}
              </button>
              <button
                type="button"
                aria-label={w.kept.beginOverOf(found.pattern.name)}
                onClick={() => begin(found.pattern, true)}
              >
                {w.kept.beginOver}
              </button>
            </div>
          </KeptCard>
        ))}
      </ul>
    </>
  );
}
