import { type ChildProcess, spawn } from 'node:child_process';
import path from 'node:path';
import { until } from '../link/drafts.ts';
import { ask } from './browser-fixture.ts';

const entry = path.resolve(import.meta.dirname, '../../main/hosts/start.ts');

/** The program in a process of its own. */
export interface Program {
  readonly child: ChildProcess;
  /** What it has printed so far. */
  readonly text: () => string;
  readonly ended: Promise<number | null>;
}

/** Starts the program as a user would, but with screens built before and no browser opened. */
export function startProgram(data: string, screens: string, args: readonly string[] = []): Program {
  const all = [entry, '--data', data, '--screens', screens, '--browser', '--no-open', ...args];
  const child = spawn(process.execPath, all, { stdio: ['ignore', 'pipe', 'pipe'] });
  let text = '';
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (part) => (text += String(part)));
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  return { child, text: () => text, ended };
}

/** The first address that a program prints. */
export async function addressOf(program: Program): Promise<URL> {
  const address = /http:\/\/127\.0\.0\.1:\d+\/\S+\?key=\S+/;
  await until(() => address.test(program.text()), 20_000);
  return new URL(address.exec(program.text())?.[0] ?? '');
}

/** Opens a printed address as a browser would; the session's cookie. */
export async function cookieAt(url: URL): Promise<string> {
  const entered = await ask({ port: Number(url.port), path: `${url.pathname}${url.search}` });
  return String(entered.headers['set-cookie']).split(';')[0] ?? '';
}
