import {
  type Catalogue,
  deriveShapes,
  type HeldPoint,
  heldPoints,
  type Job,
  type PanelHeld,
  panelHeld,
} from '@panewright/design';
import { ok, type Result, refuse } from '@panewright/quantity';
import type { Refusal } from '../refusal.ts';

/** One opening's panel out of a job's plan, with its points and what holds each. */
export interface HeldPanel {
  readonly held: PanelHeld;
  readonly points: readonly HeldPoint[];
}

/** The panel of one opening, worked out anew from the job. */
export function panelOf(job: Job, shop: Catalogue, opening: string): Result<PanelHeld, Refusal> {
  return panelHeld(deriveShapes(job, shop), shop, opening);
}

/** As `panelOf`, with the strength of every point. */
export function heldPanelOf(job: Job, shop: Catalogue, opening: string): Result<HeldPanel, Refusal> {
  const held = panelOf(job, shop, opening);
  if (!held.ok) return held;
  const points = heldPoints(held.value);
  if (!points.ok) return refuse({ code: 'HOLD_REFUSED', opening, refusal: points.refusal });
  return ok({ held: held.value, points: points.value });
}
