import { placeAlong } from '../contract.ts';
import { Field } from '../fields/Field.tsx';
import { lengthEntry, readLengthEntry } from '../fields/lengthEntry.ts';
import { useEntry } from '../fields/useEntry.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useWork } from '../job/work.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import type { PointRef } from './handEdits.ts';
import type { HandPlacing } from './useHandPlacing.ts';
import type { HoldView } from './useHoldView.ts';

interface Props {
  readonly number: number;
  readonly pointRef: PointRef;
  readonly byHand: boolean;
  readonly hand: HandPlacing;
  readonly view: HoldView;
  /** To the next point, mm. */
  readonly next: number | null;
}

/** One point set by hand: its place exactly, away with it, back to the rule, one more after it. */
export function PointByHand({ number, pointRef, byHand, hand, view, next }: Props) {
  const w = useWords();
  const t = w.holding.hand;
  const half = next === null ? null : placeAlong(view.held.panel, pointRef.place, next / 2);
  return (
    <details className="by-hand">
      <summary>{t.at(view.placeOf(pointRef.place.on))}</summary>
      <PlaceField number={number} pointRef={pointRef} hand={hand} />
      <div className="buttons">
        <button
          type="button"
          className="quiet"
          aria-label={t.removeOf(number)}
          onClick={() => hand.remove(pointRef)}
        >
          {t.remove}
        </button>
        {byHand && pointRef.rule ? (
          <button
            type="button"
            className="quiet"
            aria-label={t.ruleOf(number)}
            onClick={() => hand.toRule(pointRef)}
          >
            {t.rule}
          </button>
        ) : null}
        {half ? (
          <button
            type="button"
            className="quiet"
            aria-label={t.addAfter(number)}
            onClick={() => hand.add(half)}
          >
            {t.add}
          </button>
        ) : null}
      </div>
    </details>
  );
}

/** Exactly where along its edge, from the corner the edge begins at, against the clock. */
function PlaceField({ number, pointRef, hand }: Pick<Props, 'number' | 'pointRef' | 'hand'>) {
  const w = useWords();
  const t = w.holding.hand;
  const units = useUnits();
  const { job } = useWork();
  const { place, rule } = pointRef;
  const state = useEntry({
    document: job,
    entry: `held.${rule ? `${rule.on}.${rule.index}` : place.on}`,
    shown: lengthEntry(place.at, units),
    take: (text) => {
      const read = readLengthEntry(text, units);
      if (!read.ok) return read.sentence;
      if (read.value < 0 || read.value > place.length) return t.offEdge(showLength(place.length, units));
      const to = { ...place, at: read.value, t: place.t - place.at + read.value };
      return hand.move(pointRef, to)?.sentence ?? null;
    },
  });
  return <Field entry={state} label={t.atOf(number)} numeric unit={w.fields.lengthUnit[units]} />;
}

/** What is true of all points set by hand: whom they serve, whose they are, what was taken away. */
export function HandNotes({ hand, view }: Pick<Props, 'hand' | 'view'>) {
  const w = useWords();
  const t = w.holding.hand;
  const members = view.held.pattern.members.map(({ opening }) => opening);
  return (
    <div className="hand-notes">
      <p className="about">
        {hand.elsewhere === null ? t.about : t.elsewhere(hand.elsewhere)}{' '}
        {members.length > 1 ? t.shared(members.join(', ')) : ''}
      </p>
      {hand.removed.map((rule) => {
        const place = view.placeOf(rule.on);
        return (
          <p key={`${rule.on} ${rule.index}`}>
            {t.removed(place)}{' '}
            <button
              type="button"
              className="quiet"
              aria-label={t.putBackOf(place)}
              onClick={() => hand.putBack(rule)}
            >
              {t.putBack}
            </button>
          </p>
        );
      })}
      {hand.placed.length > 0 || hand.elsewhere !== null ? (
        <button type="button" onClick={hand.allToRule}>
          {t.all}
        </button>
      ) : null}
    </div>
  );
}
