import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** Oracle: axe-core's rules for WCAG 2.0, 2.1 and 2.2, levels A and AA. Rule and place of each violation. */
export async function accessFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: {
        run: (
          what: Document,
          how: object,
        ) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
      };
    };
    const how = { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] };
    const { violations } = await axe.run(document, how);
    return violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html.slice(0, 140)}`);
  });
}
