import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { electronIn, findElectron, hasDisplay } from '../../main/hosts/find-electron.ts';
import { readOptions } from '../../main/hosts/options.ts';
import { makeFolder, placesIn, usualFolder } from '../../main/hosts/places.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'plumbline-options-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('no arguments mean the user’s own data, a window if there is one, and the browser opened otherwise', () => {
  expect(readOptions([])).toEqual({
    demo: false,
    browser: false,
    open: true,
    help: false,
    port: null,
    data: null,
    screens: null,
    mend: null,
  });
});

test('arguments are read', () => {
  expect(readOptions(['--demo', '--browser', '--no-open', '--port', '8123', '--data', 'x'])).toMatchObject({
    demo: true,
    browser: true,
    open: false,
    port: 8123,
    data: 'x',
  });
  expect(readOptions(['--restore', 'last']).mend).toEqual({ kind: 'restore', copy: null });
  expect(readOptions(['--restore', 'a.db']).mend).toEqual({ kind: 'restore', copy: 'a.db' });
  expect(readOptions(['--start-empty']).mend).toEqual({ kind: 'start-empty' });
});

test('mistakes are told in words', () => {
  for (const port of ['0', '65536', '-1', 'x', '80.5', '']) {
    expect(() => readOptions([`--port=${port}`]), port).toThrow(/--port takes a number from 1 to 65535/);
  }
  expect(() => readOptions(['--restore', 'last', '--start-empty'])).toThrow(/Choose one of/);
  expect(() => readOptions(['--unknown'])).toThrow(/--unknown/);
  expect(() => readOptions(['stray'])).toThrow(/stray/);
});

test('the data folder follows the custom of each platform', () => {
  // XDG Base Directory Specification 0.8: the default of XDG_DATA_HOME is $HOME/.local/share; relative paths are ignored.
  expect(usualFolder('linux', {}, '/home/ada')).toBe('/home/ada/.local/share/Plumbline');
  expect(usualFolder('linux', { XDG_DATA_HOME: '/data' }, '/home/ada')).toBe('/data/Plumbline');
  expect(usualFolder('linux', { XDG_DATA_HOME: 'data' }, '/home/ada')).toBe('/home/ada/.local/share/Plumbline');
  expect(usualFolder('darwin', {}, '/Users/ada')).toBe('/Users/ada/Library/Application Support/Plumbline');
  const windows = usualFolder('win32', { APPDATA: 'C:\\Users\\ada\\AppData\\Roaming' }, 'C:\\Users\\ada');
  expect(windows).toBe('C:\\Users\\ada\\AppData\\Roaming\\Plumbline');
  expect(usualFolder('win32', {}, 'C:\\Users\\ada')).toBe(windows);
});

test('the demonstration shares no file with the user’s own data', () => {
  const own = Object.values(placesIn(folder, false));
  const demo = Object.values(placesIn(folder, true));
  expect(own.filter((place) => demo.includes(place))).toEqual([folder]);
});

test('a folder that cannot be made is named, with what to do', () => {
  writeFileSync(path.join(folder, 'file'), '');
  expect(() => makeFolder(path.join(folder, 'file', 'below'))).toThrow(/file.below cannot be made.*--data FOLDER/);
  makeFolder(path.join(folder, 'new', 'deep'));
  expect(existsSync(path.join(folder, 'new', 'deep'))).toBe(true);
});

/** A package folder as the electron package leaves it, with or without its binary; `install` is its script. */
function plantElectron(install: string, binary = false): string {
  const place = path.join(folder, 'electron');
  mkdirSync(path.join(place, 'dist'), { recursive: true });
  writeFileSync(path.join(place, 'install.js'), install);
  if (binary) {
    writeFileSync(path.join(place, 'path.txt'), 'electron');
    writeFileSync(path.join(place, 'dist', 'electron'), '');
  }
  return place;
}

const search = { platform: 'linux', environment: { DISPLAY: ':0' }, isRoot: false, limitMs: 300 } as const;

test('Electron is found by the package’s own files, or where the environment says', () => {
  const place = plantElectron('', true);
  expect(electronIn(place, {})).toBe(path.join(place, 'dist', 'electron'));
  expect(electronIn(place, { ELECTRON_OVERRIDE_DIST_PATH: folder })).toBeNull();
  rmSync(path.join(place, 'dist', 'electron'));
  expect(electronIn(place, {})).toBeNull();
  const other = path.join(folder, 'other');
  mkdirSync(other);
  writeFileSync(path.join(other, 'electron'), '');
  expect(electronIn(place, { ELECTRON_OVERRIDE_DIST_PATH: other })).toBe(path.join(other, 'electron'));
});

test('without a display, or as root, there is no window, and nothing is fetched', async () => {
  const said: string[] = [];
  const packageFolder = plantElectron('', true);
  const base = { ...search, packageFolder, say: (sentence: string) => said.push(sentence) };
  expect(await findElectron({ ...base, environment: {} })).toEqual({ why: 'there is no display for a window' });
  expect(await findElectron({ ...base, isRoot: true })).toEqual({ why: expect.stringContaining('root') });
  expect(await findElectron(base)).toEqual({ executable: path.join(packageFolder, 'dist', 'electron') });
  expect(said).toEqual([]);
  expect(hasDisplay('darwin', {}) && hasDisplay('win32', {}) && hasDisplay('linux', { WAYLAND_DISPLAY: 'w' })).toBe(
    true,
  );
});

test('a missing Electron is fetched once, for a bounded time', async () => {
  const said: string[] = [];
  const base = { ...search, say: (sentence: string) => said.push(sentence) };
  const good =
    "const fs = require('fs'); fs.writeFileSync('dist/electron', ''); fs.writeFileSync('path.txt', 'electron');";
  const packageFolder = plantElectron(good);
  expect(await findElectron({ ...base, packageFolder, limitMs: 5_000 })).toMatchObject({ executable: /electron$/ });
  expect(said).toHaveLength(1);
  rmSync(packageFolder, { recursive: true });

  plantElectron('setTimeout(() => {}, 60_000)');
  const begun = performance.now();
  expect(await findElectron({ ...base, packageFolder })).toEqual({
    why: expect.stringMatching(/could not be fetched/),
  });
  expect(performance.now() - begun).toBeLessThan(3_000);
  rmSync(packageFolder, { recursive: true });
  expect(await findElectron({ ...base, packageFolder })).toEqual({ why: 'Electron is not installed' });
});
