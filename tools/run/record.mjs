import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { at } from './root.mjs';

/** Puts a table into docs/bench.md, in place of the one of the same name. */
export function record(name, text) {
  const path = at('docs', 'bench.md');
  const page = existsSync(path) ? readFileSync(path, 'utf8') : '# Benchmarks\n';
  const [open, close] = [`<!-- ${name} -->`, `<!-- end of ${name} -->`];
  const block = `${open}\n${text}\n${close}`;
  const from = page.indexOf(open);
  const to = page.indexOf(close);
  const next =
    from >= 0 && to > from
      ? page.slice(0, from) + block + page.slice(to + close.length)
      : `${page.trimEnd()}\n\n${block}\n`;
  writeFileSync(path, next);
}
