import { bounds } from '@panewright/geometry';
import { mm, parseLength } from '@panewright/quantity';
import { adjustTape, type TapeAdjustment, type TapeReading } from '@panewright/survey';
import type { Catalogue } from '../document/catalogue.ts';
import { isZero } from '../document/isZero.ts';
import type { Opening, Reading, TapeSurvey } from '../document/job.ts';
import { figure } from '../plan/figure.ts';
import type { Find } from '../plan/finding.ts';
import type { OpeningCorner, OpeningShape, ReadingResult } from '../plan/plan.ts';
import { edgeNamesOf } from './edgeNames.ts';
import { refusalNumbers } from './refusalNumbers.ts';

/** Out of square by more than this at the end of the shorter side is worth a word, mm; the panel is cut as measured. */
const WORTH_A_WORD = 3;
/** A corner farther than this from a right angle was made so, degrees. */
const MEANT = 6;

/** The shape that taped sides, diagonals and radii give, or a finding that says why there is none. */
export function tapeShape(
  opening: Opening,
  survey: TapeSurvey,
  catalogue: Catalogue,
  find: Find,
): OpeningShape | null {
  const missing = missingReadings(survey);
  if (missing.length > 0) {
    find({
      severity: 'stop',
      code: 'READING_MISSING',
      where: { opening: opening.id },
      numbers: { readings: missing.join(' ') },
    });
    return null;
  }
  const adjusted = adjustTape({
    diagonalsTo: survey.diagonalsTo,
    readings: survey.readings.map((reading) => tapeReading(reading, catalogue)),
  });
  if (!adjusted.ok) {
    find({
      severity: 'stop',
      code: 'SURVEY_IMPOSSIBLE',
      where: { opening: opening.id },
      numbers: refusalNumbers(adjusted.refusal),
    });
    return null;
  }
  const shape = toShape(opening, adjusted.value);
  report(opening, survey, adjusted.value, find);
  return shape;
}

/** Four sides and every corner's radius are asked for; one diagonal at least gives the shape its angles. */
function missingReadings(survey: TapeSurvey): string[] {
  const have = new Set(survey.readings.map((reading) => reading.of));
  const asked = [
    'bottom',
    'right',
    'top',
    'left',
    'radiusBottomLeft',
    'radiusBottomRight',
    'radiusTopRight',
    'radiusTopLeft',
  ] as const;
  const missing: string[] = asked.filter((name) => !have.has(name));
  if (!have.has('rising') && !have.has('falling')) missing.push('rising');
  return missing;
}

function tapeReading(reading: Reading, catalogue: Catalogue): TapeReading {
  const radius = reading.of.startsWith('radius');
  const sigma = reading.sigma ?? (radius ? catalogue.habits.radiusSigma : catalogue.habits.tapeSigma);
  return { of: reading.of, value: mm(millimetresOf(reading)), sigma: mm(sigma), entered: reading.entered };
}

/** The schema has let only readable entries through. */
function millimetresOf(reading: Reading): number {
  if (isZero(reading.entered)) return 0;
  const length = parseLength(reading.entered, reading.unit);
  if (!length.ok) throw new Error(`reading ${reading.of} passed the schema but does not parse`);
  return length.value;
}

function toShape(opening: Opening, adjusted: TapeAdjustment): OpeningShape {
  const inputs = [`openings.${opening.id}.survey`];
  const corners = adjusted.corners.map(
    (corner): OpeningCorner => ({
      name: corner.of,
      at: corner.point,
      radius: figure(corner.radius, 'mm', 'measured', 'leastSquares', inputs, { sigma: corner.radiusSigma }),
      outOfSquare: (corner.outOfSquare * 180) / Math.PI,
    }),
  );
  const box = bounds(adjusted.outline);
  const sigmaOf = (side: 'bottom' | 'left') => adjusted.sides.find(({ of }) => of === side)!.sigma;
  const size = (value: number, sigma: number) =>
    figure(value, 'mm', 'measured', 'leastSquares', inputs, { sigma, source: 'ghilani' });
  const suspects = new Set(adjusted.suspects.map(({ index }) => index));
  return {
    outline: adjusted.outline,
    edgeNames: edgeNamesOf(adjusted.outline, corners),
    width: size(box.width, sigmaOf('bottom')),
    height: size(box.height, sigmaOf('left')),
    corners,
    readings: adjusted.readings.map(
      (reading): ReadingResult => ({
        of: reading.of,
        index: reading.index,
        read: reading.value,
        adjusted: reading.adjusted,
        residual: reading.residual,
        standardised: reading.standardised ?? null,
        suspect: suspects.has(reading.index),
      }),
    ),
    misclosure: Math.abs(adjusted.closingError?.error ?? 0),
    redundancy: adjusted.redundancy,
    sigma: Math.max(
      ...adjusted.sides.map((side) => side.offsetSigma),
      ...adjusted.corners.map((c) => c.sigma),
    ),
  };
}

function report(opening: Opening, survey: TapeSurvey, adjusted: TapeAdjustment, find: Find): void {
  const where = { opening: opening.id };
  if (adjusted.redundancy === 0) find({ severity: 'doubt', code: 'NO_CHECK_READING', where, numbers: {} });
  const [first, second] = adjusted.suspects;
  if (first) {
    find({
      severity: 'doubt',
      code: 'READING_SUSPECT',
      where: { ...where, item: first.of },
      numbers: {
        of: first.of,
        entered: survey.readings[first.index]!.entered,
        corrected: first.correctedReading,
        error: first.impliedError,
        cause: first.cause,
        confidence: first.confidence,
        ...(second
          ? {
              orOf: second.of,
              orEntered: survey.readings[second.index]!.entered,
              orCorrected: second.correctedReading,
            }
          : {}),
      },
    });
  } else if (adjusted.test && !adjusted.test.passes) {
    find({
      severity: 'doubt',
      code: 'READINGS_DISAGREE',
      where,
      numbers: { misclosure: Math.abs(adjusted.closingError?.error ?? 0) },
    });
  }
  const nearSquare = adjusted.corners.filter(
    ({ outOfSquare }) => Math.abs(outOfSquare) < (MEANT * Math.PI) / 180,
  );
  const worst = nearSquare.reduce<(typeof nearSquare)[number] | null>(
    (a, b) => (!a || Math.abs(b.outOfSquareOffset) > Math.abs(a.outOfSquareOffset) ? b : a),
    null,
  );
  if (worst && Math.abs(worst.outOfSquareOffset) > Math.max(WORTH_A_WORD, 2 * worst.outOfSquareOffsetSigma))
    find({
      severity: 'note',
      code: 'OUT_OF_SQUARE',
      where,
      numbers: {
        corner: worst.of,
        offset: worst.outOfSquareOffset,
        degrees: (worst.outOfSquare * 180) / Math.PI,
      },
    });
}
