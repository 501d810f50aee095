// The launcher, met as an older Node meets it: a preloaded line makes the running Node claim another version.

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { plant } from './plant.ts';
import { root } from './tools.ts';

const launcher = 'main/hosts/launch/with-node.js';
const nodeIsWindows = process.platform === 'win32';

interface Ending {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A project with only the launcher, a script that tells what runs it, and these files. */
function project(files: Readonly<Record<string, string>> = {}): string {
  const top = plant({
    'package.json': '{ "type": "module" }',
    'tell.js': `console.log(process.argv.slice(2).join('|'), process.env.PATH.split(${JSON.stringify(path.delimiter)})[0]);`,
    ...files,
  });
  cpSync(path.join(root, launcher), path.join(top, launcher));
  return top;
}

/** The packaged Node with this install script, which has not run. */
function packagedNode(installScript: string): Record<string, string> {
  return {
    'node_modules/node/package.json': '{ "name": "node", "version": "24.21.0" }',
    'node_modules/node/installArchSpecificPackage.js': installScript,
  };
}

async function launch(top: string, args: readonly string[], claim?: string): Promise<Ending> {
  const lie = `data:text/javascript,${encodeURIComponent(claim ?? '')}`;
  const child = spawn(process.execPath, ['--import', lie, path.join(top, launcher), ...args], { cwd: top });
  let out = '';
  let err = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
  await once(child, 'close');
  return { code: child.exitCode, out, err };
}

const claimOld = `Object.defineProperty(process, 'version', { value: 'v20.20.2' })`;
const claimNoStripping = `Object.defineProperty(process.features, 'typescript', { value: false })`;
const executable = JSON.stringify(process.execPath);
const linkNode = `
const fs = require('node:fs');
fs.mkdirSync('bin', { recursive: true });
fs.copyFileSync(${executable}, ${JSON.stringify(nodeIsWindows ? 'bin/node.exe' : 'bin/node')});`;

describe('the launcher', () => {
  test('runs the script under the running Node where that is new enough, and hands on the arguments', async () => {
    const ending = await launch(project(), ['tell.js', 'two words', '--flag']);
    expect(ending).toEqual({ code: 0, out: `two words|--flag ${path.dirname(process.execPath)}\n`, err: '' });
  });

  test('hands on the exit code', async () => {
    const ending = await launch(project({ 'end.js': 'process.exit(7);' }), ['end.js']);
    expect(ending.code).toBe(7);
  });

  test('hands on a signal and tells the death by one as a shell does', async () => {
    const top = project({ 'wait.js': `console.log('ready'); setInterval(() => undefined, 1000);` });
    const child = spawn(process.execPath, [path.join(top, launcher), 'wait.js'], { cwd: top });
    await once(child.stdout, 'data');
    child.kill('SIGTERM');
    await once(child, 'close');
    expect(child.exitCode).toBe(128 + 15);
  });

  test('says what to do where an older Node has no packaged one', async () => {
    const ending = await launch(project(), ['tell.js'], claimOld);
    expect(ending.code).toBe(1);
    expect(ending.err).toBe(
      'plumbline: Node 24 or newer is needed and this is v20.20.2; run "npm ci" first, which brings one.\n',
    );
  });

  test.each([
    ['too old', claimOld],
    ['built without type stripping', claimNoStripping],
  ])('fetches the packaged Node once where the running one is %s', async (_name, claim) => {
    const top = project(packagedNode(linkNode));
    const first = await launch(top, ['tell.js', 'a'], claim);
    expect(first.code).toBe(0);
    expect(first.out).toBe(`a ${path.join(top, 'node_modules/node/bin')}\n`);
    expect(first.err).toContain('fetching Node 24.21.0 once');
    expect(await launch(top, ['tell.js', 'a'], claim)).toEqual({ ...first, err: '' });
  });

  test('says what to do where the packaged Node cannot be had', async () => {
    const script = `console.error('no matching version'); process.exit(1);`;
    const ending = await launch(project(packagedNode(script)), ['tell.js'], claimOld);
    expect(ending.code).toBe(1);
    expect(ending.err).toContain('no matching version');
    expect(ending.err).toContain('install Node 24 yourself');
  });

  test('does not trust a packaged Node that is not new enough', async () => {
    const script = `${linkNode.replace(/fs\.copyFileSync.*$/, '')}
fs.writeFileSync('bin/node', '#!/bin/sh\\necho v20.1.0 true\\n', { mode: 0o755 });`;
    const ending = await launch(project(packagedNode(script)), ['tell.js'], claimOld);
    expect(ending.code).toBe(1);
    expect(ending.err).toContain('could not be installed');
  });

  test('asks for a script where none is named', async () => {
    const ending = await launch(project(), []);
    expect(ending.code).toBe(1);
    expect(ending.err).toContain('say which script to run');
  });
});
