import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { useWords } from '../text/useWords.ts';
import { PageLinks } from './PageLinks.tsx';
import { PageMenu } from './PageMenu.tsx';

interface Props {
  readonly children?: ReactNode;
  /** What the menu of this page has besides. */
  readonly menu?: ReactNode;
}

/** The line at the top of every page: where one is, and what can be done anywhere. */
export function PageBar({ children, menu }: Props) {
  const w = useWords();
  return (
    <header className="page-bar">
      <a href="#main" className="skip">
        {w.app.skip}
      </a>
      <Link href="/" className="page-name">
        <img src="/mark.svg" alt="" width={28} height={28} /> <span>{w.app.name}</span>
      </Link>
      <PageLinks />
      {children}
      <PageMenu>{menu}</PageMenu>
    </header>
  );
}
