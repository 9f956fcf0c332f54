import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Writes sw.js: the service worker with the list of all files of this build, and a version made from their content. */
export function offlinePlugin(folder) {
  return {
    name: 'panewright-offline',
    apply: 'build',
    enforce: 'post',
    generateBundle(_, bundle) {
      const hash = createHash('sha256');
      const files = ['/'];
      for (const name of Object.keys(bundle).sort()) {
        if (name.endsWith('.map')) continue;
        const one = bundle[name];
        hash.update(name).update(one.type === 'chunk' ? one.code : one.source);
        if (name !== 'index.html') files.push(`/${name}`);
      }
      for (const name of readdirSync(join(folder, 'public')).sort()) {
        hash.update(name).update(readFileSync(join(folder, 'public', name)));
        files.push(`/${name}`);
      }
      const worker = readFileSync(join(folder, 'offline', 'serviceWorker.js'), 'utf8');
      const version = hash.update(worker).digest('hex').slice(0, 16);
      const head = `const VERSION = ${JSON.stringify(version)};\nconst FILES = ${JSON.stringify(files)};\n`;
      this.emitFile({ type: 'asset', fileName: 'sw.js', source: head + worker });
    },
  };
}
