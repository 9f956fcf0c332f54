import {
  area,
  bounds,
  length,
  type OffsetRing,
  type Outline,
  offsetOne,
  offsetTraced,
  pointAt,
} from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import type { Materials } from '../derive/materials.ts';
import type { Catalogue } from '../document/catalogue.ts';
import { allowanceOf } from '../patterns/grouping.ts';
import { figure } from '../plan/figure.ts';
import type { Find } from '../plan/finding.ts';
import type { EdgingPlan, OpeningPlan, PanelPlan, PatternPlan } from '../plan/plan.ts';
import { cornerName, cornersAndSides } from './cornersAndEdges.ts';

/** The finished panel of a pattern; null where its allowances leave none (a finding says so). */
export function panelPlan(
  pattern: PatternPlan,
  master: OpeningPlan,
  materials: Materials,
  catalogue: Catalogue,
  find: Find,
): PanelPlan | null {
  const allowances = pattern.edgeNames.map((name) => mm(allowanceOf(master, name)));
  const rings = offsetTraced(pattern.outline, allowances);
  if (!rings.ok) return impossible(pattern, 'finished', rings.refusal.code, find);
  const [ring, ...others] = rings.value;
  if (!ring) return impossible(pattern, 'finished', 'OFFSET_VANISHES', find);
  if (others.length > 0) return impossible(pattern, 'finished', 'OFFSET_SPLITS', find);
  const finished = ring.outline;
  const lines = edgeLines(finished, master, materials, catalogue);
  if ('refused' in lines) return impossible(pattern, lines.refused, lines.code, find);
  const edgeNames = namesFrom(pattern, ring);
  const panel = assemble(pattern, master, materials, finished, edgeNames, lines, catalogue);
  reportUnknownEdges(pattern, master, find);
  reportEdge(panel, materials, find);
  return panel;
}

interface EdgeLines {
  readonly cut: Outline;
  readonly stitch: readonly Outline[];
  readonly band: Outline | null;
  readonly bandWidth: number;
}

/**
 * Cut line, stitch line and visible band of an edge finish. A centrefold takes its own thickness at the cloth's edge and
 * shows half its flat width; a hem is folded once and cut its width beyond the finished edge; a hot-cut edge is the edge.
 *
 * @source common practice, no source
 */
function edgeLines(
  finished: Outline,
  master: OpeningPlan,
  materials: Materials,
  catalogue: Catalogue,
): EdgeLines | { readonly refused: string; readonly code: string } {
  const { finish } = master.choices;
  if (finish.kind === 'hotCut') return { cut: finished, stitch: [], band: null, bandWidth: 0 };
  const binding = materials.binding;
  const bandWidth = finish.kind === 'binding' ? binding!.flatWidth / 2 : finish.width;
  const beyond = finish.kind === 'binding' ? -binding!.thickness : finish.width;
  const cut = offsetOne(finished, mm(beyond));
  if (!cut.ok) return { refused: 'cut', code: cut.refusal.code };
  const band = offsetOne(finished, mm(-bandWidth));
  if (!band.ok) return { refused: 'band', code: band.refusal.code };
  const stitch = offsetOne(finished, mm(-Math.max(bandWidth - catalogue.habits.stitchInset, bandWidth / 2)));
  if (!stitch.ok) return { refused: 'stitch', code: stitch.refusal.code };
  return { cut: cut.value, stitch: [stitch.value], band: band.value, bandWidth };
}

function impossible(pattern: PatternPlan, line: string, code: string, find: Find): null {
  find({
    severity: 'stop',
    code: 'PANEL_IMPOSSIBLE',
    where: { pattern: pattern.pattern, opening: pattern.members[0]!.opening },
    numbers: { line, refusal: code },
  });
  return null;
}

/** A finished edge has the name of the pattern's edge it comes from; one put in at a joint, those of both its neighbours. */
function namesFrom(pattern: PatternPlan, ring: OffsetRing): readonly string[] {
  const names = pattern.edgeNames;
  return ring.origins.map(({ kind, index }) =>
    kind === 'edge' ? names[index]! : `corner:${names[index]!}-${names[(index + 1) % names.length]!}`,
  );
}

