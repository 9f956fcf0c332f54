export { type PackReport, packTogether, readInstance } from '@panewright/contract';
export { benchmarkInstance, lowerBound, verifyLay } from '@panewright/packing';
export { searchThreads } from '../apps/cli/src/searchThreads.ts';
export { boxLay } from './packing/boxLay.ts';
