// Starts the development tools as child processes of the Node that runs now, without a shell and without npx.

import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { performance } from 'node:perf_hooks';

/** The project's top folder. */
export const root = path.resolve(import.meta.dirname, '../..');

export interface Outcome {
  readonly code: number;
  readonly output: string;
  readonly seconds: number;
}

/** The JavaScript file behind a package's command, e.g. `toolPath('typescript', 'tsc')`; throws where there is none. */
export function toolPath(packageName: string, command: string): string {
  const manifestPath = path.join(root, 'node_modules', packageName, 'package.json');
  const manifest: { bin: string | Record<string, string> } = JSON.parse(readFileSync(manifestPath, 'utf8'));
  const entry = typeof manifest.bin === 'string' ? manifest.bin : manifest.bin[command];
  if (entry === undefined) throw new Error(`${packageName} has no command ${command}`);
  return path.join(path.dirname(manifestPath), entry);
}

export interface RunOptions {
  /** Working folder; the project's top folder by default. */
  readonly cwd?: string;
  /** Show the output while it comes instead of collecting it. */
  readonly show?: boolean;
  /** Kill the child after this many seconds; the outcome then says so. */
  readonly limitSeconds?: number;
  readonly env?: NodeJS.ProcessEnv;
}

/** Runs a JavaScript file with arguments; never rejects: a child that cannot start or is killed has a code above 0. */
export function runScript(script: string, args: readonly string[], options: RunOptions = {}): Promise<Outcome> {
  const begun = performance.now();
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [script, ...args], {
      cwd: options.cwd ?? root,
      env: options.env ?? process.env,
      stdio: options.show ? ['ignore', 'inherit', 'inherit'] : ['ignore', 'pipe', 'pipe'],
      timeout: (options.limitSeconds ?? 600) * 1000,
      killSignal: 'SIGKILL',
    });
    let output = '';
    child.stdout?.setEncoding('utf8').on('data', (text: string) => (output += text));
    child.stderr?.setEncoding('utf8').on('data', (text: string) => (output += text));
    const end = (code: number): void => {
      resolve({ code, output: output.trimEnd(), seconds: (performance.now() - begun) / 1000 });
    };
    child.on('error', (error) => {
      output += `could not be started: ${error.message}`;
      end(127);
    });
    child.on('close', (code, signal) => {
      if (signal !== null) output += `\nended by ${signal} after ${((performance.now() - begun) / 1000).toFixed(0)} s`;
      end(code ?? 137);
    });
  });
}
