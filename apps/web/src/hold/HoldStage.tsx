import { useState } from 'react';
import { useCurrent } from '../app/useCurrent.ts';
import { StageFindings } from '../findings/StageFindings.tsx';
import { PanelDrawing } from '../panels/PanelDrawing.tsx';
import { useScopedChoices } from '../panels/scope.ts';
import { useDrawnPanel } from '../panels/useDrawnPanel.ts';
import { useWords } from '../text/useWords.ts';
import { GlassSlider } from './GlassSlider.tsx';
import { BESIDE_CHOICE } from './HoldCautions.tsx';
import { HoldChoices } from './HoldChoices.tsx';
import { HoldFigures } from './HoldFigures.tsx';
import { HoldMarks, MarksKey } from './HoldMarks.tsx';
import { HoldPointTable } from './HoldPointTable.tsx';
import { StackSections } from './StackSections.tsx';
import { useHandPlacing } from './useHandPlacing.ts';
import { useHoldView } from './useHoldView.ts';
import { WhichMagnet } from './WhichMagnet.tsx';
import { WholeMargin } from './WholeMargin.tsx';
import { LateWindPlot } from './WindPlot.tsx';

/** Where the panel is held, by what, and how surely. */
export function HoldStage() {
  const w = useWords();
  const current = useCurrent();
  const scoped = useScopedChoices();
  const view = useHoldView();
  const hand = useHandPlacing(view);
  const [active, setActive] = useState<number | null>(null);
  const { opening, panel, pattern, member, hold } = current;
  useDrawnPanel(opening?.id);
  return (
    <div className="stage stage-tall">
      <section className="stage-drawing" aria-label={w.hold.title}>
        {opening && panel && pattern && member && hold ? (
          <PanelDrawing
            panel={panel}
            pattern={pattern}
            member={member}
            hold={hold}
            obstructions={opening.obstructions}
            stale={current.stale}
            caption={view ? <MarksKey asked={view.asked} /> : undefined}
            active={active}
            marks={
              view
                ? (drawn) => (
                    <HoldMarks
                      view={drawn}
                      place={member.place}
                      held={view}
                      hand={hand}
                      active={active}
                      setActive={setActive}
                    />
                  )
                : undefined
            }
          />
        ) : (
          <p className="empty">{w.hold.none}</p>
        )}
        {view ? <WholeMargin view={view} /> : null}
        {view ? <HoldPointTable view={view} hand={hand} active={active} setActive={setActive} /> : null}
        {view ? <LateWindPlot view={view} /> : null}
        {view ? <WhichMagnet key={opening?.id} opening={opening?.id} scoped={scoped} /> : null}
      </section>
      <section className="stage-side">
        <h2>
          {w.hold.title}
          {opening ? `: ${opening.name}` : ''}
        </h2>
        {opening ? (
          <StageFindings stage="hold" opening={opening.id} only="needs" without={BESIDE_CHOICE} />
        ) : null}
        <HoldChoices scoped={scoped} />
        {view ? <StackSections view={view} /> : null}
        {opening ? <GlassSlider opening={opening} /> : null}
        {view ? <HoldFigures held={view.held} /> : null}
        {opening ? (
          <StageFindings stage="hold" opening={opening.id} only="rest" without={BESIDE_CHOICE} />
        ) : null}
      </section>
    </div>
  );
}
