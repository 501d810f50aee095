import { parseArgs } from 'node:util';

export interface StartOptions {
  readonly demo: boolean;
  readonly browser: boolean;
  readonly open: boolean;
  readonly help: boolean;
  readonly port: number | null;
  /** Another data folder than the user's own. */
  readonly data: string | null;
  /** A folder of built screens, instead of building them where they are stale. */
  readonly screens: string | null;
  /** What to do with a damaged database; null leaves it alone. */
  readonly mend: Mend | null;
}

/** What the user asks to be done with a damaged database, on purpose. `copy` null is the last good one. */
export type Mend = { readonly kind: 'restore'; readonly copy: string | null } | { readonly kind: 'start-empty' };

export const help = `Plumbline: judge repetitions in timed station sets.

  npm start -- [options]     the program on your own data
  npm run demo -- [options]  the same on an invented gym's

  --browser        in the browser, even where there is Electron
  --port NUMBER    serve the browser on this port (otherwise the same one each time)
  --no-open        do not open the browser, only print the address
  --data FOLDER    keep the database in this folder
  --demo           the invented gym, in a database of its own
  --screens FOLDER serve screens built before from this folder
  --help           these lines

For a damaged database only; the damaged file is renamed and kept:

  --restore COPY   put this copy in its place ("last" for the last good one)
  --start-empty    begin an empty database
`;

/** Reads the arguments; a mistake in them is an Error whose message is a sentence. */
export function readOptions(args: readonly string[]): StartOptions {
  const { values } = parseArgs({
    args: [...args],
    options: {
      demo: { type: 'boolean', default: false },
      browser: { type: 'boolean', default: false },
      'no-open': { type: 'boolean', default: false },
      help: { type: 'boolean', short: 'h', default: false },
      port: { type: 'string' },
      data: { type: 'string' },
      screens: { type: 'string' },
      restore: { type: 'string' },
      'start-empty': { type: 'boolean', default: false },
    },
  });
  if (values.restore !== undefined && values['start-empty']) {
    throw new Error('Choose one of --restore and --start-empty.');
  }
  return {
    demo: values.demo,
    browser: values.browser,
    open: !values['no-open'],
    help: values.help,
    port: values.port === undefined ? null : readPort(values.port),
    data: values.data ?? null,
    screens: values.screens ?? null,
    mend: readMend(values.restore, values['start-empty']),
  };
}

function readPort(text: string): number {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : 0;
  if (port < 1 || port > 65_535) throw new Error(`--port takes a number from 1 to 65535, not "${text}".`);
  return port;
}

function readMend(restore: string | undefined, startEmpty: boolean): Mend | null {
  if (startEmpty) return { kind: 'start-empty' };
  if (restore === undefined) return null;
  return { kind: 'restore', copy: restore === 'last' ? null : restore };
}
