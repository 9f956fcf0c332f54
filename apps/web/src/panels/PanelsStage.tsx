import { Consequences } from '../app/Consequences.tsx';
import { useCurrent } from '../app/useCurrent.ts';
import type { PanelPlan } from '../contract.ts';
import { FigureList } from '../fields/FigureList.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { StageFindings } from '../findings/StageFindings.tsx';
import { PhotoPicture } from '../picture/PhotoPicture.tsx';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { PanelChoices } from './PanelChoices.tsx';
import { PanelDrawing } from './PanelDrawing.tsx';
import { useScopedChoices } from './scope.ts';
import { useDrawnPanel } from './useDrawnPanel.ts';

const SIDES = ['bottom', 'right', 'top', 'left'];

/** The finished panel of the chosen opening, and the choices that make it. */
export function PanelsStage() {
  const w = useWords();
  const current = useCurrent();
  const scoped = useScopedChoices();
  const { opening, panel, pattern, member } = current;
  useDrawnPanel(opening?.id);
  return (
    <div className="stage">
      <section className="stage-drawing" aria-label={w.panels.title}>
        {panel && pattern && member ? (
          <PanelDrawing
            panel={panel}
            pattern={pattern}
            member={member}
            obstructions={opening!.obstructions}
            stale={current.stale}
          />
        ) : (
          <p className="empty">{w.panels.none}</p>
        )}
        {panel ? <PhotoPicture /> : null}
      </section>
      <section className="stage-side">
        <h2>
          {w.panels.title}
          {opening ? `: ${opening.name}` : ''}
        </h2>
        {opening ? <StageFindings stage="panels" opening={opening.id} /> : null}
        {opening ? <Consequences opening={opening.id} /> : null}
        <PanelChoices scoped={scoped} edges={current.plan?.shape?.edgeNames ?? SIDES} />
        {panel ? <PanelFigures panel={panel} /> : null}
      </section>
    </div>
  );
}

function PanelFigures({ panel }: { readonly panel: PanelPlan }) {
  const w = useWords();
  const units = useUnits();
  const { edging } = panel;
  const start = edging.kind === 'binding' ? edging.startsAt.edge : '';
  return (
    <section>
      <h3>{w.panels.figures}</h3>
      <FigureList
        rows={[
          [w.panels.finishedWidth, panel.finishedWidth],
          [w.panels.finishedHeight, panel.finishedHeight],
          [w.panels.cutWidth, panel.cutWidth],
          [w.panels.cutHeight, panel.cutHeight],
          [w.panels.area, panel.area],
          [w.panels.mass, panel.mass],
          ...(panel.bandWidth > 0
            ? ([[w.panels.band, showLength(panel.bandWidth, units, 32)]] as const)
            : []),
          [w.panels.run, edging.run],
          ...(edging.kind === 'binding'
            ? ([
                [w.panels.bindingCut, edging.cutLength],
                [w.panels.overlap, showLength(edging.overlap, units)],
                [
                  w.panels.startsAt,
                  w.panels.startsOn(w.edges[start as keyof typeof w.edges] ?? w.sideNumber(start)),
                ],
              ] as const)
            : []),
        ]}
      />
    </section>
  );
}
