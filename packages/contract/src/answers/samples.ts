import type { Refusal, RefusalCode } from '../refusal.ts';

/** One of each refusal, as it may come: for the page of refusals and for the tests of its words. */
export const refusalSamples: { readonly [C in RefusalCode]: Extract<Refusal, { readonly code: C }> } = {
  OPERATION_UNKNOWN: { code: 'OPERATION_UNKNOWN', name: 'plann', known: ['plan', 'check'] },
  INPUT_INVALID: {
    code: 'INPUT_INVALID',
    operation: 'newJob',
    issues: [{ kind: 'missing', path: ['name'] }],
  },
  TEXT_NOT_JSON: { code: 'TEXT_NOT_JSON', position: 21, near: '"units": in,' },
  TEXT_TOO_LONG: { code: 'TEXT_TOO_LONG', length: 12_000_000, most: 10_000_000 },
  DOCUMENT_NOT_AN_OBJECT: { code: 'DOCUMENT_NOT_AN_OBJECT', kind: 'job' },
  DOCUMENT_OTHER_FORMAT: {
    code: 'DOCUMENT_OTHER_FORMAT',
    kind: 'job',
    found: 'panewright.catalogue',
    wanted: 'panewright.job',
  },
  DOCUMENT_VERSION_UNREADABLE: { code: 'DOCUMENT_VERSION_UNREADABLE', kind: 'catalogue', found: 'one' },
  DOCUMENT_NEWER: { code: 'DOCUMENT_NEWER', kind: 'job', found: 7, newest: 1 },
  DOCUMENT_INVALID: {
    code: 'DOCUMENT_INVALID',
    kind: 'job',
    issues: [
      {
        kind: 'length',
        path: ['openings', 0, 'survey', 'readings', 2, 'entered'],
        refusal: { code: 'LENGTH_UNREADABLE', text: '24 3//8', part: '//8' },
      },
    ],
  },
  JOB_NOT_FOUND: { code: 'JOB_NOT_FOUND', id: 'camper-2' },
  REVISION_NOT_FOUND: { code: 'REVISION_NOT_FOUND', id: 'camper-2', revision: 9, newest: 4 },
  JOB_EXISTS: { code: 'JOB_EXISTS', id: 'camper-2', newest: 4 },
  REVISION_STALE: {
    code: 'REVISION_STALE',
    id: 'camper-2',
    basedOn: 3,
    newest: 4,
    savedAt: '2026-11-25T09:00:00.000Z',
  },
  PATTERN_NOT_FOUND: { code: 'PATTERN_NOT_FOUND', id: 'kept-7' },
  PATTERN_EXISTS: { code: 'PATTERN_EXISTS', id: 'kept-7', name: 'Rear hatch' },
  SHAPE_IMPOSSIBLE: {
    code: 'SHAPE_IMPOSSIBLE',
    refusal: { code: 'SEGMENT_TOO_SHORT', where: 2, length: 0 as never },
  },
  PULL_PLACE_MISSING: { code: 'PULL_PLACE_MISSING', id: 'C1' },
  PULL_REFUSED: { code: 'PULL_REFUSED', id: 'C1', refusal: { code: 'GAP_NOT_POSITIVE', gap: 0 as never } },
  PACK_REFUSED: { code: 'PACK_REFUSED', refusal: { code: 'PIECE_HAS_NO_AREA', pieceId: 3 } },
  TAPE_TEXT_UNREADABLE: { code: 'TAPE_TEXT_UNREADABLE', text: '9.1-12.0' },
  RULER_TEXT_UNREADABLE: { code: 'RULER_TEXT_UNREADABLE', text: '200' },
  PHOTO_UNREADABLE: { code: 'PHOTO_UNREADABLE', name: 'film.png' },
  TRACE_REFUSED: {
    code: 'TRACE_REFUSED',
    refusal: { code: 'TOO_FEW_MARKERS', photo: 0, found: 2, least: 4 },
  },
  BYTES_NOT_BASE64: { code: 'BYTES_NOT_BASE64', name: 'hatch.dxf' },
  DRAWING_REFUSED: {
    code: 'DRAWING_REFUSED',
    name: 'hatch.dxf',
    refusal: { code: 'UNIT_NOT_STATED', format: 'dxf', offered: ['mm', 'in'], width: 24, height: 14 },
  },
  SHEETS_REFUSED: {
    code: 'SHEETS_REFUSED',
    refusal: { code: 'CORRECTION_OUT_OF_RANGE', axis: 'x', factor: 0.95, least: 0.97, most: 1.03 },
  },
  OPENING_UNKNOWN: { code: 'OPENING_UNKNOWN', opening: 'W12', known: ['W1', 'W2'] },
  OPENING_NOT_HELD: { code: 'OPENING_NOT_HELD', opening: 'W2' },
  HOLD_REFUSED: {
    code: 'HOLD_REFUSED',
    opening: 'W2',
    refusal: { code: 'GRADE_UNKNOWN', magnet: 'disc-20x5', grade: 'N42XX' },
  },
  STORE_BUSY: { code: 'STORE_BUSY' },
  STORE_FULL: { code: 'STORE_FULL' },
  TAKES_TOO_LONG: { code: 'TAKES_TOO_LONG', seconds: 180 },
  HOST_NOT_ALLOWED: { code: 'HOST_NOT_ALLOWED', host: 'shop.example' },
  ORIGIN_NOT_ALLOWED: { code: 'ORIGIN_NOT_ALLOWED', origin: 'https://elsewhere.example' },
  BODY_NOT_JSON: { code: 'BODY_NOT_JSON', found: 'text/plain' },
  PATH_UNKNOWN: { code: 'PATH_UNKNOWN', path: '/api/nothing' },
};
