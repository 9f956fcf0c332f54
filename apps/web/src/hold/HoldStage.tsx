import { useCurrent } from '../app/useCurrent.ts';
import { StageFindings } from '../findings/StageFindings.tsx';
import { PanelDrawing } from '../panels/PanelDrawing.tsx';
import { useScopedChoices } from '../panels/scope.ts';
import { useWords } from '../text/useWords.ts';
import { HoldChoices } from './HoldChoices.tsx';
import { HoldEdges } from './HoldEdges.tsx';
import { HoldFigures } from './HoldFigures.tsx';

/** Where the panel is held, by what, and how surely. */
export function HoldStage() {
  const w = useWords();
  const current = useCurrent();
  const scoped = useScopedChoices();
  const { opening, panel, pattern, member, hold } = current;
  const own = hold?.openings.find((one) => one.opening === opening?.id);
  return (
    <div className="stage">
      <section className="stage-drawing" aria-label={w.hold.title}>
        {opening && panel && pattern && member && hold ? (
          <PanelDrawing
            panel={panel}
            pattern={pattern}
            member={member}
            hold={hold}
            obstructions={opening.obstructions}
            stale={current.stale}
          />
        ) : (
          <p className="empty">{w.hold.none}</p>
        )}
        {hold ? <HoldEdges hold={hold} /> : null}
      </section>
      <section className="stage-side">
        <h2>
          {w.hold.title}
          {opening ? `: ${opening.name}` : ''}
        </h2>
        {opening ? <StageFindings stage="hold" opening={opening.id} only="needs" /> : null}
        {own ? <HoldFigures hold={own} /> : null}
        <HoldChoices scoped={scoped} />
        {opening ? <StageFindings stage="hold" opening={opening.id} only="rest" /> : null}
      </section>
    </div>
  );
}
