export * from './benchmarkInstance.ts';
export * from './checkInstance.ts';
export * from './instance.ts';
export * from './lowerBound.ts';
export * from './packing.ts';
export * from './verify/verifyLay.ts';
