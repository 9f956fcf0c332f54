import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { SheetFile } from '../server/server.ts';
import { useWords } from '../text/useWords.ts';

/** A page as a picture on white. Beside words that say the same, `alt` is empty. */
export function PagePicture({ svg, alt }: { readonly svg: string; readonly alt: string }) {
  const onPaper = svg.replace('<svg ', '<svg style="background:#fff" ');
  return (
    <img src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(onPaper)}`} alt={alt} loading="lazy" />
  );
}

/** One page's text, put together when it is looked at. */
function pageOf({ preview = '', looks }: SheetFile, page: number): string {
  return looks?.pages[page]?.map((part) => looks.parts[part]).join('') ?? preview;
}

/** Where a key leads to among the pages; null for any other key. Onwards is the way the page is read. */
function pageAfter(key: string, page: number, last: number): number | null {
  const isLeft = document.documentElement.dir === 'rtl';
  const [on, back] = isLeft ? ['ArrowLeft', 'ArrowRight'] : ['ArrowRight', 'ArrowLeft'];
  if (key === on || key === 'PageDown') return Math.min(page + 1, last);
  if (key === back || key === 'PageUp') return Math.max(page - 1, 0);
  if (key === 'Home') return 0;
  return key === 'End' ? last : null;
}

interface Props {
  readonly file: SheetFile;
  readonly close: () => void;
  /** What can be done with the whole sheet. */
  readonly children: ReactNode;
}

/** A sheet leafed through, one page at a time, as large as the window. */
export function SheetPages({ file, close, children }: Props) {
  const w = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  const [page, setPage] = useState(0);
  const count = file.looks?.pages.length ?? 1;
  useEffect(() => {
    const shown = dialog.current!;
    shown.showModal();
    const press = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      if (pageAfter(event.key, 0, count - 1) === null) return;
      event.preventDefault();
      setPage((now) => pageAfter(event.key, now, count - 1) ?? now);
    };
    shown.addEventListener('keydown', press);
    return () => shown.removeEventListener('keydown', press);
  }, [count]);
  const where = w.sheets.pageOf(page + 1, count);
  return (
    <dialog ref={dialog} className="sheet-look" aria-label={file.title} onClose={close}>
      <div className="buttons">
        {count > 1 ? (
          <>
            <button type="button" aria-disabled={page === 0} onClick={() => setPage(Math.max(page - 1, 0))}>
              {w.sheets.pageBefore}
            </button>
            <button
              type="button"
              aria-disabled={page === count - 1}
              onClick={() => setPage(Math.min(page + 1, count - 1))}
            >
              {w.sheets.pageNext}
            </button>
          </>
        ) : null}
        <span className="page-where" aria-live="polite">
          {where}
        </span>
        {children}
        <button type="button" onClick={() => dialog.current?.close()}>
          {w.sheets.close}
        </button>
      </div>
      <PagePicture svg={pageOf(file, page)} alt={`${file.title}, ${where}`} />
    </dialog>
  );
}
