import type { OpeningPlan, PatternMember, PatternPlan } from '../contract.ts';
import { Drawing } from '../drawing/Drawing.tsx';
import { motionTransform, outlinePath } from '../drawing/outlinePath.ts';
import { boxAround } from '../drawing/view.ts';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly pattern: PatternPlan;
  /** How it is laid over the opening: one it serves, or one it nearly fits. */
  readonly member: PatternMember;
  readonly opening: OpeningPlan;
  readonly stale: boolean;
}

/** The pattern laid over one opening it serves or nearly fits, turned over where it must be, with the place of the worst difference. */
export function PatternDrawing({ pattern, member, opening, stale }: Props) {
  const w = useWords();
  if (!opening.shape) return null;
  const serves = pattern.members.includes(member);
  return (
    <Drawing
      box={boxAround([opening.shape.outline])}
      label={w.drawing.pattern(pattern.pattern)}
      stale={stale}
      caption={serves ? w.patterns.zoomed : w.patterns.zoomedMiss(pattern.pattern)}
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
