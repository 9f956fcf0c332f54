import type { HoldingRefusal, MarginRefusal, PanelHeldRefusal } from '@panewright/design';
import type { FileRefusal } from '@panewright/files';
import type { OutlineRefusal, ReshapeRefusal } from '@panewright/geometry';
import type { PairRefusal } from '@panewright/magnets';
import type { InstanceRefusal } from '@panewright/packing';
import type { TraceRefusal } from '@panewright/photo';
import type { Issue } from './document/issue.ts';
import type { DocumentRefusal } from './document/readDocument.ts';
import type { StoreRefusal } from './ports.ts';
import type { SheetsRefusal } from './sheets/sheetChoices.ts';

export type CallRefusal =
  | { readonly code: 'OPERATION_UNKNOWN'; readonly name: string; readonly known: readonly string[] }
  | { readonly code: 'INPUT_INVALID'; readonly operation: string; readonly issues: readonly Issue[] };

export type PullRefusal =
  | { readonly code: 'PULL_PLACE_MISSING'; readonly id: string }
  | { readonly code: 'PULL_REFUSED'; readonly id: string; readonly refusal: PairRefusal };

/** Why pieces cannot be laid. */
export type PackRefusal = { readonly code: 'PACK_REFUSED'; readonly refusal: InstanceRefusal };

/** Why photos give no outline. */
export type PhotoRefusal =
  | { readonly code: 'TAPE_TEXT_UNREADABLE'; readonly text: string }
  | { readonly code: 'RULER_TEXT_UNREADABLE'; readonly text: string }
  | { readonly code: 'TAPS_TEXT_UNREADABLE'; readonly text: string }
  | { readonly code: 'LINE_TEXT_UNREADABLE'; readonly text: string }
  | {
      readonly code: 'TAPS_UNUSABLE';
      readonly photo: number;
      readonly photos: number;
      readonly points: number;
      readonly least: number;
    }
  | { readonly code: 'PHOTO_UNREADABLE'; readonly name: string }
  | { readonly code: 'TRACE_REFUSED'; readonly refusal: TraceRefusal }
  | { readonly code: 'RESHAPE_REFUSED'; readonly refusal: ReshapeRefusal };

/** Why a photo is not kept. */
export type KeepPhotoRefusal =
  | { readonly code: 'PHOTO_NO_PICTURE'; readonly id: string }
  | { readonly code: 'PHOTO_TOO_LARGE'; readonly size: number; readonly most: number }
  | {
      readonly code: 'PHOTO_TOO_WIDE';
      readonly width: number;
      readonly height: number;
      readonly most: number;
    };

/** Why a drawing or a table of points gives no outline. */
export type DrawingRefusal =
  | { readonly code: 'BYTES_NOT_BASE64'; readonly name: string }
  | { readonly code: 'DRAWING_REFUSED'; readonly name: string; readonly refusal: FileRefusal };

/** Why sheets cannot be made as they are asked for. */
export type SheetsAskedRefusal = { readonly code: 'SHEETS_REFUSED'; readonly refusal: SheetsRefusal };

/** Why segments are not a shape to be kept or looked for. */
export type ShapeRefusal = { readonly code: 'SHAPE_IMPOSSIBLE'; readonly refusal: OutlineRefusal };
/** Why a question about one opening's hold has no answer. */
export type HoldRefusal =
  | PanelHeldRefusal
  | {
      readonly code: 'HOLD_REFUSED';
      readonly opening: string;
      readonly refusal: HoldingRefusal | MarginRefusal;
    };

/** The door itself cannot answer now. */
export type DoorRefusal =
  | { readonly code: 'STORE_BUSY' }
  | { readonly code: 'STORE_FULL' }
  | { readonly code: 'TAKES_TOO_LONG'; readonly seconds: number }
  | { readonly code: 'HOST_NOT_ALLOWED'; readonly host: string }
  | { readonly code: 'ORIGIN_NOT_ALLOWED'; readonly origin: string }
  | { readonly code: 'BODY_NOT_JSON'; readonly found: string }
  | { readonly code: 'PATH_UNKNOWN'; readonly path: string };

