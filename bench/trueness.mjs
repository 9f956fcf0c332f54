// How true the demo's files are, by programs that share no code with the one that writes them:
// the printer's page by pdftoppm at 1200 dpi, DXF by ezdxf's audit and by dxf-parser, SVG by Chromium's own geometry,
// HP-GL by the tests' plotter.
// Run: node bench/trueness.mjs [--write]. Needs pdftoppm (poppler-utils), python3 with ezdxf, Chromium.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { nodeBuild } from '../tools/run/build.mjs';
import { findChromium } from '../tools/run/chromium.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';

const DPI = 1200;
const folder = mkdtempSync(join(tmpdir(), 'panewright-trueness-'));
const set = join(folder, 'set');
const cli = at('apps', 'cli', 'bin', 'panewright.mjs');
const job = at('demo', 'camper.job.json');
const asked = ['--paper', 'tabloid', '--printer-test', '--date', '2026-11-25'];
execFileSync(process.execPath, [cli, 'plan', job, '--out', set, ...asked], { stdio: 'inherit' });
const rows = [];
const row = (what, by, found, wanted) => rows.push(`| ${what} | ${by} | ${found} | ${wanted} |`);

/** A page as grey dots, 0 black: rows from the top. */
function raster(pdf, page) {
  const out = join(folder, 'page');
  execFileSync('pdftoppm', ['-r', `${DPI}`, '-gray', '-f', `${page}`, '-singlefile', pdf, out]);
  const bytes = readFileSync(`${out}.pgm`);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
  const [width, height] = [Number(head[1]), Number(head[2])];
  return { width, height, dot: (x, y) => bytes[head[0].length + y * width + x] };
}

const dots = (mm) => (mm / 25.4) * DPI;

/** Middles of the dark runs along a row or a column, mm, each weighted by how dark its dots are. */
function lines(count, dot) {
  const found = [];
  for (let i = 0; i < count; i++) {
    let [sum, moment] = [0, 0];
    for (; i < count && dot(i) < 250; i++) {
      const dark = 255 - dot(i);
      sum += dark;
      moment += dark * (i + 0.5);
    }
    if (sum > 300) found.push(((moment / sum) * 25.4) / DPI);
  }
  return found;
}

// The test page's bars begin 14 mm from the left and 19 mm from the foot; its upright bar at x 19 mm. Read 1.2 mm off
// the bars' own lines, where only their ticks are.
const test = raster(join(set, 'printer-test-tabloid.pdf'), 1);
const across = lines(test.width, (i) => test.dot(i, test.height - 1 - Math.round(dots(19 + 1.2))));
// The head of the page and the line at its foot are crossed by that column too.
const along = lines(test.height, (i) => test.dot(Math.round(dots(19 - 1.2)), i)).filter(
  (middle) => middle > 25 && middle < 431.8 - 25,
);
const spans = { 'bar across the paper': [across, 9 * 25.4], 'bar along the paper': [along, 14 * 25.4] };
for (const [name, [middles, nearly]] of Object.entries(spans)) {
  const length = middles.at(-1) - middles[0];
  const nominal = Math.round(length / 25.4) * 25.4;
  if (Math.abs(length - nominal) > 1 || length < nearly - 30)
    throw new Error(`${name}: ${middles.join(' ')}`);
  row(name, `raster, ${DPI} dpi`, `${length.toFixed(3)} mm`, `${nominal.toFixed(3)} mm`);
}

const files = readdirSync(set, { recursive: true }).map(String);
const dxf = files.filter((path) => path.endsWith('.dxf')).map((path) => join(set, path));
const audit = `
import sys, ezdxf
errors = fixes = 0
for path in sys.argv[1:]:
    audited = ezdxf.readfile(path).audit()
    errors += len(audited.errors)
    # R12 has no owner handles: what ends a polyline cannot name one, and the reader makes up for it.
    r12 = [one for one in audited.fixes if 'SEQEND' in one.message and not path.endswith('-AC1015.dxf')]
    fixes += len(audited.fixes) - len(r12)
print(ezdxf.__version__, errors, fixes)`;
const python = existsSync('/usr/bin/python3') ? '/usr/bin/python3' : 'python3';
const audited = spawnSync(python, ['-c', audit, ...dxf], { encoding: 'utf8' });
if (audited.status !== 0)
  row('DXF files', 'ezdxf', `not run: ${audited.stderr.trim().split('\n').at(-1)}`, '');
else {
  const [version, errors, fixes] = audited.stdout.trim().split(' ');
  row(
    `${dxf.length} DXF files`,
    `ezdxf ${version}, audit`,
    `${errors} errors, ${fixes} fixes`,
    '0 errors, 0 fixes',
  );
}

