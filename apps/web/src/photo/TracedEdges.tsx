import { type SubmitEvent, useId, useState } from 'react';
import { useStore } from 'zustand';
import { arcOf, type HandChange, mm, surveyOutline } from '../contract.ts';
import { readNumber } from '../fields/numberEntry.ts';
import { useUnits } from '../fields/useUnits.ts';
import { sayRefused } from '../text/say.ts';
import { showLength, showNumber, showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { edgesOf, handOf } from './edgePixels.ts';
import type { PhotoWork } from './photoWork.ts';

/** Every edge with how well it is known, and what moves the chosen one by a number. */
export function TracedEdges({ work }: { readonly work: PhotoWork }) {
  const w = useWords();
  const units = useUnits();
  const { history, at, chosen, why } = useStore(work.store);
  const survey = history[at];
  if (!survey) return null;
  const all = edgesOf(surveyOutline(survey));
  return (
    <section>
      <p className="about">{w.photo.view.how}</p>
      <p className="buttons">
        <button type="button" disabled={at === 0} onClick={() => work.turn(-1)}>
          {w.photo.view.undo}
        </button>
        <button type="button" disabled={at === history.length - 1} onClick={() => work.turn(1)}>
          {w.photo.view.redo}
        </button>
      </p>
      <p className="needs" aria-live="polite">
        {why ? sayRefused(why, units) : null}
      </p>
      {chosen !== null && all[chosen] ? <ChosenEdge key={chosen} work={work} edge={chosen} /> : null}
      <h3>{w.photo.edges.title}</h3>
      <ul className="photo-edges">
        {survey.segments.map((segment, k) => {
          const radius = arcOf(all[k]!)?.radius;
          const radiusSigma = segment.kind === 'arc' ? segment.radiusSigma : undefined;
          return (
            // Edges keep their order and number.
            <li key={k}>
              <button
                type="button"
                aria-pressed={chosen === k}
                aria-label={w.photo.edges.choose(k + 1)}
                onClick={() => work.set({ chosen: k })}
              >
                {k + 1}
              </button>
              <span>
                {radius === undefined
                  ? w.photo.edges.kind.line
                  : `R ${showLength(radius, units)}${radiusSigma === undefined ? '' : ` ± ${showSmall(1.96 * radiusSigma)}`}`}
                , ± {showSmall(1.96 * segment.sigma)}
                {segment.byHand ? <b> {w.photo.edges.byHand}</b> : null}
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** Moves one edge by so many millimetres, or gives an arc another radius. */
function ChosenEdge({ work, edge: index }: { readonly work: PhotoWork; readonly edge: number }) {
  const w = useWords();
  const { history, at, outcome, shown } = useStore(work.store);
  const edge = edgesOf(surveyOutline(history[at]!))[index]!;
  const arc = arcOf(edge);
  if (outcome.kind !== 'traced') return null;
  // A number is typed against what is seen on the photo at its own size.
  const hand = handOf(outcome.traced.views[shown]!, edge, 1);
  const change = (one: HandChange) => work.change(one, hand);
  return (
    <fieldset>
      <legend>{w.photo.edges.chosen(index + 1)}</legend>
      <NumberForm
        label={w.photo.edges.outward}
        button={w.photo.edges.move}
        begin=""
        take={(value) => change({ kind: 'edge', edge: index, outward: mm(value) })}
      />
      {arc ? (
        <NumberForm
          label={w.photo.edges.newRadius}
          button={w.photo.edges.setRadius}
          begin={showNumber(arc.radius, 1)}
          take={(value) => change({ kind: 'radius', edge: index, radius: mm(value) })}
        />
      ) : null}
      <p className="about">{w.photo.edges.handAbout(showSmall(1.96 * hand))}</p>
    </fieldset>
  );
}

interface FormProps {
  readonly label: string;
  readonly button: string;
  readonly begin: string;
  readonly take: (value: number) => void;
}

function NumberForm({ label, button, begin, take }: FormProps) {
  const w = useWords();
  const id = useId();
  const [text, setText] = useState(begin);
  const [wrong, setWrong] = useState(false);
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    const read = readNumber(text);
    setWrong(!read.ok);
    if (read.ok) take(read.value);
  };
  return (
    <form className={`field${wrong ? ' field-wrong' : ''}`} onSubmit={submit}>
      <label htmlFor={id}>{label}</label>
      <span className="field-line">
        <input
          id={id}
          className="numeric"
          value={text}
          aria-invalid={wrong ? true : undefined}
          onChange={(event) => setText(event.target.value)}
        />
        <button type="submit">{button}</button>
      </span>
      {wrong ? (
        <p className="field-sentence" role="alert">
          {w.photo.edges.notNumber}
        </p>
      ) : null}
    </form>
  );
}
