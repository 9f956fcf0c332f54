import type { OutlineSurvey, SurveySegment } from '@panewright/design';
import { edges } from '@panewright/geometry';
import type { Trace } from '@panewright/photo';
import type { TraceRequest } from './trace.ts';

/** How far an edge, and a radius, may be said to lie off in a job, mm. */
const MOST_SIGMA = 100;
const MOST_RADIUS_SIGMA = 10_000;

/** A traced outline as an opening takes it: how well each part is known goes with it, and what it rests on. */
export function tracedSurvey(
  traced: Trace,
  { photos, date, origin }: Pick<TraceRequest, 'photos' | 'date' | 'origin'>,
): OutlineSurvey {
  return {
    method: 'outline',
    segments: edges(traced.outline).map(({ to, bulge }, k): SurveySegment => {
      const { sigma, radius } = traced.edges[k]!;
      const place = { to: { x: to.x, y: to.y }, sigma: Math.min(sigma, MOST_SIGMA) };
      if (bulge === 0) return { kind: 'line', ...place };
      const radiusSigma = radius ? { radiusSigma: Math.min(radius.sigma, MOST_RADIUS_SIGMA) } : {};
      return { kind: 'arc', ...place, bulge, ...radiusSigma };
    }),
    sizeSigma: {
      width: Math.min(traced.width.sigma, MOST_SIGMA),
      height: Math.min(traced.height.sigma, MOST_SIGMA),
    },
    from: {
      kind: 'photo',
      name: plain(photos.map(({ name }) => name).join(', ')),
      date: date ?? '',
      note: '',
      ...(origin ? { photo: origin } : {}),
    },
  };
}

/** A file may have any name; a job keeps its plain part. */
const plain = (name: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
  name.replace(/[\u0000-\u001f\u007f]/g, ' ').slice(0, 200);
