import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** Oracle: axe-core's rules for WCAG 2.0, 2.1 and 2.2, levels A and AA; contrast is measured by it. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

interface Axe {
  readonly run: (
    what: Document,
    how: object,
  ) => Promise<{
    readonly violations: readonly {
      readonly id: string;
      readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
    }[];
  }>;
}

/** The rules asked: those of WCAG, its best practice too, or contrast alone, which is all that another theme changes. */
type Asked = 'wcag' | 'practice' | 'contrast';
const ASKED: Readonly<Record<Asked, object>> = {
  wcag: { type: 'tag', values: RULES },
  practice: { type: 'tag', values: [...RULES, 'best-practice'] },
  contrast: { type: 'rule', values: ['color-contrast'] },
};

/** What axe finds on the page as it stands: rule and place, a line each. */
export async function accessFaults(page: Page, asked: Asked = 'wcag'): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis)))
    await page.evaluate(
      await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'),
    );
  return page.evaluate(async (runOnly) => {
    // From the top: what the bar of stages happens to lie over where the page was left is no fault of size.
    window.scrollTo(0, 0);
    const { axe } = globalThis as unknown as { axe: Axe };
    const { violations } = await axe.run(document, { runOnly });
    return violations.flatMap(({ id, nodes }) =>
      nodes.slice(0, 3).map((node) => `${id} ${node.html.slice(0, 140)} ${node.failureSummary}`),
    );
  }, ASKED[asked]);
}

/** Roles that a person acts on; each must say what it is. */
const ACTED_ON = new Set([
  ...['button', 'link', 'textbox', 'searchbox', 'combobox', 'checkbox', 'radio', 'slider', 'tab', 'menuitem'],
  ...['dialog', 'img', 'image'],
]);

interface AccessibilityTree {
  readonly nodes: readonly {
    readonly ignored: boolean;
    readonly role?: { readonly value: string };
    readonly name?: { readonly value: string };
  }[];
}

/** What has no name in the browser's accessibility tree, which is what a screen reader is given. */
export async function nameless(page: Page): Promise<readonly string[]> {
  const client = await page.context().newCDPSession(page);
  const tree = (await client.send('Accessibility.getFullAXTree')) as unknown as AccessibilityTree;
  await client.detach();
  return tree.nodes.flatMap(({ ignored, role, name }) =>
    !ignored && ACTED_ON.has(role?.value ?? '') && !name?.value?.trim() ? [`no name: ${role!.value}`] : [],
  );
}
