import type { Opening } from '../contract.ts';
import { lengthEntry, readLengthEntry, sayInUnit } from '../fields/lengthEntry.ts';
import { SliderField } from '../fields/SliderField.tsx';
import { useWork } from '../job/work.ts';
import { openingIn } from '../openings/readingEdits.ts';
import { showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';

/** The pane that makes most of the gap, to be slid: what another glass would do. */
export function GlassSlider({ opening }: { readonly opening: Opening }) {
  const w = useWords();
  const t = w.holding.section;
  const { job } = useWork();
  const { layers } = opening.glazing;
  const thickest = layers.reduce(
    (best, layer, k) => (layer.thickness > layers[best]!.thickness ? k : best),
    0,
  );
  const { thickness } = layers[thickest]!;
  const entry = `openings.${opening.id}.glazing.layers.${thickest}.thickness`;
  return (
    <SliderField
      document={job}
      entry={entry}
      label={t.glassOf(opening.id)}
      value={thickness}
      least={1}
      most={25}
      step={0.25}
      set={(value) =>
        job.edit(entry, (draft) => {
          openingIn(draft, opening.id).glazing.layers[thickest]!.thickness = value;
        })
      }
      shown={lengthEntry(thickness, 'mm')}
      unit="mm"
      read={(text) => readLengthEntry(text, 'mm')}
      say={(problem) => sayInUnit(problem, 'mm') ?? problem.sentence}
      heard={showSmall(thickness)}
      about={t.glassTry}
    />
  );
}
