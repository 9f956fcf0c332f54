import type { SheetFile } from '../server/server.ts';

/** One thing in all the forms it was made in. */
export interface FileGroup {
  /** Path without its ending: `pieces/P1-panel`. */
  readonly stem: string;
  readonly title: string;
  readonly files: readonly SheetFile[];
  readonly pdf: SheetFile | undefined;
}

export type FileKind = 'pdf' | 'csv' | 'svg' | 'dxf' | 'dxf2000' | 'plt' | 'json';

/** What a file is, by its name. */
export function kindOf(path: string): FileKind {
  if (path.endsWith('-AC1015.dxf')) return 'dxf2000';
  return path.slice(path.lastIndexOf('.') + 1) as FileKind;
}

const stemOf = (path: string): string => path.replace(/(-AC1015)?\.\w+$/, '');

/** Files by what they are of: those that are printed, and those for machines. A lay is both: its drawing and its files. */
export function groupsOf(files: readonly SheetFile[]): {
  readonly sheets: readonly FileGroup[];
  readonly cutFiles: readonly FileGroup[];
  readonly pictures: readonly FileGroup[];
} {
  const printed = (file: SheetFile) => ['pdf', 'csv'].includes(kindOf(file.path));
  const pictured = ({ path }: SheetFile) => path.startsWith('pictures/');
  return {
    pictures: grouped(files.filter(pictured)),
    sheets: grouped(files.filter(printed)),
    cutFiles: grouped(files.filter((file) => !printed(file) && !pictured(file))),
  };
}

function grouped(files: readonly SheetFile[]): readonly FileGroup[] {
  const stems = [...new Set(files.map(({ path }) => stemOf(path)))];
  return stems.map((stem) => {
    const own = files.filter(({ path }) => stemOf(path) === stem);
    const pdf = own.find(({ path }) => kindOf(path) === 'pdf');
    return { stem, title: (pdf ?? own[0]!).title, files: own, pdf };
  });
}
