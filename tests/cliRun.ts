import { type Io, main, searchHere } from '@panewright/cli';

export interface CliRun {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

const nobody: typeof fetch = () => Promise.reject(new Error('no server'));

/** The command line in this process, with what it printed. */
export async function runCli(argv: readonly string[], door: Partial<Io> = {}): Promise<CliRun> {
  let out = '';
  let err = '';
  const code = await main(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    fetch: nobody,
    clock: () => performance.now() / 1000,
    today: () => '2026-11-25',
    searchThreads: searchHere,
    ...door,
  });
  return { code, out, err };
}
