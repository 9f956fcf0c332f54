import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { madePages } from '@panewright/contract';
import { expect, test } from 'vitest';

test.each(Object.entries(madePages()))(
  '%s is what the contract makes; npm run docs renews it',
  (path, made) => {
    const there = readFileSync(fileURLToPath(new URL(`../../../${path}`, import.meta.url)), 'utf8');
    expect(there === made, `${path} is out of date: run npm run docs`).toBe(true);
  },
);