/** Distance from a point to an outline of lines and arcs. */
function distance({ segments }, [px, py]) {
  let least = Infinity;
  let from = segments.at(-1).to;
  for (const { kind, to, bulge } of segments) {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    if (kind === 'line') {
      const t = Math.min(1, Math.max(0, ((px - from.x) * dx + (py - from.y) * dy) / (dx * dx + dy * dy)));
      least = Math.min(least, Math.hypot(px - from.x - t * dx, py - from.y - t * dy));
    } else {
      const lift = (1 - bulge * bulge) / (4 * bulge);
      const [cx, cy] = [(from.x + to.x) / 2 - dy * lift, (from.y + to.y) / 2 + dx * lift];
      const radius = Math.hypot(from.x - cx, from.y - cy);
      least = Math.min(least, Math.abs(Math.hypot(px - cx, py - cy) - radius));
    }
    from = to;
  }
  return least;
}

/** Lower left corner of an outline's box; arcs are walked in small steps. */
function lowerLeft({ segments }) {
  let [x, y] = [Infinity, Infinity];
  let from = segments.at(-1).to;
  for (const { kind, to, bulge } of segments) {
    [x, y] = [Math.min(x, to.x), Math.min(y, to.y)];
    if (kind === 'arc') {
      const lift = (1 - bulge * bulge) / (4 * bulge);
      const cx = (from.x + to.x) / 2 - (to.y - from.y) * lift;
      const cy = (from.y + to.y) / 2 + (to.x - from.x) * lift;
      const [start, sweep] = [Math.atan2(from.y - cy, from.x - cx), 4 * Math.atan(bulge)];
      const radius = Math.hypot(from.x - cx, from.y - cy);
      for (let i = 0; i <= 5000; i++) {
        const angle = start + (sweep * i) / 5000;
        [x, y] = [Math.min(x, cx + radius * Math.cos(angle)), Math.min(y, cy + radius * Math.sin(angle))];
      }
    }
    from = to;
  }
  return { x, y };
}

const plan = JSON.parse(readFileSync(join(set, 'plan.json'), 'utf8'));
const flags = ['--no-sandbox', '--disable-gpu'];
const browser = await chromium.launch({ executablePath: findChromium(), args: flags });
let [worst, pieces] = [0, 0];
try {
  const page = await browser.newPage();
  for (const piece of plan.cutting.pieces) {
    const path = join(set, 'pieces', `${piece.piece}.svg`);
    if (!existsSync(path)) continue;
    await page.setContent(readFileSync(path, 'utf8'));
    const points = await page.evaluate(() => {
      const cut = document.querySelector('g.cut path');
      // A hundred times as large: the browser makes curves of chords that leave them by up to 0.02 of a unit.
      const scale = 100;
      const larger = (letter, all) =>
        letter +
        all.map((one, i) => (letter === 'A' && i % 7 > 1 && i % 7 < 5 ? one : one * scale)).join(' ');
      const parts = cut.getAttribute('d').match(/[A-Z][^A-Z]*/g);
      cut.setAttribute(
        'd',
        parts
          .map((one) =>
            larger(
              one[0],
              one
                .slice(1)
                .trim()
                .split(/[\s,]+/)
                .filter(Boolean)
                .map(Number),
            ),
          )
          .join(''),
      );
      const box = cut.ownerSVGElement.viewBox.baseVal;
      const mm = cut.ownerSVGElement.width.baseVal.valueInSpecifiedUnits / box.width / scale;
      const { x: left, y: top, height } = cut.getBBox();
      // From the lower left corner of its box, y up, as the plan has it.
      return Array.from({ length: 400 }, (_, i) => {
        const { x, y } = cut.getPointAtLength((cut.getTotalLength() * i) / 400);
        return [(x - left) * mm, (top + height - y) * mm];
      });
    });
    const corner = lowerLeft(piece.outline);
    const off = points.map(([x, y]) => distance(piece.outline, [x + corner.x, y + corner.y]));
    worst = Math.max(worst, ...off);
    pieces += 1;
  }
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
row(
  `${pieces} pieces as SVG, 400 points each`,
  'Chromium’s getPointAtLength',
  `${worst.toFixed(4)} mm off the plan at most`,
  '0.01 mm',
);

// DXF and plotter files read back piece by piece; tiles laid by their marks are held by a test of their own.
const out = at('.cache', 'bench', 'trueness');
await build(nodeBuild({ truenessRun: at('bench', 'truenessRun.ts') }, out));
const { run } = await import(pathToFileURL(`${out}/truenessRun.mjs`).href);
for (const [what, by, found, wanted] of run(JSON.parse(readFileSync(job, 'utf8'))))
  row(what, by, found, wanted);
row(
  'finished edges on Letter and A4 tiles, laid by their marks',
  'pdf.js, packages/render/src/patternPdf.test.ts',
  'under 0.01 mm, on a tile and across all, or the test fails',
  '0.05 mm on a tile, 0.2 mm across',
);

const text = [
  ...['## bench/trueness.mjs', '', 'The nine-window demo: is what is written what was planned?', ''],
  ...['| what | by | found | wanted |', '|---|---|---|---|', ...rows],
].join('\n');
console.log(text);
if (process.argv.includes('--write')) recordBench('bench/trueness.mjs', text);
