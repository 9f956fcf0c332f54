import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { useWords } from '../text/useWords.ts';
import { LanguageSwitch } from './LanguageSwitch.tsx';
import { ThemeSwitch } from './ThemeSwitch.tsx';

/** The line at the top of every page: where one is, and what can be done anywhere. */
export function PageBar({ children }: { readonly children?: ReactNode }) {
  const w = useWords();
  return (
    <header className="page-bar">
      <a href="#main" className="skip">
        {w.app.skip}
      </a>
      <nav className="page-links" aria-label={w.app.name}>
        <Link href="/" className="page-name">
          <img src="/mark.svg" alt="" width={28} height={28} /> {w.app.name}
        </Link>
        <Link href="/">{w.app.jobs}</Link>
        <Link href="/catalogue">{w.app.catalogue}</Link>
        <Link href="/patterns">{w.kept.link}</Link>
      </nav>
      {children}
      <div className="page-choices">
        <LanguageSwitch />
        <ThemeSwitch />
      </div>
    </header>
  );
}
