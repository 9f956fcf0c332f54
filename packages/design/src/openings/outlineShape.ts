import {
  bounds,
  moveOutline,
  type Outline,
  point,
  type Segment,
  shiftBy,
  validate,
} from '@panewright/geometry';
import type { Opening, OutlineSurvey } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';
import type { OpeningShape } from '../plan/plan.ts';
import { anyShape } from './anyShape.ts';
import { refusalNumbers } from './refusalNumbers.ts';

/** The shape of an outline accepted from a photo, a file or points; a finding where it is no outline. */
export function outlineShape(opening: Opening, survey: OutlineSurvey, find: Find): OpeningShape | null {
  if (survey.segments.length === 0) {
    find({
      severity: 'stop',
      code: 'OUTLINE_MISSING',
      where: { opening: opening.id },
      numbers: { from: survey.from.kind },
    });
    return null;
  }
  const read = validate({
    segments: survey.segments.map((segment): Segment => {
      const to = point(segment.to.x, segment.to.y);
      return segment.kind === 'line' ? { kind: 'line', to } : { kind: 'arc', to, bulge: segment.bulge };
    }),
  });
  if (!read.ok) {
    find({
      severity: 'stop',
      code: 'SURVEY_IMPOSSIBLE',
      where: { opening: opening.id },
      numbers: refusalNumbers(read.refusal),
    });
    return null;
  }
  return {
    ...anyShape(atOrigin(read.value), {
      inputs: [`openings.${opening.id}.survey`],
      by: 'acceptedOutline',
      spread: survey.segments.map((segment) => ({
        sigma: segment.sigma,
        ...(segment.kind === 'arc' && segment.radiusSigma !== undefined
          ? { radiusSigma: segment.radiusSigma }
          : {}),
      })),
      sizeSigma: survey.sizeSigma,
    }),
    readings: [],
    misclosure: 0,
    redundancy: 0,
  };
}

function atOrigin(outline: Outline): Outline {
  const { minX, minY } = bounds(outline);
  return moveOutline(shiftBy(-minX, -minY), outline);
}
