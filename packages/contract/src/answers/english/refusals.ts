import type { DocumentKind } from '@panewright/design';
import { pathText } from '../../document/issue.ts';
import { joinWords, type Show } from '../show.ts';
import type { RefusalWords } from '../words.ts';
import { fileRemedy, sayFileRefusal } from './fileRefusals.ts';
import { impossibleOutline } from './impossibleSurvey.ts';
import { sayIssue } from './issues.ts';
import { saySheetsRefusal } from './sheetsRefusals.ts';
import { reshapeRefusals, traceRefusals } from './tracing.ts';

const a: Readonly<Record<DocumentKind, string>> = { job: 'a job', catalogue: 'a catalogue' };
const the: Readonly<Record<DocumentKind, string>> = { job: 'The job', catalogue: 'The catalogue' };

const listIssues = (issues: Parameters<typeof sayIssue>[0][], show: Parameters<typeof sayIssue>[1]) =>
  issues.map((issue) => sayIssue(issue, show)).join(' ');

type Pair = Extract<Parameters<RefusalWords['PULL_REFUSED']>[0], object>['refusal'];

/** Why a pair of magnets is refused, as the end of a sentence. */
function sayPair(refusal: Pair, show: Show): string {
  switch (refusal.code) {
    case 'MAGNET_SIZE_NOT_POSITIVE':
      return `the ${refusal.dimension} of magnet ${refusal.magnet} is ${show.number(refusal.value, 6)} mm and must be above 0`;
    case 'REMANENCE_OUT_OF_RANGE':
      return `the remanence of magnet ${refusal.magnet} is ${show.number(refusal.remanence, 4)} T; it must be above 0 and up to ${show.number(refusal.most)} T`;
    case 'GAP_NOT_POSITIVE':
      return `the gap is ${show.number(refusal.gap, 6)} mm and must be above 0`;
    case 'GAP_TOO_SMALL':
      return `a gap of ${show.number(refusal.gap, 9)} mm is below the ${show.number(refusal.least, 9)} mm the formula is good for`;
    case 'OFFSET_NOT_FINITE':
      return 'the offset is not finite';
  }
}

type Instance = Extract<Parameters<RefusalWords['PACK_REFUSED']>[0], object>['refusal'];

/** Why an instance is refused, as the end of a sentence. Its lengths have a unit of their own. */
function sayInstance(refusal: Instance, show: Show): string {
  const number = (value: number) => show.number(value, 3);
  switch (refusal.code) {
    case 'NO_PIECES_TO_LAY':
      return 'it asks for no piece';
    case 'STRIP_WIDTH_NOT_POSITIVE':
      return `the strip is ${number(refusal.stripWidth)} wide`;
    case 'SPACING_NOT_A_LENGTH':
      return `the spacing is ${number(refusal.spacing)}`;
    case 'MARGIN_NOT_A_LENGTH':
      return `the margins are ${number(refusal.side)} and ${number(refusal.end)}`;
    case 'MARGINS_LEAVE_NO_CLOTH':
      return `margins of ${number(refusal.side)} leave nothing of a strip ${number(refusal.stripWidth)} wide`;
    case 'RESERVED_PLACE_HAS_NO_AREA':
      return `reserved place ${refusal.place + 1} has no area: least x and y come first, then greatest`;
    case 'PIECE_WIDER_THAN_ROLL':
      return `piece ${refusal.pieceId} needs ${number(refusal.leastWidth)} across a strip that leaves ${number(refusal.usableWidth)}`;
    default:
      return `piece ${refusal.pieceId} ${sayPiece(refusal)}`;
  }
}

function sayPiece(refusal: Extract<Instance, { readonly pieceId: unknown }>): string {
  switch (refusal.code) {
    case 'PIECE_ID_TWICE':
      return 'is named twice';
    case 'PIECE_DEMAND_NOT_WHOLE':
      return `is wanted ${refusal.demand} times, which is not a whole number`;
    case 'PIECE_VERTEX_NOT_FINITE':
      return `has a corner (number ${refusal.vertex + 1}) that is not finite`;
    case 'PIECE_HAS_NO_AREA':
      return 'has no area';
    case 'PIECE_RUNS_CLOCKWISE':
      return 'runs clockwise; anticlockwise is asked';
    case 'PIECE_CROSSES_ITSELF':
      return `crosses itself at edges ${refusal.edges[0] + 1} and ${refusal.edges[1] + 1}`;
    case 'PIECE_HAS_NO_TURN':
      return 'allows no turn at all: 0 is the way it is drawn';
    case 'PIECE_TURN_NOT_FINITE':
      return 'has a turn that is not finite';
    case 'PIECE_WIDER_THAN_ROLL':
      return 'is wider than the strip';
  }
}

