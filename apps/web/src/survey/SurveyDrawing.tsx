import type { MarksSurvey, Opening, OpeningPlan, SurveyedPoint } from '../contract.ts';
import { Drawing } from '../drawing/Drawing.tsx';
import { outlinePath } from '../drawing/outlinePath.ts';
import { type Box, boxAround, type View } from '../drawing/view.ts';
import { useUnits } from '../fields/useUnits.ts';
import { HandledObstructions } from '../openings/HandledObstructions.tsx';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { wayOf } from './surveyOf.ts';

interface Props {
  readonly opening: Opening;
  readonly plan: OpeningPlan | undefined;
  readonly stale: boolean;
}

/** An opening of any outline: the marks, points and tapes it was measured by, and the outline they give. */
export function SurveyDrawing({ opening, plan, stale }: Props) {
  const w = useWords();
  const units = useUnits();
  const shape = plan?.shape ?? null;
  const points = plan?.points ?? [];
  if (!shape && points.length === 0)
    return (
      <p className="empty">
        {opening.survey.method === 'marks'
          ? w.survey.teachMarks
          : wayOf(opening) === 'photo'
            ? w.photo.teach
            : w.survey.teachFile}
      </p>
    );
  const label = shape
    ? w.drawing.opening(
        opening.name,
        showLength(shape.width.value, units),
        showLength(shape.height.value, units),
      )
    : w.survey.pointsOnly;
  return (
    <Drawing
      box={boxOf(points, shape ? boxAround([shape.outline]) : null)}
      label={label}
      stale={stale}
      handled
      caption={shape ? w.drawing.seenFrom : w.survey.pointsOnly}
    >
      {(view) => (
        <>
          <g transform={view.world}>
            {shape ? <path d={outlinePath(shape.outline)} className="opening-line opening-large" /> : null}
            {opening.survey.method === 'marks' ? (
              <Tapes survey={opening.survey} points={points} suspects={suspectsOf(plan)} />
            ) : null}
          </g>
          <Places points={points} view={view} />
          <HandledObstructions opening={opening} box={view.box} view={view} />
        </>
      )}
    </Drawing>
  );
}

const suspectsOf = (plan: OpeningPlan | undefined): ReadonlySet<number> =>
  new Set(plan?.shape?.readings.flatMap((one) => (one.suspect ? [one.index] : [])));

interface TapesProps {
  readonly survey: MarksSurvey;
  readonly points: readonly SurveyedPoint[];
  readonly suspects: ReadonlySet<number>;
}

function Tapes({ survey, points, suspects }: TapesProps) {
  const at = new Map(points.map((one) => [one.name, one.at]));
  return survey.distances.map(({ from, to }, index) => {
    const [a, b] = [at.get(from), at.get(to)];
    if (!a || !b) return null;
    const state = suspects.has(index) ? ' tape-suspect' : '';
    return (
      <line
        // Two tapes may have the same ends.
        key={index}
        x1={a.x}
        y1={a.y}
        x2={b.x}
        y2={b.y}
        className={`tape-line${state}`}
      />
    );
  });
}

/** Marks as crosses, points as dots, with their names; a weak one is ringed. */
function Places({ points, view }: { readonly points: readonly SurveyedPoint[]; readonly view: View }) {
  return points.map(({ name, kind, at, weak }) => {
    const { x, y } = view.at(at);
    return (
      <g key={name} className={weak ? 'survey-place survey-weak' : 'survey-place'}>
        {kind === 'mark' ? (
          <path d={`M${x - 6} ${y}h12M${x} ${y - 6}v12`} className="survey-mark" />
        ) : (
          <circle cx={x} cy={y} r={3.5} className="survey-point" />
        )}
        {weak ? <circle cx={x} cy={y} r={9} className="survey-ring" /> : null}
        <text x={x + 8} y={y - 8}>
          {name}
        </text>
      </g>
    );
  });
}

function boxOf(points: readonly SurveyedPoint[], around: Box | null): Box {
  const xs = [...points.map(({ at }) => at.x), ...(around ? [around.minX, around.maxX] : [])];
  const ys = [...points.map(({ at }) => at.y), ...(around ? [around.minY, around.maxY] : [])];
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
}
