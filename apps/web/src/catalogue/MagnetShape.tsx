import type { Catalogue } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import type { DocumentStore } from '../job/documentStore.ts';
import { useWords } from '../text/useWords.ts';
import { ItemField } from './ItemField.tsx';
import type { FieldSpec } from './lists.ts';

type Magnet = Catalogue['magnets'][number];

const SIZES: Readonly<Record<Magnet['shape']['kind'], readonly FieldSpec[]>> = {
  disc: [
    { at: 'diameter', label: 'diameter', kind: 'thin' },
    { at: 'thickness', label: 'magnetThickness', kind: 'thin' },
  ],
  block: [
    { at: 'width', label: 'width', kind: 'thin' },
    { at: 'height', label: 'height', kind: 'thin' },
    { at: 'thickness', label: 'magnetThickness', kind: 'thin' },
  ],
};
const FIRST: Readonly<Record<Magnet['shape']['kind'], Magnet['shape']>> = {
  disc: { kind: 'disc', diameter: 20, thickness: 5 },
  block: { kind: 'block', width: 40, height: 10, thickness: 4 },
};

interface Props {
  readonly document: DocumentStore<Catalogue>;
  readonly index: number;
  readonly magnet: Magnet;
}

/** A magnet's shape and its sizes. */
export function MagnetShape({ document, index, magnet }: Props) {
  const w = useWords();
  const key = `magnets.${magnet.id}.shape`;
  return (
    <div className="fields">
      <SelectField
        label={w.catalogue.item.shape}
        value={magnet.shape.kind}
        options={(['disc', 'block'] as const).map((value) => ({
          value,
          label: w.catalogue.item.shapes[value],
        }))}
        set={(kind) =>
          document.edit(`${key}.kind`, (draft) => void (draft.magnets[index]!.shape = { ...FIRST[kind] }))
        }
      />
      {SIZES[magnet.shape.kind].map((spec) => (
        <ItemField
          key={spec.at}
          document={document}
          spec={spec}
          item={magnet.shape}
          itemKey={key}
          itemIn={(draft) => draft.magnets[index]!.shape}
        />
      ))}
    </div>
  );
}
