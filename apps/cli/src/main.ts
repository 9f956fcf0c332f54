import { parseArgs } from 'node:util';
import { call, operationList } from './commands/call.ts';
import { check } from './commands/check.ts';
import { hold } from './commands/hold.ts';
import { labels } from './commands/labels.ts';
import { outline } from './commands/outline.ts';
import { pack } from './commands/pack.ts';
import { plan } from './commands/plan.ts';
import { pull } from './commands/pull.ts';
import { trace } from './commands/trace.ts';
import { EXIT, Usage } from './exits.ts';
import { HELP } from './help.ts';
import { type Io, processIo } from './io.ts';
import { onlyOne } from './options.ts';
import { SHEET_SWITCHES, SHEET_TEXTS, type SheetFlags } from './sheetFlags.ts';

const text = { type: 'string' } as const;
const flag = { type: 'boolean' } as const;
const several = { type: 'string', multiple: true } as const;
const design = { catalogue: text, seed: text, json: flag } as const;

/** Runs one command line; gives its exit code. */
export async function main(argv: readonly string[], io: Io = processIo): Promise<number> {
  try {
    return await run(argv, io);
  } catch (error) {
    if (error instanceof Usage) {
      io.err(`${error.message}\n`);
      return EXIT.badInput;
    }
    io.err(
      `Something went wrong in this program: ${error instanceof Error ? (error.stack ?? error.message) : error}\n`,
    );
    return EXIT.fault;
  }
}

async function run([command, ...rest]: readonly string[], io: Io): Promise<number> {
  if (rest.includes('--help') || rest.includes('-h')) return run(['help'], io);
  switch (command) {
    case 'plan': {
      const { values, names } = read(rest, {
        ...{ ...design, out: text, date: text, revision: text },
        ...Object.fromEntries(SHEET_TEXTS.map((name) => [name, text])),
        ...Object.fromEntries(SHEET_SWITCHES.map((name) => [name, flag])),
        offer: several,
      });
      return plan(
        {
          job: onlyOne('one job', names),
          ...pick(values, ['catalogue', 'seed', 'out', 'date', 'revision']),
          sheets: {
            ...pick(values, SHEET_TEXTS),
            ...Object.fromEntries(SHEET_SWITCHES.map((name) => [name, values[name] === true])),
            offers: Array.isArray(values.offer) ? values.offer : [],
          } as unknown as SheetFlags,
          json: values.json === true,
        },
        io,
      );
    }
    case 'check': {
      const { values, names } = read(rest, design);
      return check(
        {
          job: onlyOne('one job', names),
          ...pick(values, ['catalogue', 'seed']),
          json: values.json === true,
        },
        io,
      );
    }
    case 'hold': {
      const { values, names } = read(rest, { catalogue: text, opening: text, json: flag });
      return hold(
        {
          job: onlyOne('one job', names),
          ...pick(values, ['catalogue', 'opening']),
          json: values.json === true,
        },
        io,
      );
    }
    case 'pull': {
      const { values, names } = read(rest, { json: flag });
      return pull({ cases: onlyOne('one file of cases', names), json: values.json === true }, io);
    }
    case 'pack': {
      const { values, names } = read(rest, { seconds: text, evaluations: text, seed: text, json: flag });
      return pack(
        {
          instance: onlyOne('one instance', names),
          ...pick(values, ['seconds', 'evaluations', 'seed']),
          json: values.json === true,
        },
        io,
      );
    }
    case 'labels': {
      const texts = ['out', 'labels', 'label-start', 'units', 'language', 'date'] as const;
      const { values, names } = read(rest, {
        ...Object.fromEntries(texts.map((name) => [name, text])),
        ...{ offcut: several, json: flag },
      });
      const { 'label-start': start, ...given } = pick(values, texts);
      return labels(
        {
          catalogue: onlyOne('one catalogue', names),
          ...{ ...given, start, json: values.json === true },
          offcuts: Array.isArray(values.offcut) ? values.offcut : [],
        },
        io,
      );
    }
    case 'trace': {
      const { values, names } = read(rest, {
        tape: several,
        ...{ ruler: text, paper: text, line: text, taps: text, json: flag },
      });
      if (names.length === 0) throw new Usage('Name one photo or more.');
      const tapes = Array.isArray(values.tape) ? values.tape : [];
      return trace(
        {
          photos: names,
          tapes,
          ...pick(values, ['ruler', 'paper', 'line', 'taps']),
          json: values.json === true,
        },
        io,
      );
    }
    case 'outline': {
      const { values, names } = read(rest, { unit: text, points: text, json: flag });
      return outline(
        {
          file: onlyOne('one drawing', names),
          ...pick(values, ['unit', 'points']),
          json: values.json === true,
        },
        io,
      );
    }
    case 'call': {
      const { values, names } = read(rest, { server: text, json: flag });
      const [name, input, ...more] = names;
      if (name === undefined || more.length > 0)
        throw new Usage('Name one operation and, if it has one, its input.');
      return call({ name, input, ...pick(values, ['server']) }, io);
    }
    case 'operations':
      io.out(operationList());
      return EXIT.fine;
    case undefined:
    case 'help':
    case '--help':
    case '-h':
      io.out(HELP);
      return EXIT.fine;
    default:
      throw new Usage(`There is no command “${command}”. panewright --help lists them.`);
  }
}

type Values = Readonly<Record<string, string | boolean | readonly string[] | undefined>>;

function read(
  args: readonly string[],
  options: Readonly<Record<string, { readonly type: 'string' | 'boolean'; readonly multiple?: true }>>,
) {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options,
      allowPositionals: true,
      strict: true,
    });
    return { values: values as Values, names: positionals };
  } catch (error) {
    const named = /'(--?[^' ]+)/.exec((error as Error).message)?.[1];
    const what =
      named === undefined
        ? 'The options cannot be read.'
        : `The option ${named} is not known here, or lacks its value.`;
    throw new Usage(`${what} panewright --help lists what there is.`);
  }
}

/** The texts of some options; undefined where left out. */
function pick<K extends string>(values: Values, keys: readonly K[]): Record<K, string | undefined> {
  return Object.fromEntries(
    keys.map((key) => [key, typeof values[key] === 'string' ? values[key] : undefined]),
  ) as Record<K, string | undefined>;
}
