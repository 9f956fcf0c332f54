export type * from '@panewright/design';
export {
  alongRun,
  type Catalogue,
  type Choices,
  type CutPiece,
  type CuttingPlan,
  catalogue as catalogueSchema,
  defaultCatalogue,
  defaultChoices,
  defaultGlazing,
  derive,
  deriveOpenings,
  derivePanel,
  deriveShapes,
  drawPlaces,
  type EdgePlace,
  edgePlaceAt,
  emptyJob,
  type Figure,
  type Finding,
  type FindingCode,
  footPlace,
  heldPoints,
  type Job,
  job as jobSchema,
  type KeptPattern,
  keptPattern as keptPatternSchema,
  keptPatternOf,
  knownSegments,
  laidPlaces,
  MOST_OFFERS,
  nearestEdgePlace,
  type Opening,
  type Origin,
  type PanelHeld,
  type Plan,
  panelHeld,
  placeAlong,
  pushPlaces,
  type Reading,
  type ReadingName,
  type StackSection,
  startLaySearch,
  stepLaySearch,
  surveyOfKept,
  tryPlaces,
  type UnitName,
  USUAL_CLOTH,
  type WindMargin,
  type WindMargins,
  weighLay,
  windCurve,
  windMargins,
} from '@panewright/design';
export { finishedPanel, inPhoto, LABEL_STOCKS, photoCorners, type SeenPart } from '@panewright/drawing';
export {
  arcOf,
  bounds,
  type Corners,
  type Edge,
  edges,
  invert,
  isSharp,
  leastDeviation,
  mirrorAbout,
  moveOutline,
  movePoint,
  nearest,
  type Outline,
  type Point,
  perspectiveBetween,
  point,
  pointAt,
  type Rigid,
  type ShapeMeasure,
} from '@panewright/geometry';
export { beaufortForce, beaufortSpeeds, type SpeedUnit, windSpeed, windSpeedIn } from '@panewright/magnets';
export { searcher } from '@panewright/packing';
export type { CornerName, LineChoice, Paper, Ruler, Tape, TappedLine, TraceStage } from '@panewright/photo';
export { filmPointAt, type PhotoView, type Pixel, pixelOf } from '@panewright/photo';
export * from '@panewright/quantity';
export * from './answers/answers.ts';
export { findingWords } from './answers/findingWords.ts';
export { german } from './answers/german/german.ts';
export { languageOf, messagesOf } from './answers/messagesOf.ts';
export { sayFinding } from './answers/sayFinding.ts';
export { sayLengthRefusal } from './answers/sayLength.ts';
export {
  joinWords,
  type Language,
  makeShow,
  NOT_GIVEN,
  type Show,
  type ShowOptions,
  showMoney,
  showOf,
} from './answers/show.ts';
export { spanish } from './answers/spanish/spanish.ts';
export type { FindingWords, LengthWords, Messages, Sentences } from './answers/words.ts';
export { base64, bytesOfBase64 } from './base64.ts';
export { demoJob } from './demo.ts';
export { type Issue, type IssuePath, pathText } from './document/issue.ts';
export {
  type DocumentRefusal,
  MOST_TEXT,
  readCatalogue,
  readJob,
  readText,
} from './document/readDocument.ts';
export { httpAnswer, type Refused, refusedBody } from './envelope.ts';
export { exampleJob, examplePattern } from './examples.ts';
export { memoryStore } from './memoryStore.ts';
export { openApi } from './openApi.ts';
export { obstructionName } from './operations/obstructionName.ts';
export type { Operation } from './operations/operation.ts';
export * from './operations/operations.ts';
export {
  forEvaluations,
  forSeconds,
  type PackReport,
  pack,
  readInstance,
} from './packing.ts';
export { packTogether, type RemoteSearcher } from './packTogether.ts';
export { madePages } from './pages.ts';
export { measureOf } from './patterns/memoryPatterns.ts';
export { patternWords, searchTerms } from './patterns/patternSearch.ts';
export { namedPhotos } from './photos/namedPhotos.ts';
export { planSchema } from './planSchema.ts';
export * from './ports.ts';
export * from './refusal.ts';
export { documentSchemas } from './schemas.ts';
export { summaryLines } from './summary.ts';
export { changeByHand, type HandChange, surveyOutline } from './tracing/changeByHand.ts';
export { type PhotoReadings, photoReadings } from './tracing/photoReadings.ts';
export { readLineText, readRulerText, readTapeText, readTapsText } from './tracing/readTexts.ts';
export { type TracedSegment, type TraceReport, type TraceRequest, tracePhotoFiles } from './tracing/trace.ts';
export { traceSummary } from './tracing/traceSummary.ts';
export { utf8 } from './utf8.ts';
