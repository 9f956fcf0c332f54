import { useState } from 'react';
import { Link } from 'wouter';
import { AskAgain } from '../app/AskAgain.tsx';
import { PageBar } from '../app/PageBar.tsx';
import { UnitsSwitch } from '../app/UnitsSwitch.tsx';
import { sentenceOf } from '../app/useAsk.ts';
import type { UnitName } from '../contract.ts';
import { UnitsContext } from '../fields/useUnits.ts';
import type { Server } from '../server/server.ts';
import { useWords } from '../text/useWords.ts';
import { DescribeForm } from './DescribeForm.tsx';
import { KeptCard } from './KeptCard.tsx';
import { SearchField } from './SearchField.tsx';
import { type FoundPattern, useKept } from './useKept.ts';

const PAGE = 30;
const MOST = 500;

/** All patterns kept for later jobs: to find, name, open where they came from, remove and bring back. */
export default function KeptPage({ server }: { readonly server: Server }) {
  const w = useWords();
  const [units, setUnits] = useState<UnitName>('in');
  const [text, setText] = useState('');
  const [removed, setRemoved] = useState(false);
  const [most, setMost] = useState(PAGE);
  const [told, setTold] = useState('');
  const { answer, asking, sentence, again } = useKept(server, { text, removed, most });
  const done = (what: string) => {
    setTold(what);
    again();
  };
  return (
    <UnitsContext value={units}>
      <PageBar menu={<UnitsSwitch value={units} set={setUnits} />} />
      <main id="main" className="jobs-page">
        <h1>{w.kept.title}</h1>
        <p className="about">{w.kept.about}</p>
        <SearchField
          text={text}
          set={(next) => {
            setText(next);
            setMost(PAGE);
          }}
        />
        <label className="check">
          <input
            type="checkbox"
            checked={removed}
            onChange={(event) => {
              setRemoved(event.target.checked);
              setTold('');
            }}
          />{' '}
          {w.kept.removed}
        </label>
        <p role="status" className="about">
          {told ? `${told} ` : ''}
          {asking && !answer ? w.kept.searching : ''}
          {answer && answer.patterns.length > 0 ? w.kept.count(answer.patterns.length, answer.more) : ''}
        </p>
        <AskAgain sentence={sentence} again={again} />
        {answer?.patterns.length === 0 ? (
          <p className="empty">
            {text.trim() ? w.kept.noneFound(text.trim()) : removed ? w.kept.noneRemoved : w.kept.none}
          </p>
        ) : null}
        <ul className="kept-list">
          {answer?.patterns.map((found) => (
            <KeptCard key={found.pattern.id} found={found}>
              <KeptActions found={found} server={server} done={done} />
            </KeptCard>
          ))}
        </ul>
        {answer && answer.more > 0 && most < MOST ? (
          <button type="button" onClick={() => setMost(Math.min(MOST, most + 2 * PAGE))}>
            {w.kept.more}
          </button>
        ) : null}
      </main>
    </UnitsContext>
  );
}

interface ActionProps {
  readonly found: FoundPattern;
  readonly server: Server;
  readonly done: (what: string) => void;
}

function KeptActions({ found: { pattern, removed }, server, done }: ActionProps) {
  const w = useWords();
  const [sentence, setSentence] = useState<string | null>(null);
  const { id, name, notes, from } = pattern;
  const first = from.openings[0]?.id;
  const doing = async (work: Promise<unknown>, what: string): Promise<string | null> => {
    try {
      await work;
      done(what);
      return null;
    } catch (error) {
      return sentenceOf(error);
    }
  };
  return (
    <>
      <div className="buttons">
        <Link
          href={`/jobs/${from.job}/patterns${first ? `/${first}` : ''}`}
          className="button"
          aria-label={w.kept.openOf(name)}
        >
          {w.kept.open}
        </Link>
        {removed ? (
          <button
            type="button"
            aria-label={w.kept.restoreOf(name)}
            onClick={() => void doing(server.restorePattern(id), w.kept.wasRestored(name)).then(setSentence)}
          >
            {w.kept.restore}
          </button>
        ) : (
          <button
            type="button"
            aria-label={w.kept.removeOf(name)}
            onClick={() => void doing(server.removePattern(id), w.kept.wasRemoved(name)).then(setSentence)}
          >
            {w.kept.remove}
          </button>
        )}
      </div>
      {sentence ? (
        <p className="field-sentence" role="alert">
          {sentence}
        </p>
      ) : null}
      <details>
        <summary>{w.kept.describe}</summary>
        <DescribeForm
          key={`${name} ${notes}`}
          name={name}
          notes={notes}
          action={w.kept.save}
          put={(nextName, nextNotes) =>
            doing(server.describePattern(id, nextName, nextNotes), w.kept.keptNow(nextName))
          }
        />
      </details>
    </>
  );
}
