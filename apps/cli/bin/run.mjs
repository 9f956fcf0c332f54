// Runs the command line that was built; started by panewright.mjs.
import { pathToFileURL } from 'node:url';
import { at } from '../../../tools/run/root.mjs';

const { main } = await import(pathToFileURL(at('apps', 'cli', 'dist', 'panewright.mjs')).href);
process.exitCode = await main(process.argv.slice(2));
