import { guardCitations } from './citations.mjs';
import { guardImports } from './imports.mjs';
import { guardPageWords } from './pageWords.mjs';
import { guardSides } from './sides.mjs';
import { guardSourcesPage } from './sourcesPage.mjs';
import { guardWords } from './words.mjs';

const guards = {
  imports: guardImports,
  citations: guardCitations,
  'sources page': guardSourcesPage,
  words: guardWords,
  'words of the page': guardPageWords,
  sides: guardSides,
};
let count = 0;
for (const [name, guard] of Object.entries(guards)) {
  const problems = guard();
  count += problems.length;
  for (const problem of problems) console.error(`${name}: ${problem}`);
}
console.log(
  count === 0 ? 'The guards found nothing.' : `The guards found ${count} problem${count === 1 ? '' : 's'}.`,
);
process.exitCode = count === 0 ? 0 : 1;
