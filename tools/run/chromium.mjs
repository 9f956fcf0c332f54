import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { runProgram } from './runProgram.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

function executable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** Path of a Chromium on this machine, or undefined. PANEWRIGHT_CHROMIUM goes first. */
export function findChromium() {
  const named = process.env.PANEWRIGHT_CHROMIUM;
  if (named) return executable(named) ? named : undefined;
  const folders = ['/usr/bin', ...(process.env.PATH ?? '').split(delimiter)];
  return folders.flatMap((folder) => NAMES.map((name) => join(folder, name))).find(executable);
}

/** What the tests need from the system besides Node: the program that shows it is there, and its Debian package. */
const EXTRAS = [
  { package: 'poppler-utils', there: () => spawnSync('pdftotext', ['-v']).status === 0 },
  { package: 'python3-ezdxf', there: () => pythonWithEzdxf() !== undefined },
];

/** A Python that has ezdxf, or undefined. */
export function pythonWithEzdxf() {
  return ['/usr/bin/python3', 'python3'].find(
    (python) => spawnSync(python, ['-c', 'import ezdxf']).status === 0,
  );
}

/** Names of the Debian packages that are missing. */
export function missingPackages() {
  return [
    ...(findChromium() ? [] : ['chromium']),
    ...EXTRAS.filter((extra) => !extra.there()).map((extra) => extra.package),
  ];
}

/** Installs what is missing where that is permitted (Debian, root); else answers with what to install. */
export async function ensureTestTools() {
  if (process.env.PANEWRIGHT_CHROMIUM && !findChromium()) {
    return `PANEWRIGHT_CHROMIUM names ${process.env.PANEWRIGHT_CHROMIUM}, which is not a program that can be run. Correct it or unset it.`;
  }
  let missing = missingPackages();
  if (missing.length > 0 && process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0) {
    console.log(`Installing ${missing.join(', ')} from the system's packages …`);
    const options = {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    };
    await runProgram('apt-get', ['update', '-q'], options);
    for (const name of missing)
      await runProgram('apt-get', ['install', '-y', '-q', '--no-install-recommends', name], options);
    missing = missingPackages();
  }
  if (missing.length === 0) return undefined;
  return (
    `The tests need ${missing.join(' and ')}, which this machine does not have. On Debian or Ubuntu: ` +
    `sudo apt-get install ${missing.join(' ')}.` +
    (missing.includes('chromium') ? ' A Chromium elsewhere is found by PANEWRIGHT_CHROMIUM=/path/to/it.' : '')
  );
}
