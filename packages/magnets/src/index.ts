export * from './caution.ts';
export * from './edge/edgePull.ts';
export * from './edge/sag.ts';
export * from './hold/holdPanel.ts';
export { panelHold, panelLetsGo, pointHolds, pointHoldsAt, pointsLetGo } from './hold/panelHold.ts';
export * from './hold/pointStrength.ts';
export {
  type BlockMagnet,
  type DiscMagnet,
  faceArea,
  faceSpan,
  type Magnet,
  type MagnetRefusal,
  type PairMember,
} from './magnet.ts';
export * from './material/friction.ts';
export * from './material/grade.ts';
export * from './material/recoil.ts';
export * from './material/temperature.ts';
export * from './neighbours.ts';
export {
  type OffsetPeaks,
  type OffsetPoint,
  type OffsetRefusal,
  offsetCurve,
  offsetPeaks,
} from './offsetCurve.ts';
export {
  checkPair,
  type MagnetPair,
  type Offset,
  type PairForce,
  type PairRefusal,
  pairForce,
  pull,
} from './pairForce.ts';
export * from './slip.ts';
export * from './steelStrip.ts';
export * from './stiffness.ts';
export * from './tape/foamTape.ts';
export * from './wind/beaufort.ts';
export * from './wind/gust.ts';
export * from './wind/pressure.ts';
export * from './wind/screenLoad.ts';
export * from './wind/screenLoss.ts';
export * from './workingPull.ts';
