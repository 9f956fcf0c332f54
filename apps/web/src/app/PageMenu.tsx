import type { ReactNode } from 'react';
import { useWords } from '../text/useWords.ts';
import { LanguageSwitch } from './LanguageSwitch.tsx';
import { PageLinks } from './PageLinks.tsx';
import { ThemeSwitch } from './ThemeSwitch.tsx';

const ID = 'page-menu';

/** What opens a dialog from the menu closes it first: the dialog then gives the focus back to the menu's button. */
export const closeMenu = () => document.getElementById(ID)?.hidePopover();

/** What is chosen once and then left: unit, language, theme. On a narrow screen the way to the other pages too. */
export function PageMenu({ children }: { readonly children?: ReactNode }) {
  const w = useWords();
  return (
    <>
      <button type="button" className="menu-button" popoverTarget={ID}>
        {w.app.menu}
      </button>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would be a form's, and these stand in none. */}
      <div id={ID} popover="auto" className="page-menu" role="group" aria-label={w.app.menu}>
        <PageLinks />
        {children}
        <LanguageSwitch />
        <ThemeSwitch />
      </div>
    </>
  );
}
