import { lazy } from 'react';
import { afterDrawing } from '../job/whenDrawn.ts';

const handles = () => afterDrawing(() => import('./handles.ts'));

export const Consequences = lazy(async () => ({ default: (await handles()).Consequences }));
export const CornerPulls = lazy(async () => ({ default: (await handles()).CornerPulls }));
export const HandledObstructions = lazy(async () => ({ default: (await handles()).HandledObstructions }));
