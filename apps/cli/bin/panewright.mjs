#!/usr/bin/env node
// The command of a clone: installs and builds when the sources changed, then runs what was built.
import { pathToFileURL } from 'node:url';
import { ensureBuilt } from '../../../tools/run/build.mjs';
import { at } from '../../../tools/run/root.mjs';

const log = console.log;
// What a command prints may be read by another program: building talks to the person only.
console.log = console.error;
await ensureBuilt();
console.log = log;
const { main } = await import(pathToFileURL(at('apps', 'cli', 'dist', 'panewright.mjs')).href);
process.exitCode = await main(process.argv.slice(2));
