export * from './benchmarkInstance.ts';
export * from './checkInstance.ts';
export * from './fillSheet.ts';
export * from './instance.ts';
export * from './lowerBound.ts';
export * from './packAround.ts';
export * from './packing.ts';
export * from './searcher.ts';
export * from './slide/bindingChain.ts';
export { pushTogether } from './slide/pushTogether.ts';
export * from './strips/cutStrips.ts';
export {
  type CuttingOrder,
  type CuttingPattern,
  type CuttingPlan,
  type CuttingRefusal,
  checkOrder,
  type Stock,
  type StockId,
  type StripId,
  type StripItem,
} from './strips/cuttingOrder.ts';
export * from './verify/checkPlaces.ts';
export * from './verify/verifyLay.ts';
