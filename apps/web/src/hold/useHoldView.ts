import { useMemo } from 'react';
import { useCurrent } from '../app/useCurrent.ts';
import {
  type Catalogue,
  edges,
  type HoldByPoint,
  type HoldMeeting,
  heldPoints,
  type Job,
  movePoint,
  nearest,
  obstructionName,
  type PanelHeld,
  type Plan,
  panelHeld,
  point,
  type Show,
  sayGap,
} from '../contract.ts';
import { useShow } from '../findings/useFindings.ts';
import { useCatalogue, useJob, usePlan } from '../job/work.ts';
import { spoken, useWords } from '../text/useWords.ts';
import type { Words } from '../text/words.ts';
import { type AgainstWind, againstWind } from './againstWind.ts';

/** How a point stands in the wind of the job. */
export type Standing = 'holds' | 'doubtful' | 'gives' | 'unloaded';

/** One hold point as the page shows it. */
export interface PointView {
  readonly number: number;
  readonly kind: 'corner' | 'edge';
  readonly on: string;
  readonly place: string;
  /** To the next point, mm, and why, where the plan knows. */
  readonly next: number | null;
  readonly why: string;
  readonly margin: HoldByPoint | null;
  readonly standing: Standing;
  readonly letsGo: { readonly low: number | null; readonly high: number | null };
  readonly meeting: HoldMeeting | null;
}

export interface HoldView {
  readonly held: PanelHeld;
  readonly points: readonly PointView[];
  /** null where the pull is refused. */
  readonly winds: AgainstWind | null;
  readonly asked: number;
  /** What the opening itself calls an edge or a corner of the panel, in words: turned over, left is right. */
  readonly placeOf: (on: string) => string;
}

/** What is shown of the opening's panel, worked out from the plan on the page; null before there is a panel. */
export function useHoldView(): HoldView | null {
  const w = useWords();
  const show = useShow();
  const { opening } = useCurrent();
  const id = opening?.id;
  const plan = usePlan((state) => state.plan);
  const catalogue = useCatalogue((one) => one);
  const job = useJob((state) => state.document);
  return useMemo(
    () => (plan && id !== undefined ? holdView(plan, catalogue, job, id, w, show) : null),
    [plan, catalogue, job, id, w, show],
  );
}

function holdView(
  plan: Plan,
  catalogue: Catalogue,
  job: Job,
  opening: string,
  w: Words,
  show: Show,
): HoldView | null {
  const held = panelHeld(plan, catalogue, opening);
  if (!held.ok) return null;
  const { hold, own, load } = held.value;
  const strengths = heldPoints(held.value);
  const winds = strengths.ok ? againstWind(strengths.value, load) : null;
  const asked = catalogue.habits.windMargin;
  const { messages } = spoken();
  const names = namesOn(held.value);
  const placeOf = (on: string) => pointPlace(names.get(on) ?? on, w);
  const points = hold.points.map(({ number, kind, on }): PointView => {
    const margin = own.byPoint?.find(({ point }) => point === number) ?? null;
    const gap = hold.gaps?.find(({ from }) => from === number);
    const letsGo = winds?.points.find(({ point }) => point === number)?.letsGo;
    return {
      number,
      kind,
      on,
      place: placeOf(on),
      next: gap?.length ?? null,
      why: gap ? sayGap(gap, obstructionName(job, gap.obstruction, messages), show, messages) : '',
      margin,
      standing: standingOf(margin, asked),
      letsGo: letsGo ?? { low: null, high: null },
      meeting: own.meetings?.find(({ point }) => point === number) ?? null,
    };
  });
  return { held: held.value, points, winds, asked, placeOf };
}

function standingOf(margin: HoldByPoint | null, asked: number): Standing {
  if (!margin || margin.low === null) return 'unloaded';
  if (margin.low >= asked) return 'holds';
  return margin.high !== null && margin.high < 1 ? 'gives' : 'doubtful';
}

/** The opening's own names for the panel's edges and corners, by where they come to lie on it. */
function namesOn({ panel, opening: { shape }, place }: PanelHeld): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  if (!shape || (!place.mirrored && Math.abs(place.angle) < 0.1)) return names;
  for (const [k, { from, to }] of edges(panel.finished).entries()) {
    const middle = movePoint(place, point((from.x + to.x) / 2, (from.y + to.y) / 2));
    names.set(panel.edgeNames[k]!, shape.edgeNames[nearest(shape.outline, middle).segment]!);
  }
  return names;
}

/** Where a point is, in words: an edge, or a corner by its name or by its two edges. */
function pointPlace(on: string, w: Words): string {
  const edge = (name: string) => w.edges[name as keyof typeof w.edges] ?? w.sideNumber(name);
  if (!on.startsWith('corner:')) return edge(on);
  const name = on.slice(7);
  const between = /^(.+)-(.+)$/.exec(name);
  return between ? w.holding.cornerBetween(edge(between[1]!), edge(between[2]!)) : edge(name);
}
