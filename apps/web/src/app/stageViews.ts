import { type ComponentType, lazy } from 'react';
import type { Stage } from '../findings/stageOf.ts';
import { OpeningsStage } from '../openings/OpeningsStage.tsx';

type Later = typeof import('./laterStages.ts');

const later = () => import('./laterStages.ts');
const view = (name: keyof Later) => lazy(async () => ({ default: (await later())[name] as ComponentType }));

export type ViewName = Stage | 'revisions' | 'window' | 'elevations';

/** What is shown for each stage. The drawing that comes first is here; the rest is fetched after it. */
export const VIEWS: Readonly<Record<ViewName, ComponentType>> = {
  openings: OpeningsStage,
  job: view('JobStage'),
  patterns: view('PatternsStage'),
  panels: view('PanelsStage'),
  hold: view('HoldStage'),
  cutting: view('CuttingStage'),
  takeOff: view('TakeOffStage'),
  price: view('PriceStage'),
  sheets: view('SheetsStage'),
  findings: view('FindingsStage'),
  revisions: view('RevisionsStage'),
  window: view('WindowStage'),
  elevations: view('ElevationStage'),
};

export const isView = (name: string | undefined): name is ViewName =>
  name !== undefined && Object.hasOwn(VIEWS, name);

/** Fetches the later stages, so that going to one does not wait. */
export const fetchLaterStages = (): void => void later().catch(() => {});