type Hold = Extract<Parameters<RefusalWords['HOLD_REFUSED']>[0], object>['refusal'];

/** Why a panel's hold is refused, as the end of a sentence. */
function sayHold(refusal: Hold, show: Show): string {
  switch (refusal.code) {
    case 'GRADE_UNKNOWN':
      return `the grade “${refusal.grade}” of magnet ${refusal.magnet} is not known`;
    case 'PULL_REFUSED':
      return `the pull across ${show.fine(refusal.gap)} is outside of what the formula is good for`;
    case 'FASTENER_STRENGTH_UNKNOWN':
      return `nobody has tried yet how much fastener ${refusal.fastener} holds`;
    case 'FASTENER_ENDS_REVERSED':
      return `the strength of fastener ${refusal.fastener} has its low end above its high end`;
    case 'TOO_FEW_HOLD_POINTS':
      return `${refusal.count} hold points are too few; ${refusal.least} are the least`;
    case 'HOLD_POINTS_COINCIDE':
      return `hold points ${refusal.at + 1} and ${refusal.next + 1} are in one place`;
    case 'SPEED_OUT_OF_RANGE':
      return `a gust of ${show.speed(refusal.speed)} is past the ${show.speed(refusal.most)} that are looked at`;
    case 'OPENNESS_OUT_OF_RANGE':
      return `a mesh ${show.percent(refusal.openFraction)} open is outside of what is known`;
    default:
      return 'a figure is outside of what the formula is good for';
  }
}

