import type {
  ChoiceReason,
  FigureUnit,
  Finding,
  FindingCode,
  HoldGap,
  Origin,
  OriginCode,
  ReadingName,
  ThickGlassAnswer,
  WrongWay,
} from '@panewright/design';
import type { FileNote } from '@panewright/files';
import type { TraceQuestion } from '@panewright/photo';
import type { LengthRefusal } from '@panewright/quantity';
import type { Issue } from '../document/issue.ts';
import type { Refusal, RefusalCode } from '../refusal.ts';
import type { PartWords } from './partWords.ts';
import type { Language, Show } from './show.ts';

/** What is the matter, why it matters, what would do. A part that would only repeat another is left empty. */
export interface Sentences {
  readonly what: string;
  readonly why: string;
  readonly do: string;
}

export type RefusalWords = {
  readonly [C in RefusalCode]: (refusal: Extract<Refusal, { readonly code: C }>, show: Show) => Sentences;
};
export type FindingWords = { readonly [C in FindingCode]: (finding: Finding<C>, show: Show) => Sentences };
export type IssueWords = {
  readonly [K in Issue['kind']]: (issue: Extract<Issue, { readonly kind: K }>, show: Show) => string;
};
export type LengthWords = {
  readonly [C in LengthRefusal['code']]: (refusal: Extract<LengthRefusal, { readonly code: C }>) => string;
};

/** What a sentence about magnets needs besides its numbers: how they are shown, and names by id. */
export interface ChoiceShow {
  readonly show: Show;
  readonly name: (id: string) => string;
}

/** The member of a union that may have this code. */
type AnswerOf<C, A = ThickGlassAnswer> = A extends { readonly code: infer D }
  ? C extends D
    ? A
    : never
  : never;

/** Why a pair of magnets was turned down, and what would hold instead. */
export interface ChoiceWords {
  readonly reasons: {
    readonly [C in ChoiceReason['code']]: (
      reason: Extract<ChoiceReason, { readonly code: C }>,
      words: ChoiceShow,
    ) => string;
  };
  readonly instead: {
    readonly [C in ThickGlassAnswer['code']]: (answer: AnswerOf<C>, words: ChoiceShow) => string;
  };
  readonly none: string;
}

/** Why two neighbours are as far apart as they are, in one sentence. */
export type GapWords = {
  readonly [R in HoldGap['reason']]: (gap: HoldGap, obstruction: string, show: Show) => string;
};

/** A wrong way to put a panel on, and how many of its points would then draw or push off. */
export type WrongWayWords = (way: WrongWay, points: number, show: Show) => string;

/** All sentences of one language. Another language is another object of this type; it does not compile with a gap. */
export interface Messages {
  readonly language: Language;
  readonly refusals: RefusalWords;
  readonly findings: FindingWords;
  readonly issues: IssueWords;
  readonly lengths: LengthWords;
  readonly traceQuestions: {
    readonly [C in TraceQuestion['code']]: (question: Extract<TraceQuestion, { readonly code: C }>) => string;
  };
  readonly choices: ChoiceWords;
  readonly gaps: GapWords;
  readonly wrongWay: WrongWayWords;
  readonly fileNote: (note: FileNote, show: Show) => string;
  readonly part: PartWords['sayPart'];
  /** What is in the way at an opening, by name; '' where it has none. */
  readonly obstruction: (name: string, opening: string) => string;
  /** How an issue of a document as a whole begins, and how the same is said at its field. */
  readonly document: { readonly whole: string; readonly here: string };
  readonly severities: { readonly [S in Finding['severity']]: string };
  readonly readings: { readonly [R in ReadingName]: string };
  readonly statuses: { readonly [S in Origin['status']]: string };
  readonly origins: { readonly [O in OriginCode]: string };
  readonly units: { readonly [U in FigureUnit]: string };
}
