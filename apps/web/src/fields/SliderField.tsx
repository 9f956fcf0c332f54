import type { ReactNode } from 'react';
import type { Problem } from '../job/documentStore.ts';
import { useWords } from '../text/useWords.ts';
import { Field } from './Field.tsx';
import type { ReadEntry } from './lengthEntry.ts';
import { type AnyDocument, useEntry } from './useEntry.ts';

interface Props {
  readonly document: AnyDocument;
  readonly entry: string;
  readonly label: string;
  /** In the document's unit; the slider runs from `least` to `most` in steps, the entry takes whatever the document does. */
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly set: (value: number) => Problem | null;
  readonly shown: string;
  readonly unit?: string | undefined;
  readonly read: (text: string) => ReadEntry;
  readonly say: (problem: Problem) => string;
  /** The value with its unit, for who hears the slider. */
  readonly heard: string;
  readonly beside?: ReactNode;
  readonly about?: ReactNode;
}

/** A slider with an exact entry beside it. One slide is one step of undo. */
export function SliderField(props: Props) {
  const { document, entry, label, value, least, most, step, set, shown, read, say, heard } = props;
  const w = useWords();
  const state = useEntry({
    document,
    entry,
    shown,
    take: (text) => {
      const found = read(text);
      if (!found.ok) return found.sentence;
      const problem = set(found.value);
      return problem ? say(problem) : null;
    },
  });
  return (
    <div className="slider-field">
      <Field
        entry={state}
        label={label}
        numeric
        unit={/[a-z°"']\s*$/i.test(state.text) ? undefined : props.unit}
        beside={props.beside}
        about={props.about}
      />
      <input
        type="range"
        aria-label={w.holding.sliders.slide(label)}
        aria-valuetext={heard}
        min={least}
        max={most}
        step={step}
        value={value}
        onChange={(event) => set(Number(event.target.value))}
        onPointerUp={() => document.settle()}
        onBlur={() => document.settle()}
      />
    </div>
  );
}
