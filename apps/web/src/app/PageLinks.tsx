import { Link } from 'wouter';
import { useWords } from '../text/useWords.ts';

/** The pages beside a job. They stand in the bar where it has room, else in its menu. */
export function PageLinks() {
  const w = useWords();
  return (
    <nav className="page-links" aria-label={w.app.name}>
      <Link href="/">{w.app.jobs}</Link>
      <Link href="/catalogue">{w.app.catalogue}</Link>
      <Link href="/patterns">{w.kept.link}</Link>
    </nav>
  );
}
