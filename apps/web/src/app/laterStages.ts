// The stages one goes to after the first drawing: one file of script, fetched when the page is idle.
export { CuttingStage } from '../cutting/CuttingStage.tsx';
export { ElevationStage } from '../elevations/ElevationStage.tsx';
export { FindingsStage } from '../findings/FindingsStage.tsx';
export { HoldStage } from '../hold/HoldStage.tsx';
export { PanelsStage } from '../panels/PanelsStage.tsx';
export { PatternsStage } from '../patterns/PatternsStage.tsx';
export { PriceStage } from '../price/PriceStage.tsx';
export { SheetsStage } from '../sheets/SheetsStage.tsx';
export { TakeOffStage } from '../takeOff/TakeOffStage.tsx';
export { WindowStage } from '../window/WindowStage.tsx';
export { JobStage } from './JobStage.tsx';
export { RevisionsStage } from './RevisionsStage.tsx';
