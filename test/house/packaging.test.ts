// The packaging as far as it can be tried without the Electron binary: its configuration against the packager's own
// schema, and the compiled main process, every import of which must lead to a file that is there.

import { existsSync, globSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
// An inner path of the packager, which is why app-builder-lib is pinned beside electron-builder.
import { getConfig, validateConfiguration } from 'app-builder-lib/out/util/config/config.js';
import { describe, expect, test } from 'vitest';
import { buildMain } from '../../main/hosts/launch/build-main.ts';
import { plant } from './plant.ts';
import { findReferences } from './references.ts';
import { root } from './tools.ts';

const manifest = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
const read = () => getConfig(root, path.join(root, 'electron-builder.yml'), null);
const quiet = { isEnabled: false, data: new Map(), add: () => undefined, save: () => Promise.resolve() };

describe('electron-builder.yml', () => {
  test('is valid by the packager’s schema', async () => {
    await expect(validateConfiguration(await read(), quiet)).resolves.toBeUndefined();
  });

  test('would not be valid with a misspelt fuse', async () => {
    const config = Object.assign(await read(), { electronFuses: { runAsNodes: false } });
    await expect(validateConfiguration(config, quiet)).rejects.toThrow('configuration.electronFuses');
  });

  test('ships the main process without what only a checkout needs', async () => {
    const filters = JSON.stringify((await read()).files);
    expect(filters).toContain('!hosts/launch/**');
    expect(filters).toContain('!hosts/{start,desktop}.js');
  });

  test('names targets for Windows, macOS and Linux', async () => {
    const config = await read();
    const targets = (of: unknown): unknown[] => (Array.isArray(of) ? of.map((one) => one.target) : []);
    expect(targets(config.win?.target)).toEqual(['nsis']);
    expect(targets(config.mac?.target)).toEqual(['dmg']);
    expect(targets(config.linux?.target)).toEqual(['AppImage', 'deb']);
  });

  test('sets the fuses: nothing but the packed archive runs', async () => {
    const config = await read();
    expect(config.asar).toBe(true);
    expect(config.electronFuses).toEqual({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableCookieEncryption: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    });
  });

  test('stands on one version of the packager', () => {
    const { 'app-builder-lib': library, 'electron-builder': packager } = manifest.devDependencies;
    expect(library).toBe(packager);
  });
});

describe('the compiled main process', () => {
  test('refers only to files that are there, and ships its entry', async () => {
    const target = plant({});
    await buildMain(target);
    // What only a checkout needs is not shipped, so nothing that is shipped may need it.
    for (const left of ['main/hosts/launch', 'main/hosts/start.js', 'main/hosts/desktop.js']) {
      rmSync(path.join(target, left), { recursive: true, force: true });
    }
    const scripts = globSync('**/*.{js,cjs}', { cwd: target });
    expect(scripts.length).toBeGreaterThan(20);
    for (const script of scripts) {
      const file = path.join(target, script);
      for (const { specifier, line } of findReferences(file)) {
        if (!specifier?.startsWith('.')) continue;
        expect(existsSync(path.resolve(path.dirname(file), specifier)), `${script}:${line} ${specifier}`).toBe(true);
      }
    }
    const config = await read();
    expect(existsSync(path.join(target, config.extraMetadata.main))).toBe(true);
  });
});
