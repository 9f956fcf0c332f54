export type { TapeCheck } from './adjust.ts';
export { type DecodedPhoto, decodeJpeg } from './decodeJpeg.ts';
export { type Exif, readExif } from './exif.ts';
export type { TraceQuestion, TraceRefusal } from './gate.ts';
export { type GreyImage, type Photo, toGrey } from './image.ts';
export { loadOpenCv, type OpenCv, type OpenCvModule } from './openCv.ts';
export { filmPointAt, type PhotoView, type Pixel, pixelOf } from './photoView.ts';
export type { CornerName, Ruler, Tape } from './reading.ts';
export {
  type Paper,
  type ReferenceSheet,
  referenceSheets,
  type SheetBar,
  type SheetLabel,
  type SheetMarker,
  type SheetPoint,
  type SheetRectangle,
} from './referenceSheet.ts';
export {
  type LineChoice,
  type Measure,
  type TappedLine,
  type Trace,
  type TracedEdge,
  type TraceInput,
  type TracePhoto,
  type TraceStage,
  tracePhotos,
} from './tracePhotos.ts';
