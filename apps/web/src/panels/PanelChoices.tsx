import type { Finish } from '../contract.ts';
import { LengthField, SelectField } from '../fields/fields.tsx';
import { useCatalogue, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { OwnChoice, ScopeSwitch } from './ScopeSwitch.tsx';
import type { ScopedChoices } from './scope.ts';

const GRAINS = ['either', 'warpUp', 'warpAcross'] as const;
const FINISHES = ['binding', 'hem', 'hotCut'] as const;

/** Cloth, grain, fit allowance and edge finish. */
export function PanelChoices({
  scoped,
  edges,
}: {
  readonly scoped: ScopedChoices;
  readonly edges: readonly string[];
}) {
  const w = useWords();
  const { job } = useWork();
  const fabrics = useCatalogue((catalogue) => catalogue.fabrics);
  const { choices } = scoped;
  return (
    <section>
      <h3>{w.panels.choices}</h3>
      <ScopeSwitch scoped={scoped} />
      <div className="fields">
        <SelectField
          label={w.panels.fabric}
          value={choices.fabric}
          options={fabrics.map(({ id, name }) => ({ value: id, label: name }))}
          set={(value) => scoped.set('fabric', value)}
          beside={<OwnChoice scoped={scoped} of="fabric" label={w.panels.fabric} />}
        />
        <SelectField
          label={w.panels.grain}
          value={choices.grain}
          options={GRAINS.map((value) => ({ value, label: w.panels.grains[value] }))}
          set={(value) => scoped.set('grain', value)}
          beside={<OwnChoice scoped={scoped} of="grain" label={w.panels.grain} />}
        />
        <LengthField
          document={job}
          entry={scoped.keyOf('fit.all')}
          label={w.panels.fit}
          about={w.panels.fitAbout}
          value={choices.fit.all}
          set={(all) => scoped.set('fit', { ...choices.fit, all })}
          beside={<OwnChoice scoped={scoped} of="fit" label={w.panels.fit} />}
        />
        <EdgeAllowances scoped={scoped} edges={edges} />
        <FinishFields scoped={scoped} />
      </div>
    </section>
  );
}

function EdgeAllowances({
  scoped,
  edges,
}: {
  readonly scoped: ScopedChoices;
  readonly edges: readonly string[];
}) {
  const w = useWords();
  const { job } = useWork();
  const { fit } = scoped.choices;
  const names = [
    ...new Set([...edges.filter((name) => !name.startsWith('corner:')), ...Object.keys(fit.edges)]),
  ];
  const label = (name: string) =>
    w.panels.fitEdge(w.edges[name as keyof typeof w.edges] ?? w.sideNumber(name));
  return (
    <details className="field-wide" open={Object.keys(fit.edges).length > 0}>
      <summary>{w.panels.fitEdges}</summary>
      <div className="fields">
        {names.map((name) => (
          <LengthField
            key={name}
            document={job}
            entry={scoped.keyOf(`fit.${name}`)}
            label={label(name)}
            className="field-short"
            value={fit.edges[name] ?? fit.all}
            set={(value) => scoped.set('fit', { ...fit, edges: { ...fit.edges, [name]: value } })}
            beside={
              name in fit.edges ? (
                <button
                  type="button"
                  className="quiet"
                  onClick={() => scoped.set('fit', withoutEdge(fit, name))}
                >
                  {w.app.remove}
                </button>
              ) : null
            }
          />
        ))}
      </div>
    </details>
  );
}

function FinishFields({ scoped }: { readonly scoped: ScopedChoices }) {
  const w = useWords();
  const { job } = useWork();
  const bindings = useCatalogue((catalogue) => catalogue.bindings);
  const { finish } = scoped.choices;
  const finishes: Readonly<Record<Finish['kind'], Finish>> = {
    binding: { kind: 'binding', binding: bindings[0]?.id ?? 'binding' },
    hem: { kind: 'hem', width: 19.05 },
    hotCut: { kind: 'hotCut' },
  };
  return (
    <>
      <SelectField
        label={w.panels.finish}
        value={finish.kind}
        options={FINISHES.map((value) => ({ value, label: w.panels.finishes[value] }))}
        set={(kind) => scoped.set('finish', finishes[kind])}
        beside={<OwnChoice scoped={scoped} of="finish" label={w.panels.finish} />}
      />
      {finish.kind === 'binding' ? (
        <SelectField
          label={w.panels.binding}
          value={finish.binding}
          options={bindings.map(({ id, name }) => ({ value: id, label: name }))}
          set={(binding) => scoped.set('finish', { kind: 'binding', binding })}
        />
      ) : null}
      {finish.kind === 'hem' ? (
        <LengthField
          document={job}
          entry={scoped.keyOf('finish.width')}
          label={w.panels.hemWidth}
          value={finish.width}
          set={(width) => scoped.set('finish', { kind: 'hem', width })}
        />
      ) : null}
      {finish.kind === 'hotCut' ? <p className="caution field-wide">{w.panels.hotKnife}</p> : null}
    </>
  );
}

function withoutEdge(fit: ScopedChoices['choices']['fit'], name: string): ScopedChoices['choices']['fit'] {
  const { [name]: _gone, ...edges } = fit.edges;
  return { ...fit, edges };
}
