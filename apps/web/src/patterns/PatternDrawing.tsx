import type { OpeningPlan, PatternPlan } from '../contract.ts';
import { Drawing } from '../drawing/Drawing.tsx';
import { motionTransform, outlinePath } from '../drawing/outlinePath.ts';
import { boxAround } from '../drawing/view.ts';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly pattern: PatternPlan;
  /** The member it is laid over. */
  readonly opening: OpeningPlan;
  readonly stale: boolean;
}

/** The pattern laid over one opening it serves, turned over where it must be, with the place of the worst difference. */
export function PatternDrawing({ pattern, opening, stale }: Props) {
  const w = useWords();
  const member = pattern.members.find((one) => one.opening === opening.opening);
  if (!opening.shape || !member) return null;
  return (
    <Drawing
      box={boxAround([opening.shape.outline])}
      label={w.drawing.pattern(pattern.pattern)}
      stale={stale}
      caption={w.patterns.zoomed}
    >
      {(view) => {
        const worst = view.at(member.worstAt);
        return (
          <>
            <g transform={view.world}>
              <path d={outlinePath(opening.shape!.outline)} className="opening-line opening-large" />
              <g transform={motionTransform(member.place)}>
                <path d={outlinePath(pattern.outline)} className="pattern-line" />
              </g>
            </g>
            {member.deviation > 0 ? <circle cx={worst.x} cy={worst.y} r={11} className="worst-ring" /> : null}
          </>
        );
      }}
    </Drawing>
  );
}
