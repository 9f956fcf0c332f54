export { laidOf } from './cutting/handLay.ts';
export {
  drawPlaces,
  type LayFrame,
  type LayRefusal,
  type LaySearch,
  laidPlaces,
  pushPlaces,
  startLaySearch,
  stepLaySearch,
  tryPlaces,
} from './cutting/laySearch.ts';
export { type FreePiece, leftOver, type Spread } from './cutting/leftOver.ts';
export { openingsOn } from './cutting/openingsOn.ts';
export * from './cutting/weighLay.ts';
export { defaultCatalogue } from './defaults/catalogue.ts';
export { defaultChoices, defaultGlazing, emptyJob } from './defaults/choices.ts';
export { defaultFasteners, defaultSteelStrips } from './defaults/fasteners.ts';
export { derivePanel, type PanelOfOne } from './derive/derivePanel.ts';
export { deriveOpenings } from './derive/openingPlans.ts';
export { derive, deriveShapes, type PlanTold } from './derive.ts';
export * from './document/catalogue.ts';
export * from './document/elevations.ts';
export * from './document/job.ts';
export * from './document/keptPattern.ts';
export * from './document/migrations.ts';
export * from './document/primitives.ts';
export * from './document/printing.ts';
export * from './document/reservedPlaces.ts';
export * from './hold/choosing.ts';
export * from './hold/edgePlaces.ts';
export { type Division, equalGaps } from './hold/equalGaps.ts';
export type { Face } from './hold/erosion.ts';
export * from './hold/fasteners.ts';
export * from './hold/fewestPoints.ts';
export { behindGlass, type HoldingRefusal, holdingStrength, stripPiece } from './hold/holding.ts';
export type { Foot } from './hold/holdPoints.ts';
export * from './hold/layout.ts';
export { type Fit, waysToFit } from './hold/layoutSymmetry.ts';
export { type MarginAt, marginCurve } from './hold/marginCurve.ts';
export * from './hold/margins.ts';
export * from './hold/markingPlan.ts';
export * from './hold/meeting.ts';
export * from './hold/meetingProposals.ts';
export * from './hold/panelHeld.ts';
export * from './hold/panelQuestion.ts';
export { placing } from './hold/placing.ts';
export * from './hold/poles.ts';
export * from './hold/stackSection.ts';
export * from './hold/steelStrength.ts';
export * from './hold/storedStack.ts';
export * from './hold/thickGlass.ts';
export * from './hold/wholeMargin.ts';
export * from './hold/windMargins.ts';
export { refusalNumbers } from './openings/refusalNumbers.ts';
export * from './patterns/keptPatterns.ts';
export { patternPlans } from './patterns/patternPlans.ts';
export * from './plan/figure.ts';
export * from './plan/finding.ts';
export * from './plan/holdDetail.ts';
export * from './plan/plan.ts';
export * from './price/offers.ts';
export { lockstitchRatio, threadLength } from './take-off/needs.ts';
export { tapePieces, type WrapSize, wrapSize } from './take-off/wrap.ts';
