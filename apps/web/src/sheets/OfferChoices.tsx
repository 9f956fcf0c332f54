import { type Catalogue, MOST_OFFERS, type Offer } from '../contract.ts';
import { CheckField } from '../fields/fields.tsx';
import { useCatalogue, useJob, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';

interface Choice {
  readonly offer: Offer;
  readonly name: string;
}

/** What the quote gives a price for besides the job as it is: other cloths and other fastenings of the catalogue. */
export function OfferChoices() {
  const w = useWords();
  const { job } = useWork();
  const catalogue = useCatalogue((all) => all);
  const choices = useJob((state) => state.document.choices);
  const chosen = useJob((state) => state.document.offers) ?? [];
  const isChosen = ({ offer }: Choice) => chosen.some((one) => same(one, offer));
  const all = choicesOf(catalogue).filter(
    (one) => isChosen(one) || !(one.offer.fabric === choices.fabric || heldSo(one.offer, choices.hold.by)),
  );
  const set = (offer: Offer, wanted: boolean) =>
    job.edit('offers', (draft) => {
      const others = (draft.offers ?? []).filter((one) => !same(one, offer));
      draft.offers = wanted ? [...others, offer] : others;
    });
  return (
    <>
      <p className="about">{w.sheets.offersAbout}</p>
      <div className="fields">
        {all.map((one) => (
          <CheckField
            key={JSON.stringify(one.offer)}
            label={one.name}
            value={isChosen(one)}
            disabled={!isChosen(one) && chosen.length >= MOST_OFFERS}
            set={(wanted) => set(one.offer, wanted)}
          />
        ))}
      </div>
    </>
  );
}

const same = (a: Offer, b: Offer): boolean => JSON.stringify(a) === JSON.stringify(b);

const heldSo = ({ hold }: Offer, by: NonNullable<Offer['hold']>['by']): boolean =>
  hold?.by !== undefined && JSON.stringify(hold.by) === JSON.stringify(by);

const choicesOf = ({ fabrics, steelStrips = [], fasteners = [] }: Catalogue): readonly Choice[] => [
  ...fabrics.map(({ id, name }) => ({ offer: { fabric: id }, name })),
  ...steelStrips.map(({ id, name }) => ({
    offer: { hold: { by: { kind: 'steel' as const, strip: id } } },
    name,
  })),
  ...fasteners.map(({ id, name }) => ({
    offer: { hold: { by: { kind: 'fastener' as const, fastener: id } } },
    name,
  })),
];
