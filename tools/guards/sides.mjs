// The page is written from the left or from the right: its styles say start and end, but for what lies on a drawing.
import { filesBelow } from './sources.mjs';

const SIDED = [
  /(?<![-\w])(left|right)\s*:/,
  /(?<![\w])(margin|padding|border|scroll-margin|scroll-padding)-(left|right)\b/,
  /(?<![\w])border-(top|bottom)-(left|right)-radius\b/,
  /(?<![\w])(text-align|float|clear|caption-side)\s*:\s*(left|right)\b/,
];
/** margin, padding and the like with four sides, of which the second and the fourth differ. */
const FOUR = /(?<![-\w])(margin|padding|inset|border-width|border-style|border-color)\s*:\s*([^;{}]+)/;
const PART = /(?:[^\s(]|\([^)]*\))+/g;
/** A drawing is of a thing and never mirrored: what lies on one is placed by its left. */
const ON_DRAWINGS = ['.reading-place', '.reading-sentence'];

const uneven = (value) => {
  const parts = value.match(PART) ?? [];
  return parts.length === 4 && parts[1] !== parts[3];
};

/** What of a style sheet knows left from right. */
export function sideProblems(path, text) {
  const plain = text.replace(/\/\*[\s\S]*?\*\//g, (comment) => comment.replace(/[^\n]/g, ' '));
  const problems = [];
  let rule = '';
  for (const [index, line] of plain.split('\n').entries()) {
    if (line.includes('{')) rule = line.replace('{', '').trim();
    if (ON_DRAWINGS.includes(rule)) continue;
    const four = FOUR.exec(line);
    if (SIDED.some((one) => one.test(line)) || (four && uneven(four[2])))
      problems.push(`${path}:${index + 1}: “${line.trim()}” is of one side: say start or end`);
  }
  return problems;
}

export const guardSides = () =>
  filesBelow(['apps/web/src'], /\.css$/).flatMap(({ path, text }) => sideProblems(path, text()));
