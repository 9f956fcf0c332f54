import { label, lengthBetween, outlineSurvey } from '@panewright/design';
import type { ReadFile, ReadOutline } from '@panewright/files';
import { arcOf, bounds, edges } from '@panewright/geometry';
import { mm, ok, refuse } from '@panewright/quantity';
import { z } from 'zod';
import { english } from '../answers/english/english.ts';
import { makeShow } from '../answers/show.ts';
import type { Messages } from '../answers/words.ts';
import { base64, bytesOfBase64 } from '../base64.ts';
import { outlineSchema } from '../planSchema.ts';
import { utf8 } from '../utf8.ts';
import { computation } from './operation.ts';

const unit = z.enum(['mm', 'cm', 'dm', 'm', 'in', 'ft', 'yd', 'px', 'px90', 'px72', 'pt']);

const input = z.strictObject({
  name: label(200).describe('of the file, kept with the outline'),
  base64: z.string().max(22_000_000).describe('the file’s bytes: DXF, SVG or CSV'),
  unit: z.optional(unit).describe('what one unit of the file is; needed where the file does not say'),
  closeWithin: z.optional(lengthBetween(0, 20)).describe('ends this near are brought together, mm (0.5)'),
  arcTolerance: z
    .optional(lengthBetween(0.001, 10))
    .describe('splines and ellipses are drawn as arcs this near, mm (0.05)'),
  points: z
    .optional(z.enum(['trace', 'corners']))
    .describe('of a table: many traced points to be fitted (the default), or the corners of straight sides'),
  sigma: z
    .optional(lengthBetween(0, 100))
    .describe(
      'how far a drawn line may lie off the window, standard deviation, mm (0.5); traced points tell it themselves',
    ),
  date: z.optional(label(40)),
});

const size = z.number().describe('mm');
const output = z.strictObject({
  format: z.enum(['dxf', 'svg', 'csv']),
  unit,
  outlines: z.array(
    z.strictObject({
      name: z.string(),
      layer: z.string(),
      width: size,
      height: size,
      inner: z.int().describe('lines drawn within it: holes, sew lines, a second frame'),
      outline: outlineSchema,
      survey: outlineSurvey.describe('as an opening takes it'),
    }),
  ),
  notes: z.array(z.strictObject({ code: z.string(), say: z.string() })),
});

const EXAMPLE = `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="300mm" viewBox="0 0 400 300">
<path id="hatch" d="M0 0H400V260A40 40 0 0 1 360 300H0Z"/></svg>`;

export const readDrawing = computation({
  summary: 'Outlines in a drawing (DXF, SVG) or a table of points (CSV), ready to be an opening’s survey.',
  input,
  output,
  example: { name: 'hatch.svg', base64: base64(utf8(EXAMPLE)) },
  run: async (asked, { messages = english }) => {
    const { name } = asked;
    const bytes = bytesOfBase64(asked.base64);
    if (!bytes) return refuse({ code: 'BYTES_NOT_BASE64', name });
    // Loaded when first asked for: most jobs are taped.
    const { readOutlines } = await import('@panewright/files');
    const read = readOutlines(bytes, {
      closeWithin: mm(asked.closeWithin ?? 0.5),
      arcTolerance: mm(asked.arcTolerance ?? 0.05),
      ...(asked.unit === undefined ? {} : { unit: asked.unit }),
      ...(asked.points === undefined ? {} : { points: asked.points }),
    });
    if (!read.ok) return refuse({ code: 'DRAWING_REFUSED', name, refusal: read.refusal });
    return ok(answer(read.value, asked, messages));
  },
});

type Asked = z.output<typeof input>;

function answer(
  { format, unit: used, outlines, notes }: ReadFile,
  asked: Asked,
  messages: Messages,
): z.output<typeof output> {
  const show = makeShow({ units: used === 'in' ? 'in' : 'mm', language: messages.language });
  return {
    format,
    unit: used,
    outlines: outlines.map((one) => {
      const box = bounds(one.outline);
      return {
        name: one.name ?? '',
        layer: one.layer ?? '',
        width: box.width,
        height: box.height,
        inner: one.inner.length,
        outline: one.outline,
        survey: surveyOf(one, asked),
      };
    }),
    notes: notes.map((note) => ({ code: note.code, say: messages.fileNote(note, show) })),
  };
}

/** Traced points tell how well each edge is known; a drawn line is as good as the person says who drew it. */
function surveyOf({ outline, fit }: ReadOutline, asked: Asked): z.output<typeof outlineSurvey> {
  const told = asked.sigma ?? 0.5;
  return {
    method: 'outline',
    segments: edges(outline).map((edge, k) => {
      const { x, y } = edge.to;
      const fitted = fit?.edges[k];
      const sigma = Math.min(fitted?.offsetSigma ?? told, 100);
      if (!arcOf(edge)) return { kind: 'line', to: { x, y }, sigma };
      const radiusSigma =
        fitted?.radiusSigma === undefined ? {} : { radiusSigma: Math.min(fitted.radiusSigma, 1e4) };
      return { kind: 'arc', to: { x, y }, bulge: edge.bulge, sigma, ...radiusSigma };
    }),
    from: { kind: fit ? 'points' : 'file', name: asked.name, date: asked.date ?? '', note: '' },
  };
}
