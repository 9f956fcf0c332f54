import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the clone. */
export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
export const at = (...parts) => join(root, ...parts);

/** Says why it cannot go on and ends with code 1: for what the person at the keyboard can mend. */
export function giveUp(sentence) {
  console.error(sentence);
  process.exit(1);
}

/** This project runs on Node 20.19 and later. */
export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    giveUp(
      `Panewright needs Node 20.19 or later; this is Node ${process.versions.node}. Install a newer Node and try again.`,
    );
  }
}
