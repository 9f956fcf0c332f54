import { useState } from 'react';
import type { SheetFile } from '../server/server.ts';
import { useWords } from '../text/useWords.ts';
import { type FileGroup, groupsOf, kindOf } from './fileGroups.ts';
import { PagePicture, SheetPages } from './SheetPages.tsx';
import { fileUrl, saveFile } from './saveFile.ts';
import { zipOf } from './zipOf.ts';

/** The sheets as pictures of their first pages, then the files for machines, then all in one. */
export function SheetList({ files, name }: { readonly files: readonly SheetFile[]; readonly name: string }) {
  const w = useWords();
  const [looked, setLooked] = useState<FileGroup | null>(null);
  const { sheets, cutFiles, pictures } = groupsOf(files);
  const zipName = `${name.replace(/[^\p{L}\p{N} ._-]+/gu, ' ').trim() || w.sheets.allName}.zip`;
  return (
    <>
      <div className="buttons">
        <button
          type="button"
          className="main-button"
          onClick={() => saveFile({ path: zipName, mediaType: 'application/zip', bytes: zipOf(files) })}
        >
          {w.sheets.all}
        </button>
      </div>
      <h3>{w.sheets.list}</h3>
      <ul className="sheet-cards">
        {sheets.map((group) => (
          <SheetCard key={group.stem} group={group} look={() => setLooked(group)} />
        ))}
      </ul>
      <h3>{w.sheets.cutFiles}</h3>
      <ul className="sheet-list">
        {cutFiles.map((group) => (
          <li key={group.stem}>
            <b>{titleOf(group, w)}</b>
            <FileButtons group={group} title={titleOf(group, w)} />
          </li>
        ))}
      </ul>
      <h3>{w.sheets.pictures}</h3>
      <ul className="sheet-list">
        {pictures.map((group) => (
          <li key={group.stem}>
            <b>{w.sheets.pictureOf(group.title)}</b>
            <FileButtons group={group} title={w.sheets.pictureOf(group.title)} />
          </li>
        ))}
      </ul>
      {looked?.pdf ? (
        <SheetPages file={looked.pdf} close={() => setLooked(null)}>
          <FileButtons group={looked} title={looked.title} />
        </SheetPages>
      ) : null}
    </>
  );
}

function titleOf({ stem, title }: FileGroup, w: ReturnType<typeof useWords>): string {
  if (stem === 'plan') return w.sheets.planFile;
  if (stem === 'lay') return w.sheets.lay;
  if (stem.startsWith('lay-')) return w.sheets.layNamed(stem.slice(4));
  return stem.startsWith('pieces/') ? w.sheets.piece(stem.slice(7)) : title;
}

function SheetCard({ group, look }: { readonly group: FileGroup; readonly look: () => void }) {
  const w = useWords();
  const { title, pdf } = group;
  return (
    <li>
      <button type="button" className="sheet-picture" aria-label={w.sheets.look(title)} onClick={look}>
        <PagePicture svg={pdf?.preview ?? ''} alt="" />
      </button>
      <p>
        <b>{title}</b> <span className="about">{pdf?.pages ? w.sheets.pages(pdf.pages) : ''}</span>
      </p>
      <FileButtons group={group} title={title} />
    </li>
  );
}

function FileButtons({ group, title }: { readonly group: FileGroup; readonly title: string }) {
  const w = useWords();
  const { files, pdf } = group;
  return (
    <span className="buttons">
      {pdf ? (
        <button
          type="button"
          aria-label={w.sheets.printOf(title)}
          onClick={() => open(fileUrl(pdf), '_blank')}
        >
          {w.sheets.print}
        </button>
      ) : null}
      {files.map((file) => {
        const kind = w.sheets.kinds[kindOf(file.path)];
        return (
          <button
            key={file.path}
            type="button"
            className="quiet"
            aria-label={w.sheets.download(title, kind)}
            onClick={() => saveFile(file)}
          >
            {kind}
          </button>
        );
      })}
    </span>
  );
}