function assemble(
  pattern: PatternPlan,
  master: OpeningPlan,
  materials: Materials,
  finished: Outline,
  edgeNames: readonly string[],
  lines: EdgeLines,
  catalogue: Catalogue,
): PanelPlan {
  const finishedBox = bounds(finished);
  const cutBox = bounds(lines.cut);
  const shape = [`patterns.${pattern.pattern}`, `choices.fit`];
  const cutFrom = [`panels.${pattern.pattern}.finished`, 'choices.finish'];
  const size = (value: number, inputs: readonly string[]) =>
    figure(value, 'mm', 'computed', 'offset', inputs);
  const cloth = area(lines.cut);
  return {
    pattern: pattern.pattern,
    choices: master.choices,
    finished,
    edgeNames,
    cut: lines.cut,
    stitch: lines.stitch,
    band: lines.band,
    bandWidth: lines.bandWidth,
    finishedWidth: size(finishedBox.width, shape),
    finishedHeight: size(finishedBox.height, shape),
    cutWidth: size(cutBox.width, cutFrom),
    cutHeight: size(cutBox.height, cutFrom),
    area: figure(area(finished), 'mm2', 'computed', 'outlineArea', shape),
    // Cloth alone: patches, magnets and binding are added once its hold points are known.
    mass: figure((cloth / 1e6) * materials.fabric.mass, 'g', 'estimate', 'massPerArea', [
      ...cutFrom,
      `catalogue.fabrics.${materials.fabric.id}.mass`,
    ]),
    edging: edging(pattern, master, materials, finished, edgeNames, catalogue),
  };
}

function edging(
  pattern: PatternPlan,
  master: OpeningPlan,
  materials: Materials,
  finished: Outline,
  edgeNames: readonly string[],
  { habits }: Catalogue,
): EdgingPlan {
  const run = length(finished);
  const from = [`panels.${pattern.pattern}.finished`];
  const runFigure = figure(run, 'mm', 'computed', 'outlineLength', from);
  const { finish } = master.choices;
  if (finish.kind === 'hotCut') return { kind: 'hotCut', run: runFigure };
  if (finish.kind === 'hem') return { kind: 'hem', width: finish.width, run: runFigure };
  return {
    kind: 'binding',
    binding: materials.binding!.id,
    run: runFigure,
    cutLength: figure(run + habits.bindingOverlap + 2 * habits.bindingTrim, 'mm', 'custom', 'bindingLength', [
      ...from,
      'catalogue.habits.bindingOverlap',
      'catalogue.habits.bindingTrim',
    ]),
    overlap: habits.bindingOverlap,
    startsAt: bindingStart(finished, edgeNames),
  };
}

/** Middle of the bottom side where there is one, else of the longest side: never at a corner. */
function bindingStart(finished: Outline, edgeNames: readonly string[]) {
  const { sides } = cornersAndSides(finished);
  const longest = sides.reduce<(typeof sides)[number] | null>((a, b) => (!a || b.run > a.run ? b : a), null);
  const bottom = sides.find((side) => side.segments.some((index) => edgeNames[index] === 'bottom'));
  const side = bottom && longest && bottom.run > longest.run / 2 ? bottom : longest;
  const total = length(finished);
  const s = side ? (side.start + side.run / 2) % total : 0;
  const segment = side?.segments[Math.floor(side.segments.length / 2)] ?? 0;
  return { edge: edgeNames[segment]!, s, at: pointAt(finished, mm(s)) };
}

function reportUnknownEdges(pattern: PatternPlan, master: OpeningPlan, find: Find): void {
  for (const edge of Object.keys(master.choices.fit.edges))
    if (!pattern.edgeNames.includes(edge))
      find({
        severity: 'doubt',
        code: 'EDGE_NAME_UNKNOWN',
        where: { opening: master.opening, edge },
        numbers: { edge, known: [...new Set(pattern.edgeNames)].join(' ') },
      });
}

function reportEdge(panel: PanelPlan, materials: Materials, find: Find): void {
  const where = { pattern: panel.pattern };
  const { finish } = panel.choices;
  if (finish.kind === 'hotCut' && !materials.fabric.heatCut)
    find({
      severity: 'stop',
      code: 'FABRIC_NOT_FOR_HEAT',
      where,
      numbers: { fabric: materials.fabric.name },
    });
  const { corners } = cornersAndSides(panel.finished);
  const convex = corners.filter(({ turn }) => turn > 0);
  if (finish.kind === 'hem' && convex.length > 0)
    find({ severity: 'note', code: 'HEM_NEEDS_NOTCHED_CORNERS', where, numbers: { corners: convex.length } });
  if (finish.kind !== 'binding') return;
  const least = materials.binding!.leastRadius;
  for (const corner of convex)
    if (corner.radius < least - 0.05)
      find({
        severity: 'doubt',
        code: 'CORNER_TOO_TIGHT_FOR_BINDING',
        where: { ...where, edge: cornerName(corner, panel.edgeNames) },
        numbers: { radius: corner.radius, least, binding: materials.binding!.name },
      });
}
