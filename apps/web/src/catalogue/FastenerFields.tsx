import type { Draft } from 'immer';
import type { Catalogue } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import type { DocumentStore } from '../job/documentStore.ts';
import { useWords } from '../text/useWords.ts';
import { ItemField } from './ItemField.tsx';
import type { FieldSpec } from './lists.ts';

type Fastener = NonNullable<Catalogue['fasteners']>[number];
type Strength = Fastener['strength'];

const KINDS = ['snap', 'hookAndLoop', 'turnButton', 'suctionCup'] as const;
const PIECES: FieldSpec = { at: 'pack.quantity', label: 'packCount', kind: 'count' };
const OWN: Readonly<Record<Fastener['kind'], readonly FieldSpec[]>> = {
  snap: [PIECES],
  turnButton: [PIECES],
  hookAndLoop: [
    { at: 'pack.quantity', label: 'packLength', kind: 'length' },
    { at: 'length', label: 'padLength', kind: 'length' },
    { at: 'width', label: 'width', kind: 'length' },
  ],
  suctionCup: [PIECES, { at: 'diameter', label: 'cupDiameter', kind: 'thin' }],
};
const FIRST = {
  snap: {},
  turnButton: {},
  hookAndLoop: { laid: 'run', length: 50, width: 20 },
  suctionCup: { diameter: 45 },
} as const;

const FIGURES: readonly FieldSpec[] = [
  { at: 'strength.pull.low', label: 'pullLow', kind: 'number' },
  { at: 'strength.pull.high', label: 'pullHigh', kind: 'number' },
  { at: 'strength.along.low', label: 'alongLow', kind: 'number' },
  { at: 'strength.along.high', label: 'alongHigh', kind: 'number' },
];
const WHOSE: Readonly<Record<Strength['by'], readonly FieldSpec[]>> = {
  unknown: [],
  shop: [...FIGURES, { at: 'strength.tested', label: 'tested', kind: 'text' }],
  source: [...FIGURES, { at: 'strength.source', label: 'strengthSource', kind: 'text' }],
};

interface Props {
  readonly document: DocumentStore<Catalogue>;
  readonly index: number;
  readonly fastener: Fastener;
}

/** What kind a fastener is, what belongs to that kind, and how much it holds and who says so. */
export function FastenerFields({ document, index, fastener }: Props) {
  const w = useWords();
  const t = w.catalogue.item;
  const key = `fasteners.${fastener.id}`;
  const itemIn = (draft: Draft<Catalogue>) => draft.fasteners![index]!;
  const field = (spec: FieldSpec) => (
    <ItemField key={spec.at} document={document} spec={spec} item={fastener} itemKey={key} itemIn={itemIn} />
  );
  return (
    <>
      <div className="fields">
        <SelectField
          label={t.fastenerKind}
          value={fastener.kind}
          options={KINDS.map((value) => ({ value, label: t.fastenerKinds[value] }))}
          set={(kind) =>
            document.edit(`${key}.kind`, (draft) => {
              draft.fasteners![index] = ofKind(fastener, kind);
            })
          }
        />
        {fastener.kind === 'hookAndLoop' ? (
          <SelectField
            label={t.laid}
            value={fastener.laid}
            options={(['run', 'pads'] as const).map((value) => ({ value, label: t.laids[value] }))}
            set={(laid) =>
              document.edit(`${key}.laid`, (draft) => void Object.assign(itemIn(draft), { laid }))
            }
          />
        ) : null}
        {OWN[fastener.kind].map(field)}
      </div>
      <div className="fields">
        <SelectField
          label={t.strength}
          value={fastener.strength.by}
          options={(['unknown', 'shop', 'source'] as const).map((value) => ({
            value,
            label: t.strengths[value],
          }))}
          set={(by) =>
            document.edit(`${key}.strength.by`, (draft) => {
              itemIn(draft).strength = strengthBy(fastener.strength, by);
            })
          }
        />
        {WHOSE[fastener.strength.by].map(field)}
        <p className="about field-wide">
          {fastener.strength.by === 'unknown' ? t.strengthUnknown : t.strengthAbout}
        </p>
      </div>
    </>
  );
}

/** The same fastener as another kind: what all kinds have stays. */
function ofKind(fastener: Fastener, kind: Fastener['kind']): Fastener {
  const { id, name, supplier, spacing, beyond, inset, face, strength, pack, fixings } = fastener;
  const common = { id, name, supplier, spacing, beyond, inset, face, strength, pack, fixings };
  return { ...common, kind, ...FIRST[kind] } as Fastener;
}

/** Figures typed before stay when it is said whose they are; from unknown they begin at a newton, to be typed over. */
function strengthBy(before: Strength, by: Strength['by']): Strength {
  if (by === 'unknown') return { by };
  const one = { low: 1, high: 1 };
  const { pull, along } = before.by === 'unknown' ? { pull: one, along: one } : before;
  return by === 'shop' ? { by, pull, along, tested: '' } : { by, pull, along, source: '?' };
}
