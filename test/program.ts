// Starts the real program as its user would, in the browser host, on a data folder of its own.

import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '..');
const STARTED_WITHIN_MS = 60_000;

export interface Program {
  /** The printed address, good once. */
  readonly address: string;
  readonly folder: string;
  readonly process: ChildProcess;
  /** Ends the program as Ctrl-C would and waits for it; the data folder goes too, unless it was given. */
  stop(): Promise<void>;
  /** Ends it at once, as a power cut would; the data folder stays. */
  kill(): Promise<void>;
}

export interface ProgramOptions {
  /** A data folder that is there already and stays. */
  readonly folder?: string;
  readonly args?: readonly string[];
}

/** Starts the program and waits for its address. Rejects with all that it printed when there is none. */
export async function startProgram(options: ProgramOptions = {}): Promise<Program> {
  const folder = options.folder ?? mkdtempSync(path.join(tmpdir(), 'plumbline-program-'));
  const args = ['main/hosts/start.ts', '--browser', '--no-open', '--data', folder, ...(options.args ?? [])];
  const child = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
  const address = await addressOf(child);
  const ended = async (signal: NodeJS.Signals) => {
    if (child.exitCode === null && child.signalCode === null) {
      const gone = once(child, 'exit');
      child.kill(signal);
      await gone;
    }
  };
  return {
    address,
    folder,
    process: child,
    stop: async () => {
      await ended('SIGTERM');
      if (options.folder === undefined) rmSync(folder, { recursive: true, force: true });
    },
    kill: () => ended('SIGKILL'),
  };
}

function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let printed = '';
    const fail = (why: string) => {
      child.kill('SIGKILL');
      reject(new Error(`The program gave no address: ${why}. It printed:\n${printed}`));
    };
    const timer = setTimeout(() => fail(`nothing within ${STARTED_WITHIN_MS / 1_000} s`), STARTED_WITHIN_MS);
    const read = (part: Buffer) => {
      printed += part.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(printed);
      if (found === null) return;
      clearTimeout(timer);
      resolve(found[0]);
    };
    child.stdout?.on('data', read);
    child.stderr?.on('data', read);
    child.once('exit', (code) => {
      clearTimeout(timer);
      fail(`it ended with ${code}`);
    });
  });
}
