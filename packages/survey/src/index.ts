export { chiSquareExceeded, chiSquareQuantile } from './adjustment/chiSquare.ts';
export {
  type Evaluation,
  type LeastSquaresProblem,
  type LeastSquaresRefusal,
  type LeastSquaresSolution,
  levenbergMarquardt,
  numericJacobian,
} from './adjustment/levenbergMarquardt.ts';
export { type GlobalTest, quadratic, type Statistics, statistics } from './adjustment/statistics.ts';
export * from './fit/chainFit.ts';
export { type Circle, type CircleMethod, type CircleRefusal, fitCircle } from './fit/circleFits.ts';
export { fitChain } from './fit/fitChain.ts';
export { withSharedErrors } from './fit/withSharedErrors.ts';
export { adjustNetwork } from './network/adjustNetwork.ts';
export { fitOutline } from './network/fitOutline.ts';
export { crossingAngle, intersectTapes } from './network/intersectTapes.ts';
export * from './network/markSurvey.ts';
export * from './network/outlinePlan.ts';
export { adjustTape } from './tape/adjustTape.ts';
export { type BlunderCause, type PossibleBlunder, possibleBlunders } from './tape/blunderCauses.ts';
export type { Suspect } from './tape/suspect.ts';
export * from './tape/tapeSurvey.ts';
