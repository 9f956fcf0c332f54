import { Link } from 'wouter';
import { useCurrent } from '../app/useCurrent.ts';
import type { PatternMember, PatternPlan } from '../contract.ts';
import { outlinePath } from '../drawing/outlinePath.ts';
import { boxAround, fitView } from '../drawing/view.ts';
import { useUnits } from '../fields/useUnits.ts';
import { StageFindings } from '../findings/StageFindings.tsx';
import { useCatalogue, useJob, usePlan, useWork } from '../job/work.ts';
import { MadeBefore } from '../kept/MadeBefore.tsx';
import { showLength, showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { PatternDrawing } from './PatternDrawing.tsx';
import { ShapeChoice } from './ShapeChoice.tsx';

/** Which openings share a pattern, which way up, and how nearly they agree. */
export function PatternsStage() {
  const w = useWords();
  const units = useUnits();
  const current = useCurrent();
  const patterns = usePlan((state) => state.plan?.patterns) ?? [];
  const tolerance = useCatalogue((catalogue) => catalogue.habits.patternTolerance);
  const laid = laidOver(current, patterns);
  const shape = current.plan?.shape;
  return (
    <div className="stage">
      <section className="stage-drawing" aria-label={w.patterns.title}>
        {laid && current.plan ? (
          <PatternDrawing {...laid} opening={current.plan} stale={current.stale} />
        ) : (
          <p className="empty">{w.patterns.empty}</p>
        )}
      </section>
      <section className="stage-side">
        <h2>{w.patterns.title}</h2>
        <p className="about">{w.patterns.about(showLength(tolerance, units, 32))}</p>
        <ul className="pattern-list">
          {patterns.map((pattern) => (
            <PatternCard key={pattern.pattern} pattern={pattern} selected={current.opening?.id} />
          ))}
        </ul>
        <StageFindings stage="patterns" />
        {current.opening && current.pattern && current.plan && shape ? (
          <MadeBefore
            key={current.opening.id}
            opening={current.opening}
            plan={{ ...current.plan, shape }}
            pattern={current.pattern}
          />
        ) : null}
      </section>
    </div>
  );
}

/** The pattern on the drawing: the one that serves the opening; where that is its own alone, one it nearly fits. */
function laidOver(
  { opening, pattern, member }: ReturnType<typeof useCurrent>,
  patterns: readonly PatternPlan[],
): { readonly pattern: PatternPlan; readonly member: PatternMember } | null {
  if (!pattern || !member) return null;
  if (pattern.members.length === 1)
    for (const other of patterns) {
      const miss = other.nearMisses.find((one) => one.opening === opening?.id);
      if (miss) return { pattern: other, member: miss };
    }
  return { pattern, member };
}

function PatternCard({
  pattern,
  selected,
}: {
  readonly pattern: PatternPlan;
  readonly selected: string | undefined;
}) {
  const w = useWords();
  const { id } = useWork();
  const openings = useJob((state) => state.document.openings);
  return (
    <li className="pattern-card">
      <PatternShape pattern={pattern} />
      <div>
        <h3>{w.patterns.one(pattern.pattern)}</h3>
        <ul>
          {pattern.members.map((member) => (
            <li key={member.opening}>
              <Link
                href={`/jobs/${id}/patterns/${member.opening}`}
                aria-current={member.opening === selected ? 'true' : undefined}
              >
                {member.opening} {openings.find((one) => one.id === member.opening)?.name}
              </Link>{' '}
              <span className="about">
                {placeWords(w, member)}
                {member.deviation > WORTH_A_WORD
                  ? `, ${w.patterns.worst(showSmall(member.deviation))}, ${w.patterns.known(showSmall(2 * member.sigma))}`
                  : ''}
              </span>
            </li>
          ))}
        </ul>
        {pattern.nearMisses.length > 0 ? <NearMisses pattern={pattern} /> : null}
        {pattern.members.length > 1 ? <ShapeChoice pattern={pattern} /> : null}
      </div>
    </li>
  );
}

/** Openings it nearly fits: the drawing of each shows where they part. */
function NearMisses({ pattern: { nearMisses, tolerance } }: { readonly pattern: PatternPlan }) {
  const w = useWords();
  const { id } = useWork();
  return (
    <>
      <p className="about">{w.patterns.nearly}</p>
      <ul>
        {nearMisses.map((miss) => (
          <li key={miss.opening}>
            <Link href={`/jobs/${id}/patterns/${miss.opening}`}>{miss.opening}</Link>{' '}
            <span className="about">
              {placeWords(w, miss)},{' '}
              {w.patterns.over(showSmall(miss.deviation), showSmall(miss.deviation - tolerance))},{' '}
              {w.patterns.known(showSmall(2 * miss.sigma))}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}

function PatternShape({ pattern }: { readonly pattern: PatternPlan }) {
  const view = fitView(boxAround([pattern.outline]), 96, 72, { x: 3, top: 3, bottom: 3 });
  return (
    <svg width={96} height={72} aria-hidden="true">
      <path d={outlinePath(pattern.outline)} transform={view.world} className="pattern-line" />
    </svg>
  );
}

/** A difference below this is none, mm. */
const WORTH_A_WORD = 0.005;

/** Turned less than this is not worth a word: the opening itself is hung no truer. */
const A_TURN = 1;

function placeWords(w: ReturnType<typeof useWords>, { turnedOver, place }: PatternMember): string {
  const degrees = (place.angle * 180) / Math.PI;
  const turned = Math.abs(degrees) > A_TURN ? [w.patterns.turned(Math.abs(degrees).toFixed(0))] : [];
  const words = [...(turnedOver ? [w.patterns.turnedOver] : []), ...turned];
  return words.length > 0 ? words.join(', ') : w.patterns.asIs;
}
