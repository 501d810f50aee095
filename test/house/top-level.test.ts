// The shape of the house: what stands at its top, and that what is installed is exactly what is written down.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from './tools.ts';

const read = (name: string): string => readFileSync(path.join(root, name), 'utf8');
const manifest = JSON.parse(read('package.json'));

test('the top level holds the house and nothing else', () => {
  const written = [
    'DEVELOPERS.md',
    'LICENSE',
    'README.md',
    'electron-builder.yml',
    'package-lock.json',
    'package.json',
  ];
  const folders = ['main', 'renderer', 'shared-types', 'test'];
  const made = new Set(['node_modules', 'dist']);
  const found = readdirSync(root).filter((name) => !name.startsWith('.') && !made.has(name) && !name.endsWith('.log'));
  expect(found.toSorted()).toEqual([...written, ...folders, 'tsconfig.json'].toSorted());
});

describe('dependencies', () => {
  const wanted: [string, string][] = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });

  test('are pinned to one version each', () => {
    expect(wanted.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });

  test('are the ones of the lock file', () => {
    const top = JSON.parse(read('package-lock.json')).packages[''];
    expect(top.dependencies).toEqual(manifest.dependencies);
    expect(top.devDependencies).toEqual(manifest.devDependencies);
  });

  test('need no install script, which npm is told not to run', () => {
    expect(read('.npmrc')).toMatch(/^ignore-scripts=true$/m);
  });

  test('of oRPC are all of one version', () => {
    const versions = wanted.filter(([name]) => name.startsWith('@orpc/')).map(([, version]) => version);
    expect(new Set(versions).size).toBe(1);
  });
});

describe('commands', () => {
  test('all go through the launcher, so that none runs under an older Node', () => {
    const scripts: [string, string][] = Object.entries(manifest.scripts);
    expect(scripts.filter(([, script]) => !script.startsWith('node main/hosts/launch/with-node.js'))).toEqual([]);
  });

  test('of the README start the program and run the tests, and .ci/run does just what the second one does', () => {
    const commands = read('README.md').match(/^npm .*$/gm) ?? [];
    expect(commands.slice(0, 2)).toEqual(['npm ci && npm start', 'npm ci && npm test']);
    const steps = read('.ci/run').match(/^npm .*$/gm) ?? [];
    expect(steps.join(' && ')).toBe(commands[1]);
  });
});