export const refusals: RefusalWords = {
  OPERATION_UNKNOWN: ({ name, known }) => ({
    what: `There is no operation “${name.slice(0, 60)}”.`,
    why: '',
    do: `Use one of ${joinWords(known, 'or')}.`,
  }),
  INPUT_INVALID: ({ operation, issues }, show) => ({
    what: `The input of ${operation} cannot be used. ${listIssues([...issues], show)}`,
    why: '',
    do: 'Correct what is named and send it again.',
  }),
  TEXT_NOT_JSON: ({ position, near }) => ({
    what:
      near === ''
        ? 'The file is empty.'
        : `This is not JSON: reading stopped ${position === null ? 'near' : `at character ${position + 1}, near`} “${near.replace(/\s+/g, ' ')}”.`,
    why: 'A job or a catalogue is kept as one JSON text.',
    do: 'Take the file as it was saved; a file cut short or edited by hand may lack a bracket, a quote or a comma.',
  }),
  TEXT_TOO_LONG: ({ length, most }) => ({
    what: `The text is ${length} characters long; up to ${most} are read.`,
    why: 'A job of 400 openings is well under that.',
    do: 'Look whether it is the right file; split a larger job in two.',
  }),
  DOCUMENT_NOT_AN_OBJECT: ({ kind }) => ({
    what: `This is JSON, but not ${a[kind]}: one object in braces is expected.`,
    why: '',
    do: `Give the file as ${a[kind]} is saved.`,
  }),
  DOCUMENT_OTHER_FORMAT: ({ kind, found, wanted }) => ({
    what: `This is not ${a[kind]}: ${found === null ? 'it names no format' : `its format says “${found}”, not “${wanted}”`}.`,
    why: '',
    do: `Give a document whose "format" is "${wanted}".`,
  }),
  DOCUMENT_VERSION_UNREADABLE: ({ kind, found }) => ({
    what: `${the[kind]} has no version that can be read${found === null ? '' : `: “${found}”`}.`,
    why: 'The version says how the rest is to be understood, so it is not guessed.',
    do: 'Set "version" to the whole number it was saved with; 1 is the first.',
  }),
  DOCUMENT_NEWER: ({ kind, found, newest }) => ({
    what: `${the[kind]} is of version ${found}; this program knows versions up to ${newest}.`,
    why: 'It was saved by a newer program, and part of it would be lost here.',
    do: 'Open it with the newer program, or update this one.',
  }),
  DOCUMENT_INVALID: ({ kind, issues }, show) => ({
    what: `${the[kind]} cannot be used as it stands. ${listIssues([...issues], show)}`,
    why: 'Nothing is guessed or left out on the way in.',
    do: issues[0] ? `Begin with ${pathText(issues[0].path) || 'the first one named'}.` : '',
  }),
  JOB_NOT_FOUND: ({ id }) => ({
    what: `There is no job “${id}” here.`,
    why: '',
    do: 'Look at the list of jobs; it may have been saved on another machine.',
  }),
  REVISION_NOT_FOUND: ({ id, revision, newest }) => ({
    what: `“${id}” has no revision ${revision}; its newest is ${newest}.`,
    why: '',
    do: `Choose one from 1 to ${newest}.`,
  }),
  JOB_EXISTS: ({ id, newest }) => ({
    what: `A job “${id}” is here already, at revision ${newest}.`,
    why: 'Saving as new would hide what is there.',
    do: 'Open it and save over its newest revision, or give the new job another id.',
  }),
  REVISION_STALE: ({ id, basedOn, newest, savedAt }) => ({
    what: `“${id}” was saved elsewhere since: this was made from revision ${basedOn}, the newest is ${newest} of ${savedAt}.`,
    why: 'Saving over it would lose the other work.',
    do: `Open revision ${newest}, look at what differs, and save again from there.`,
  }),
  PHOTO_NOT_FOUND: ({ id }) => ({
    what: `There is no photo “${id}” here.`,
    why: 'A photo is kept while an offcut in stock has it, and for a day after.',
    do: 'Take the photo again.',
  }),
  PHOTO_EXISTS: ({ id }) => ({
    what: `Another photo is kept as “${id}” already.`,
    why: '',
    do: 'Keep the new one under another id.',
  }),
  PHOTO_NO_PICTURE: () => ({
    what: 'The file is no JPEG, PNG or WebP picture that can be read to its end.',
    why: '',
    do: 'Save the photo as JPEG and try again.',
  }),
  PHOTO_TOO_LARGE: ({ size, most }, show) => ({
    what: `The photo has ${show.number(size / 1e6)} MB; at most ${show.number(most / 1e6)} MB are kept.`,
    why: '',
    do: 'Make it smaller: 1600 dots on its longer side are enough.',
  }),
  PHOTO_TOO_WIDE: ({ width, height, most }) => ({
    what: `The photo has ${width} × ${height} dots; no side may have more than ${most}.`,
    why: '',
    do: 'Make it smaller: 1600 dots on its longer side are enough.',
  }),
  PATTERN_NOT_FOUND: ({ id }) => ({
    what: `There is no kept pattern “${id}” here.`,
    why: '',
    do: 'Look at the list of kept patterns; it may have been kept on another machine.',
  }),
  PATTERN_EXISTS: ({ id, name }) => ({
    what: `A pattern “${id}” is kept already: “${name}”.`,
    why: 'A kept pattern is never drawn over; later jobs may rest on it.',
    do: 'Keep the new one under another id.',
  }),
  SHAPE_IMPOSSIBLE: ({ refusal }, show) => ({
    what: `These segments make no shape: ${impossibleOutline(refusal, show)}.`,
    why: '',
    do: 'Give a closed ring, anticlockwise as seen from outside, that does not cross itself.',
  }),
  PULL_PLACE_MISSING: ({ id }) => ({
    what: `Case “${id}” does not say where the second magnet is.`,
    why: '',
    do: 'Give gap_mm (and offset_mm), or centre_offset_mm.',
  }),
  PULL_REFUSED: ({ id, refusal }, show) => ({
    what: `Case “${id}” cannot be worked out: ${sayPair(refusal, show)}.`,
    why: '',
    do: 'Correct the case; the others were not printed.',
  }),
  PACK_REFUSED: ({ refusal }, show) => ({
    what: `The pieces cannot be laid: ${sayInstance(refusal, show)}.`,
    why: '',
    do: 'Correct the instance.',
  }),
  TAPE_TEXT_UNREADABLE: ({ text }) => ({
    what: `The taped distance “${text.slice(0, 60)}” cannot be read.`,
    why: '',
    do: 'Write it as MARKER.CORNER-MARKER.CORNER=MM, for example 9.1-12.0=1323.9.',
  }),
  RULER_TEXT_UNREADABLE: ({ text }) => ({
    what: `The ruled size of the bars, “${text.slice(0, 60)}”, cannot be read.`,
    why: '',
    do: 'Write it as XxY in mm, for example 200.18x150.29.',
  }),
  TAPS_TEXT_UNREADABLE: ({ text }) => ({
    what: `The points on the line, “${text.slice(0, 60)}”, cannot be read.`,
    why: '',
    do: 'Write them as PHOTO:X,Y X,Y X,Y in pixels, in order round the line, for example 1:620,720 2330,600 700,1552.',
  }),
  LINE_TEXT_UNREADABLE: ({ text }) => ({
    what: `“${text.slice(0, 60)}” is none of the lines that can be meant.`,
    why: '',
    do: 'Say darkest, inner or outer.',
  }),
  TAPS_UNUSABLE: ({ photo, photos, points, least }) => ({
    what:
      photo < 0 || photo >= photos
        ? `The points on the line are of photo ${photo + 1}, and there ${photos === 1 ? 'is 1 photo' : `are ${photos} photos`}.`
        : `The points on the line are only ${points}, and enclose nothing.`,
    why: '',
    do: `Tap at least ${least} points on the line of one photo, in order round it.`,
  }),
  PHOTO_UNREADABLE: ({ name }) => ({
    what: `“${name}” is not a JPEG picture that can be read.`,
    why: '',
    do: 'Save the photo as JPEG and try again.',
  }),
  TRACE_REFUSED: ({ refusal }) => ({
    what: (traceRefusals[refusal.code] as (of: typeof refusal) => string)(refusal),
    why: 'A wrong outline costs more than a second photo.',
    do: '',
  }),
  RESHAPE_REFUSED: ({ refusal }, show) => ({
    what: (reshapeRefusals[refusal.code] as (of: typeof refusal, show: Show) => string)(refusal, show),
    why: '',
    do: '',
  }),
  BYTES_NOT_BASE64: ({ name }) => ({
    what: `The bytes of “${name}” are not base64.`,
    why: '',
    do: 'Send the file’s bytes in base64, without line breaks.',
  }),
  DRAWING_REFUSED: ({ name, refusal }, show) => ({
    what: `“${name}” gives no outline: ${sayFileRefusal(refusal, show)}.`,
    why: '',
    do: fileRemedy(refusal),
  }),
  SHEETS_REFUSED: ({ refusal }, show) => saySheetsRefusal(refusal, show),
  OPENING_UNKNOWN: ({ opening, known }) => ({
    what: `This job has no opening “${opening.slice(0, 60)}”.`,
    why: '',
    do: known.length === 0 ? 'It has no opening yet.' : `Name one of ${joinWords(known, 'or')}.`,
  }),
  OPENING_NOT_HELD: ({ opening }, show) => ({
    what: `Opening ${show.opening(opening)} has no hold points yet.`,
    why: 'Its outline or its panel could not be worked out.',
    do: 'Ask check what it lacks.',
  }),
  HOLD_REFUSED: ({ opening, refusal }, show) => ({
    what: `What holds opening ${show.opening(opening)} cannot be worked out: ${sayHold(refusal, show)}.`,
    why: '',
    do: 'Look at its glass, its magnets and the weather of the job.',
  }),
  STORE_BUSY: () => ({
    what: 'Another program is writing to the data folder.',
    why: 'Nothing was saved.',
    do: 'Try again in a moment.',
  }),
  STORE_FULL: () => ({
    what: 'The disk with the data folder is full.',
    why: 'Nothing was saved; what was saved before is safe.',
    do: 'Make room on the disk and save again.',
  }),
  TAKES_TOO_LONG: ({ seconds }) => ({
    what: `This took more than ${seconds} s and was stopped.`,
    why: '',
    do: 'Try it with fewer openings at once, or on the command line.',
  }),
  HOST_NOT_ALLOWED: ({ host }) => ({
    what: `This server does not answer for “${host.slice(0, 60)}”.`,
    why: 'It serves this machine alone, so that no web page elsewhere can reach your jobs.',
    do: 'Open it at 127.0.0.1 or localhost, or add the name to PANEWRIGHT_HOSTS.',
  }),
  ORIGIN_NOT_ALLOWED: ({ origin }) => ({
    what: `A page of “${origin.slice(0, 60)}” asked; only this server’s own pages may.`,
    why: 'Another site must not read or change your jobs.',
    do: 'Open the page from this server.',
  }),
  BODY_NOT_JSON: ({ found }) => ({
    what: `The request’s body must be sent as application/json; it came as “${found.slice(0, 60)}”.`,
    why: '',
    do: 'Set the content type.',
  }),
  PATH_UNKNOWN: ({ path }) => ({
    what: `There is nothing at “${path.slice(0, 80)}”.`,
    why: '',
    do: 'The operations are listed at /api/openapi.json.',
  }),
};
