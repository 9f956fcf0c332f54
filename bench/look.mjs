// Every screen in both themes, at a bench's and a phone's size: faults of access (axe-core), contrast, size of what is
// pressed, scrolling sideways. Run: node bench/look.mjs [SCREEN …] [--write]
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { EVERY_SCREEN, showScreen } from '../apps/web/everyScreen.mjs';
import { ensureBuilt } from '../tools/run/build.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { serve, startBrowser } from '../tools/run/served.mjs';
import { lookAtPage } from './lookInPage.mjs';

const SIZES = [
  ['bench, 1280 × 900', { width: 1280, height: 900 }],
  ['phone, 390 × 844', { width: 390, height: 844 }],
];
const THEMES = ['light', 'dark'];
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const axeFaults = (page) =>
  page.evaluate(async (runOnly) => {
    const { violations } = await axe.run(document, { runOnly });
    return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id} ${node.html.slice(0, 140)}`));
  }, RULES);

const leastOf = (list, by) =>
  list.reduce((least, one) => (one[by] < least[by] ? one : least), { [by]: Infinity });
const failing = (list) => list.filter(({ ratio, asked }) => ratio < asked);

/** One size and theme: what was found over all screens. */
class Sums {
  screens = 0;
  axe = 0;
  texts = [];
  edges = [];
  rings = [];
  targets = [];
  window = [];
  sideways = 0;

  add(name, found, axe, complain) {
    this.screens++;
    this.axe += axe.length;
    for (const kind of ['texts', 'edges', 'rings', 'targets']) this[kind].push(...found[kind]);
    if (name === 'window') this.window.push(...found.targets);
    if (found.sideways > 0) this.sideways++;
    for (const one of axe) complain(`axe: ${one}`);
    for (const kind of ['texts', 'edges', 'rings'])
      for (const one of failing(found[kind])) complain(`${kind}: ${one.ratio.toFixed(2)} ${one.what}`);
    for (const one of found.targets)
      if (one.kind === 'small') complain(`target: ${one.least.toFixed(0)} ${one.what}`);
    if (found.sideways > 0) complain(`scrolls sideways by ${found.sideways}`);
  }

  row(name) {
    const text = (list) =>
      `${leastOf(list, 'ratio').ratio.toFixed(2)} (${failing(list).length} of ${list.length})`;
    const kinds = (kind) => this.targets.filter((one) => one.kind === kind).length;
    return `| ${name} | ${this.screens} | ${this.axe} | ${text(this.texts)} | ${text(this.edges)} | ${leastOf(this.rings, 'ratio').ratio.toFixed(2)} | ${this.targets.length}: ${kinds('small')}, ${kinds('free')}, ${kinds('sentence')} | ${Math.floor(leastOf(this.window, 'least').least)} | ${this.sideways} |`;
  }
}

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const data = mkdtempSync(join(tmpdir(), 'panewright-look-'));
await ensureBuilt();
const { server, address } = await serve(data);
const browser = await startBrowser();
const sums = new Map();
try {
  for (const screen of EVERY_SCREEN) {
    if (asked.length > 0 && !asked.includes(screen[0])) continue;
    const page = await browser.newPage({ viewport: SIZES[0][1] });
    await showScreen(page, address, screen);
    await page.evaluate(AXE);
    // A screen is brought up once and then seen at each size, which is most of what the run takes.
    for (const [size, viewport] of SIZES) {
      await page.setViewportSize(viewport);
      await page.waitForTimeout(300);
      // From its top, so that no control happens to lie half under the row of stations.
      await page.evaluate(() => scrollTo(0, 0));
      for (const colorScheme of THEMES) {
        await page.emulateMedia({ colorScheme });
        const name = `${size}, ${colorScheme}`;
        if (!sums.has(name)) sums.set(name, new Sums());
        const complain = (what) => console.log(`${screen[0]}, ${name}: ${what}`);
        sums.get(name).add(screen[0], await page.evaluate(lookAtPage), await axeFaults(page), complain);
      }
    }
    await page.close();
  }
} finally {
  await browser.close();
  server.kill();
  rmSync(data, { recursive: true, force: true });
}
const table = [
  '| | screens | faults axe-core finds | least contrast of letters (too little, of all) | of the edges of fields and buttons | of the focus ring | what is pressed: too small, small with room around it, links in a sentence | least at the window, px | screens that scroll sideways |',
  '|---|---|---|---|---|---|---|---|---|',
  ...[...sums].map(([name, one]) => one.row(name)),
].join('\n');
const about =
  'Asked by WCAG 2.2, level AA: letters 4.5 (large ones 3), edges and focus ring 3, what is pressed 24 px each way or room around it. axe-core with its rules of WCAG 2.0 to 2.2, A and AA, and best practice. What is disabled does not count. Screens: ';
const looked = EVERY_SCREEN.map(([name]) => name).filter(
  (name) => asked.length === 0 || asked.includes(name),
);
console.log(table);
if (process.argv.includes('--write'))
  recordBench(
    'bench/look.mjs',
    `## What is seen and pressed: \`npm run bench -- look\`\n\n${about}${looked.join(', ')}.\n\n${table}`,
  );