/** Everything an operation may answer instead of its output. */
export type Refusal =
  | CallRefusal
  | DocumentRefusal
  | StoreRefusal
  | PullRefusal
  | PackRefusal
  | PhotoRefusal
  | KeepPhotoRefusal
  | DrawingRefusal
  | SheetsAskedRefusal
  | ShapeRefusal
  | HoldRefusal
  | DoorRefusal;
export type RefusalCode = Refusal['code'];

/** What the doors make of a refusal: the status of HTTP and the exit code of the command line. */
export interface DoorAnswer {
  readonly status: 400 | 403 | 404 | 409 | 413 | 415 | 422 | 503 | 507;
  readonly exit: 2 | 3;
}

/** It does not compile while a code is missing. */
export const doorAnswers: { readonly [C in RefusalCode]: DoorAnswer } = {
  OPERATION_UNKNOWN: { status: 404, exit: 2 },
  INPUT_INVALID: { status: 400, exit: 2 },
  TEXT_NOT_JSON: { status: 400, exit: 2 },
  TEXT_TOO_LONG: { status: 413, exit: 2 },
  DOCUMENT_NOT_AN_OBJECT: { status: 400, exit: 2 },
  DOCUMENT_OTHER_FORMAT: { status: 400, exit: 2 },
  DOCUMENT_VERSION_UNREADABLE: { status: 400, exit: 2 },
  DOCUMENT_NEWER: { status: 422, exit: 2 },
  DOCUMENT_INVALID: { status: 400, exit: 2 },
  JOB_NOT_FOUND: { status: 404, exit: 2 },
  REVISION_NOT_FOUND: { status: 404, exit: 2 },
  JOB_EXISTS: { status: 409, exit: 3 },
  REVISION_STALE: { status: 409, exit: 3 },
  PATTERN_NOT_FOUND: { status: 404, exit: 2 },
  PATTERN_EXISTS: { status: 409, exit: 3 },
  PHOTO_NOT_FOUND: { status: 404, exit: 2 },
  PHOTO_EXISTS: { status: 409, exit: 3 },
  PHOTO_NO_PICTURE: { status: 422, exit: 2 },
  PHOTO_TOO_LARGE: { status: 413, exit: 2 },
  PHOTO_TOO_WIDE: { status: 422, exit: 2 },
  SHAPE_IMPOSSIBLE: { status: 422, exit: 2 },
  PULL_PLACE_MISSING: { status: 400, exit: 2 },
  PULL_REFUSED: { status: 422, exit: 2 },
  PACK_REFUSED: { status: 422, exit: 2 },
  TAPE_TEXT_UNREADABLE: { status: 400, exit: 2 },
  RULER_TEXT_UNREADABLE: { status: 400, exit: 2 },
  TAPS_TEXT_UNREADABLE: { status: 400, exit: 2 },
  LINE_TEXT_UNREADABLE: { status: 400, exit: 2 },
  TAPS_UNUSABLE: { status: 422, exit: 2 },
  PHOTO_UNREADABLE: { status: 400, exit: 2 },
  TRACE_REFUSED: { status: 422, exit: 3 },
  RESHAPE_REFUSED: { status: 422, exit: 3 },
  BYTES_NOT_BASE64: { status: 400, exit: 2 },
  DRAWING_REFUSED: { status: 422, exit: 3 },
  SHEETS_REFUSED: { status: 422, exit: 2 },
  OPENING_UNKNOWN: { status: 404, exit: 2 },
  OPENING_NOT_HELD: { status: 422, exit: 3 },
  HOLD_REFUSED: { status: 422, exit: 3 },
  STORE_BUSY: { status: 503, exit: 3 },
  STORE_FULL: { status: 507, exit: 3 },
  TAKES_TOO_LONG: { status: 503, exit: 3 },
  HOST_NOT_ALLOWED: { status: 403, exit: 2 },
  ORIGIN_NOT_ALLOWED: { status: 403, exit: 2 },
  BODY_NOT_JSON: { status: 415, exit: 2 },
  PATH_UNKNOWN: { status: 404, exit: 2 },
};
