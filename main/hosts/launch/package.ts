// `npm run package`: the screens, the main process, and then the installers of this platform, into dist/packages.
// Arguments go on to electron-builder, for example `npm run package -- --linux AppImage`.

import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { buildMain } from './build-main.ts';
import { buildRenderer } from './build-renderer.ts';

const root = path.resolve(import.meta.dirname, '../../..');

await buildRenderer();
await buildMain(path.join(root, 'dist', 'app'));
const packager = path.join(root, 'node_modules', 'electron-builder', 'cli.js');
const args = ['--config', path.join(root, 'electron-builder.yml'), '--publish', 'never', ...process.argv.slice(2)];
const outcome = spawnSync(process.execPath, [packager, ...args], { cwd: root, stdio: 'inherit' });
process.exitCode = outcome.status ?? 1;
