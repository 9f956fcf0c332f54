import type { OutlineSurvey } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { shownReading } from '../openings/readingEdits.ts';
import { showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';

/** Where an outline came from: its photos, sheets, tapes and bars, how well it is known, and what was moved by hand. */
export function PhotoOriginWords({ survey }: { readonly survey: OutlineSurvey }) {
  const w = useWords();
  const units = useUnits();
  const { from, segments } = survey;
  const { photo } = from;
  const worst = Math.max(...segments.map(({ sigma }) => sigma));
  const byHand = segments.filter((one) => one.byHand).length;
  const taped = photo?.tapes.filter(({ read }) => read).length ?? 0;
  const ruled = photo?.ruled;
  const details = photo
    ? [
        w.photo.from.sheets(photo.paper),
        taped === 0 ? w.photo.from.noTape : w.photo.from.tapes(taped),
        ruled?.x && ruled.y
          ? w.photo.from.ruled(shownReading(ruled.x, units), shownReading(ruled.y, units))
          : w.photo.from.notRuled,
        ...(photo.shownByHand ? [w.photo.from.shown] : []),
        ...(byHand > 0 ? [w.photo.from.byHand(byHand)] : []),
      ].join('; ')
    : '';
  return (
    <section>
      <h3>{w.photo.from.title}</h3>
      <p>
        {w.photo.from.said(from.name, from.date)}{' '}
        {w.photo.from.edges(segments.length, showSmall(1.96 * worst))}
      </p>
      {details ? <p className="about">{details}.</p> : null}
    </section>
  );
}
