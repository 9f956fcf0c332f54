import { Link } from 'wouter';
import { useWords } from '../text/useWords.ts';
import type { Hit } from './searchJob.ts';

interface Props {
  readonly query: string;
  readonly hits: readonly Hit[];
  /** Told when one was gone to. */
  readonly gone?: () => void;
}

/** More than these are not shown; a longer word finds fewer. */
const MOST = 40;

/** What was found, each a way to go. */
export function Hits({ query, hits, gone }: Props) {
  const w = useWords();
  if (query.trim() === '') return null;
  return (
    <>
      <p role="status" className="about">
        {hits.length === 0 ? w.find.none : w.find.some(hits.length)}
      </p>
      <ul className="hits">
        {hits.slice(0, MOST).map(({ kind, label, detail, href }) => (
          <li key={`${kind} ${href} ${label}`}>
            <Link href={href} onClick={gone}>
              <span className="about">{w.find.kind[kind]}</span> {label}
            </Link>{' '}
            {detail ? <span className="about">{detail}</span> : null}
          </li>
        ))}
      </ul>
    </>
  );
}
