import type { LayPlan } from '../contract.ts';
import { CheckField, SelectField } from '../fields/fields.tsx';
import { useWords } from '../text/useWords.ts';
import { pieceOf, turned } from './layEdits.ts';
import { PlaceEntry } from './PlaceEntry.tsx';
import type { LayOnPage } from './useLay.ts';

/** The chosen piece's place, exactly; and what can be done with the whole lay. */
export function LayHand({ lay, page }: { readonly lay: LayPlan; readonly page: LayOnPage }) {
  const w = useWords();
  const any = page.places.some((place) => place.held);
  return (
    <fieldset>
      <legend>{w.lay.byHand}</legend>
      <p className="about">
        {w.lay.help} {w.lay.pushAbout}
      </p>
      <Chosen page={page} />
      <p aria-live="polite">{page.said}</p>
      <div className="buttons">
        <button type="button" disabled={!any} onClick={page.layRest}>
          {w.lay.rest}
        </button>
        <button type="button" onClick={page.push}>
          {w.lay.push}
        </button>
        <button type="button" onClick={() => page.hold(() => !any)}>
          {any ? w.lay.letGo : w.lay.holdAll}
        </button>
        {lay.byHand ? (
          <button type="button" onClick={page.letGo}>
            {w.lay.own}
          </button>
        ) : null}
      </div>
    </fieldset>
  );
}

function Chosen({ page }: { readonly page: LayOnPage }) {
  const w = useWords();
  const index = page.chosen;
  const place = index === null ? undefined : page.places[index];
  if (index === null || !place) return <p>{w.lay.none}</p>;
  const piece = pieceOf(page.frame, place);
  return (
    <>
      <p>
        <b>{w.lay.chosen(page.nameOf(place))}</b>
      </p>
      <div className="fields">
        {(['x', 'y'] as const).map((axis) => (
          <PlaceEntry
            key={axis}
            label={axis === 'x' ? w.lay.along : w.lay.across}
            value={place[axis]}
            set={(value) => page.put(index, { ...place, [axis]: value })}
          />
        ))}
        <SelectField
          label={w.lay.turn}
          className="field-short"
          value={`${place.turn}`}
          options={(piece?.turns ?? []).map((turn) => ({ value: `${turn}`, label: w.lay.degrees(turn) }))}
          set={(value) => page.put(index, turned(page.frame, place, { turn: Number(value) }))}
        />
        {piece?.mayFlip ? (
          <CheckField
            label={w.lay.flipped}
            value={place.flipped}
            set={(flipped) => page.put(index, turned(page.frame, place, { flipped }))}
          />
        ) : null}
        <CheckField
          label={w.lay.held}
          value={place.held}
          set={(held) => page.hold((one, k) => (k === index ? held : one.held))}
        />
      </div>
    </>
  );
}
