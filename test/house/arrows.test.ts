import { describe, expect, test } from 'vitest';
import { findForbiddenArrows } from './arrows.ts';
import { plant } from './plant.ts';

/** The findings where one file with one statement stands beside a harmless one. */
function findingsIn(file: string, statement: string): string[] {
  return findForbiddenArrows(plant({ 'shared-types/harmless.ts': 'export {};\n', [file]: `${statement}\n` }));
}

test('an empty folder is not taken for a clean one', () => {
  expect(() => findForbiddenArrows(plant({ 'README.md': '' }))).toThrow('no source files');
});

describe('a permitted import passes', () => {
  test.each([
    ['shared-types/log/fold.ts', `import { z } from 'zod';`],
    ['shared-types/contract/contract.ts', `import { oc } from '@orpc/contract';`],
    ['shared-types/log/fold.ts', `import type { SetEvent } from './events.ts';`],
    ['main/analysis/sums.ts', `import { fold } from '../../shared-types/log/fold.ts';`],
    ['main/analysis/sums.ts', `import betainc from '@stdlib/math-base-special-betainc';`],
    ['main/ledger/open.ts', `import Database from 'better-sqlite3';`],
    ['main/ledger/migrate.ts', `import { Migrator } from 'kysely/migration';`],
    ['main/ledger/open.ts', `import { statSync } from 'node:fs';`],
    ['main/desk/sets.ts', `import { appendEvent } from '../ledger/events.ts';`],
    ['main/desk/sets.ts', `new Worker(new URL('../analysis/worker.ts', import.meta.url));`],
    ['main/hosts/electron.ts', `import { app } from 'electron';`],
    ['main/hosts/browser.ts', `import { createServer } from 'node:http';`],
    ['main/hosts/browser.ts', `import { WebSocketServer } from 'ws';`],
    ['main/hosts/browser.ts', `import { openDesk } from '../desk/open.ts';`],
    ['renderer/main.tsx', `import { Judge } from './areas/judge/judge.tsx';`],
    ['renderer/main.tsx', `import { createRoot } from 'react-dom/client';`],
    ['renderer/areas/judge/judge.tsx', `import { Ribbon } from './ribbon.tsx';`],
    ['renderer/areas/judge/judge.tsx', `import { Button } from '../../parts/button.tsx';`],
    ['renderer/areas/judge/judge.tsx', `import { client } from '../../link/client.ts';`],
    ['renderer/areas/judge/judge.tsx', `import { fold } from '../../../shared-types/log/fold.ts';`],
    ['renderer/vite.config.ts', `import { defineConfig } from 'vite';`],
    ['renderer/parts/icon.tsx', `const page = new URL('./page.html', import.meta.url);`],
  ])('%s: %s', (file, statement) => {
    expect(findingsIn(file, statement)).toEqual([]);
  });
});

