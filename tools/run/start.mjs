// npm start: installs and builds when needed, then serves on 127.0.0.1 until stopped.
import { pathToFileURL } from 'node:url';
import { ensureBuilt } from './build.mjs';
import { at } from './root.mjs';

await ensureBuilt();
const { serve } = await import(pathToFileURL(at('apps/server/dist/server.mjs')).href);
await serve({ root: at('.') });
