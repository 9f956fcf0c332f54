// The page's words sit in its text folder, each language in its own: none is spelt out where it is shown.
import { filesBelow } from './sources.mjs';

/** Names that keys of the keyboard, an error, a paper or a scale have in code. */
const CODE =
  /^(Enter|Escape|Tab|Backspace|Delete|Home|End|Page(Up|Down)|Arrow\w+|Control\+\S+|Refused|Letter|Bft)$/;
const WORD = /\p{L}{2}/u;
/** What is said of a thing shown, in markup and in properties handed on. */
const SAID =
  /\b(aria-label|aria-description|aria-roledescription|title|placeholder|alt|label|legend)="([^"]*)"/g;
const TEXT = /(?:(?:[^=\s]>|^[ \t]*>)([^<>{}()=;[\]&|]*)|\}([^<>{}()=;[\]&|:\n]+))(?=[<{])/gm;
const LITERAL = /'([^'\n]+)'/g;
/** Between a closing brace and the next one there may be code. */
const JOINT = /^\s*(else|catch|finally|from|while|as|satisfies|const|return|,)(\s|$)/;

const blank = (text) => text.replace(/[^\n]/g, ' ');
const lineOf = (text, index) => text.slice(0, index).split('\n').length;

/** Words spelt out in the file of a component. */
export function pageWordProblems(path, text) {
  const plain = text
    .replace(/\/\*[\s\S]*?\*\/|(?<![:'"])\/\/.*$/gm, blank)
    .replace(/^(import|export) .*$/gm, blank);
  const problems = [];
  const found = (index, words) =>
    problems.push(`${path}:${lineOf(text, index)}: “${words.trim()}” belongs into apps/web/src/text`);
  for (const { index, 2: words } of plain.matchAll(SAID)) if (WORD.test(words)) found(index, words);
  const bare = plain.replace(LITERAL, blank).replace(/"[^"\n]*"|`[^`]*`/g, blank);
  for (const { index, 0: all, 1: after, 2: beside } of bare.matchAll(TEXT)) {
    const words = after ?? beside;
    if (WORD.test(words) && !JOINT.test(words)) found(index + all.length - words.trimStart().length, words);
  }
  for (const { index, 1: words } of plain.matchAll(LITERAL))
    if (/^\p{Lu}\p{Ll}+(?! *[:#.])/u.test(words) && !CODE.test(words)) found(index, words);
  return problems;
}

export const guardPageWords = () =>
  filesBelow(['apps/web/src'], /\.tsx$/).flatMap(({ path, text }) => pageWordProblems(path, text()));
