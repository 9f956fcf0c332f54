// Draws the icons of the installed page from public/mark.svg. Run: node apps/web/icons.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { findChromium } from '../../tools/run/chromium.mjs';
import { at } from '../../tools/run/root.mjs';

const mark = readFileSync(at('apps/web/public/mark.svg'), 'utf8');
const browser = await chromium.launch({
  executablePath: findChromium(),
  args: ['--no-sandbox', '--disable-gpu'],
});
/** `inset`: how much of each side is ground alone; a system may cut a maskable icon to its inner circle. */
for (const [name, size, inset] of [
  ['icon-192', 192, 0],
  ['icon-512', 512, 0],
  ['icon-maskable-512', 512, 0.14],
]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const inner = Math.round(size * (1 - 2 * inset));
  await page.setContent(
    `<body style="margin:0;background:${inset ? '#f4f0e6' : 'transparent'};display:grid;place-items:center;height:100vh">` +
      mark.replace('<svg ', `<svg width="${inner}" height="${inner}" `),
  );
  writeFileSync(at('apps/web/public', `${name}.png`), await page.screenshot({ omitBackground: true }));
  await page.close();
}
await browser.close();
