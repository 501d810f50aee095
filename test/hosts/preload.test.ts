import { readFileSync } from 'node:fs';
import path from 'node:path';
import vm from 'node:vm';
import { expect, test } from 'vitest';
import { portAnswer, portRequest } from '../../renderer/link/transport.ts';

const file = path.resolve(import.meta.dirname, '../../main/hosts/electron/preload.cjs');

/** Runs the preload script beside a page that is played here. */
function preload(state: { contextIsolated?: boolean; sandboxed?: boolean } = {}) {
  const heard: ((event: object) => void)[] = [];
  const told: ((event: object) => void)[] = [];
  const sent: unknown[][] = [];
  const posted: unknown[][] = [];
  const window = {
    location: { origin: 'app://plumbline' },
    addEventListener: (_name: string, listener: (event: object) => void) => heard.push(listener),
    postMessage: (...args: unknown[]) => posted.push(args),
  };
  const ipcRenderer = {
    send: (...args: unknown[]) => sent.push(args),
    on: (_channel: string, listener: (event: object) => void) => told.push(listener),
  };
  const globals: Record<string, unknown> = {
    window,
    process: { contextIsolated: true, sandboxed: true, ...state },
    require: (name: string) => (name === 'electron' ? { ipcRenderer } : undefined),
  };
  const before = Object.keys(globals);
  vm.runInNewContext(readFileSync(file, 'utf8'), globals);
  const toAll = (listeners: typeof heard, event: object): void => {
    for (const listener of listeners) listener(event);
  };
  return {
    window,
    sent,
    posted,
    say: (event: object) => toAll(heard, event),
    tell: (event: object) => toAll(told, event),
    globals,
    before,
  };
}

test('[3, 4] it refuses to run without isolation or sandbox', () => {
  expect(() => preload({ contextIsolated: false })).toThrow(/isolated and in the sandbox/);
  expect(() => preload({ sandboxed: false })).toThrow(/isolated and in the sandbox/);
});

test('[20] it exposes nothing to the page', () => {
  const { globals, before, window } = preload();
  expect(Object.keys(globals)).toEqual(before);
  expect(Object.keys(window)).toEqual(['location', 'addEventListener', 'postMessage']);
});

test('it asks for a port when the page does, and for nobody else', () => {
  const { say, sent, window } = preload();
  say({ source: {}, origin: 'app://plumbline', data: portRequest });
  say({ source: window, origin: 'https://attacker.example', data: portRequest });
  say({ source: window, origin: 'app://plumbline', data: 'something else' });
  expect(sent).toEqual([]);
  say({ source: window, origin: 'app://plumbline', data: portRequest });
  expect(sent).toEqual([['plumbline:desk-port']]);
});

test('it hands the port to the page’s own origin only', () => {
  const { tell, posted } = preload();
  const ports = [{}];
  tell({ ports });
  expect(posted).toEqual([[portAnswer, 'app://plumbline', ports]]);
});
