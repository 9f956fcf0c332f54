import type { FontMetrics, Sheet } from '@panewright/drawing';
import { pageSvg } from './pageSvg.ts';

/** Pages as text that keep once what they have in common. */
export interface SharedPages {
  readonly parts: string[];
  /** Of each page the places of its parts, which make its text when put together in this order. */
  readonly pages: number[][];
}

/** Every page of a sheet as SVG text. Tiles of one pattern have nearly all in common. */
export function pagesSvg(sheet: Sheet, metrics: FontMetrics): SharedPages {
  const parts: string[] = [];
  const known = new Map<string, number>();
  const placeOf = (part: string): number => {
    const place = known.get(part) ?? parts.push(part) - 1;
    known.set(part, place);
    return place;
  };
  const pages = sheet.pages.map((_, page) =>
    pageSvg(sheet, page, metrics)
      .split(/(?<=>)(?=\s*<)/)
      .map(placeOf),
  );
  return { parts, pages };
}