describe('a forbidden import is found', () => {
  test.each([
    // shared-types is pure.
    ['shared-types/log/fold.ts', `import { readFileSync } from 'node:fs';`],
    ['shared-types/log/fold.ts', `import fs from 'fs';`],
    ['shared-types/log/fold.ts', `import { useState } from 'react';`],
    ['shared-types/log/fold.ts', `import { app } from 'electron';`],
    ['shared-types/log/fold.ts', `import { wilson } from '../../main/analysis/wilson.ts';`],
    ['shared-types/log/fold.ts', `import { Button } from '../../renderer/parts/button.tsx';`],
    ['shared-types/log/fold.ts', `/// <reference types="node" />`],
    // analysis knows no SQL, no transport, no machine.
    ['main/analysis/sums.ts', `import { sql } from 'kysely';`],
    ['main/analysis/sums.ts', `import { openLedger } from '../ledger/open.ts';`],
    ['main/analysis/sums.ts', `import { answer } from '../desk/reports.ts';`],
    ['main/analysis/sums.ts', `import { readFileSync } from 'node:fs';`],
    ['main/analysis/sums.ts', `import { os } from '@orpc/server';`],
    // Only the ledger knows SQL; it knows no sums and no desk.
    ['main/ledger/open.ts', `import { wilson } from '../analysis/wilson.ts';`],
    ['main/ledger/open.ts', `import { desk } from '../desk/open.ts';`],
    ['main/desk/sets.ts', `import Database from 'better-sqlite3';`],
    ['main/desk/sets.ts', `import { sql } from 'kysely';`],
    ['main/hosts/browser.ts', `import Database from 'better-sqlite3';`],
    // Only the hosts know electron and open sockets.
    ['main/desk/sets.ts', `import { ipcMain } from 'electron';`],
    ['main/desk/sets.ts', `import { WebSocketServer } from 'ws';`],
    ['main/desk/sets.ts', `import { createServer } from 'node:http';`],
    ['main/desk/sets.ts', `import { connect } from 'net';`],
    ['main/desk/sets.ts', `import { spawn } from 'node:child_process';`],
    ['main/ledger/open.ts', `import { createServer } from 'node:http2';`],
    ['main/desk/sets.ts', `import { serve } from '../hosts/browser.ts';`],
    ['main/hosts/browser.ts', `import { openLedger } from '../ledger/open.ts';`],
    ['main/hosts/browser.ts', `import { wilson } from '../analysis/wilson.ts';`],
    ['main/hosts/electron.ts', `import { Judge } from '../../renderer/areas/judge/judge.tsx';`],
    // The screens know the shared language and nothing of the main process; areas know nothing of each other.
    ['renderer/areas/judge/judge.tsx', `import { openLedger } from '../../../main/ledger/open.ts';`],
    ['renderer/areas/judge/judge.tsx', `import { readFileSync } from 'node:fs';`],
    ['renderer/areas/judge/judge.tsx', `import { ipcRenderer } from 'electron';`],
    ['renderer/areas/judge/judge.tsx', `import { Chart } from '../review/chart.tsx';`],
    ['renderer/areas/judge/judge.tsx', `import { openDB } from 'idb';`],
    ['renderer/parts/button.tsx', `import { Judge } from '../areas/judge/judge.tsx';`],
    ['renderer/link/client.ts', `import { Button } from '../parts/button.tsx';`],
    ['renderer/areas/judge/judge.tsx', `import { App } from '../../app.tsx';`],
    // Nothing in the program imports a test, a package without a home, or a file outside the layers.
    ['main/desk/sets.ts', `import { plant } from '../../test/house/plant.ts';`],
    ['main/desk/sets.ts', `import { chunk } from 'lodash';`],
    ['main/desk/sets.ts', `import manifest from '../../package.json' with { type: 'json' };`],
    ['main/other.ts', `export {};`],
  ])('%s: %s', (file, statement) => {
    const findings = findingsIn(file, statement);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatch(new RegExp(`^${file}:1: `));
  });
});

describe('no form of import slips through', () => {
  test.each([
    [`import Database from 'better-sqlite3';`],
    [`import 'better-sqlite3';`],
    [`import * as sqlite from 'better-sqlite3';`],
    [`import type { Database } from 'better-sqlite3';`],
    [`import { type Database } from 'better-sqlite3';`],
    [`import sqlite = require('better-sqlite3');`],
    [`import type sqlite = require('better-sqlite3');`],
    [`export * from 'better-sqlite3';`],
    [`export * as sqlite from 'better-sqlite3';`],
    [`export { Database } from 'better-sqlite3';`],
    [`export type { Database } from 'better-sqlite3';`],
    [`export type Handle = import('better-sqlite3').Database;`],
    [`export type Module = typeof import('better-sqlite3');`],
    [`export const load = () => import('better-sqlite3');`],
    [`const sqlite = require('better-sqlite3');`],
    [`const place = require.resolve('better-sqlite3');`],
    [`import Database from 'better-sqlite3/lib/database.js';`],
    [`const name = 'better-sqlite3'; export const load = () => import(name);`],
    [`const name = 'better-sqlite3'; export const load = () => require(name);`],
    [`new Worker(new URL('../ledger/worker.ts', import.meta.url));`],
  ])('%s', (statement) => {
    expect(findingsIn('main/analysis/sums.ts', statement)).toHaveLength(1);
  });

  test('a line is told with the finding', () => {
    const [finding] = findingsIn('main/analysis/sums.ts', `\n\nexport {};\nimport 'ws';`);
    expect(finding).toBe('main/analysis/sums.ts:4: main/analysis may not import ws: only main/hosts may');
  });
});
