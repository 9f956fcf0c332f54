import type { ReactNode } from 'react';
import type { KeptPattern, Outline } from '../contract.ts';
import { outlinePath } from '../drawing/outlinePath.ts';
import { boxAround, fitView } from '../drawing/view.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showSize, showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import type { FoundPattern } from './useKept.ts';

interface Props {
  readonly found: FoundPattern;
  /** Rank of its name among the headings of the page. */
  readonly heading?: 'h2' | 'h3';
  readonly children?: ReactNode;
}

/** One kept pattern: its shape, its size, where it came from, and what can be done with it. */
export function KeptCard({ found, heading: Heading = 'h2', children }: Props) {
  const w = useWords();
  const units = useUnits();
  const { pattern, width, height } = found;
  const { from } = pattern;
  const openings = from.openings.map(({ id, name, turnedOver }) => {
    const one = `${id} ${name}`.trim();
    return turnedOver ? w.kept.openingOver(one) : one;
  });
  const sigma = Math.max(...pattern.segments.map((one) => one.sigma));
  return (
    <li className="kept-card">
      <KeptShape pattern={pattern} />
      <div>
        <Heading>{pattern.name}</Heading>
        <p>{w.kept.known(showSize(width, height, units), showSmall(sigma))}</p>
        <p className="about">
          {w.kept.from(from.jobName, openings.join(', '))}{' '}
          {w.kept.site(w.job.kinds[from.site.kind], from.site.name, from.customer)};{' '}
          {w.kept.kept(from.date, w.kept.method[from.method], from.revision)}
        </p>
        {pattern.notes ? <p>{pattern.notes}</p> : null}
        {children}
      </div>
    </li>
  );
}

function KeptShape({ pattern }: { readonly pattern: KeptPattern }) {
  const w = useWords();
  // What is kept was read as an outline, so there is a first segment.
  const outline = { segments: pattern.segments } as unknown as Outline;
  const view = fitView(boxAround([outline]), 120, 90, { x: 3, top: 3, bottom: 3 });
  return (
    <svg width={120} height={90} role="img" aria-label={w.kept.drawing(pattern.name)}>
      <path d={outlinePath(outline)} transform={view.world} className="pattern-line" />
    </svg>
  );
}
