import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { MessagePort as NodePort } from 'node:worker_threads';
import { createORPCClient } from '@orpc/client';
import { RPCLink } from '@orpc/client/message-port';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import type { DeskClient } from '../../renderer/link/connection.ts';
import { until } from '../link/drafts.ts';
import { plantFolder } from './browser-fixture.ts';
import { FakeContents, type FakeElectron, FakeFrame, type FakeSession, fakeElectron } from './fake-electron.ts';

// The module is made once; each test puts another Electron behind it.
const fake = vi.hoisted(() => ({ current: {} as Record<string, unknown> }));
vi.mock('electron', () => {
  const names = [
    'app',
    'ipcMain',
    'protocol',
    'session',
    'dialog',
    'Menu',
    'screen',
    'BrowserWindow',
    'MessageChannelMain',
  ];
  const getters = names.map((name) => [name, { enumerable: true, get: () => fake.current[name] }] as const);
  return Object.defineProperties({}, Object.fromEntries(getters));
});

// Each program opens a real desk, which takes its time where the machine is busy.
vi.setConfig({ testTimeout: 30_000, hookTimeout: 30_000 });

let electron: FakeElectron;
let data: string;
let screens: string;
const ends: (() => unknown)[] = [];

function plant(): void {
  electron = fakeElectron();
  electron.windows.length = 0;
  fake.current = electron;
  data = mkdtempSync(path.join(tmpdir(), 'plumbline-desktop-'));
  const planted = plantFolder();
  screens = planted.screens;
  ends.push(() => rmSync(planted.folder, { recursive: true, force: true }));
  ends.push(() => rmSync(data, { recursive: true, force: true }));
}

async function endProgram(): Promise<void> {
  if (electron.app.listenerCount('will-quit') > 0 && electron.app.exitCode === null) await quit();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.removeAllListeners(signal);
  for (const end of ends.splice(0).reverse()) await end();
}

async function run(...args: string[]): Promise<void> {
  const { runProgram } = await import('../../main/hosts/electron/run.ts');
  await runProgram(['--data', data, '--screens', screens, ...args]);
}

/** Plays a quit; resolves when the program has ended. */
async function quit(): Promise<{ prevented: boolean }> {
  let prevented = false;
  electron.app.emit('will-quit', {
    preventDefault: () => {
      prevented = true;
    },
  });
  await until(() => electron.app.exitCode !== null);
  return { prevented };
}

function sessionOf(name: string): FakeSession {
  const found = electron.sessions.get(name);
  if (found === undefined) throw new Error(`there is no session ${name}`);
  return found;
}

function contents(): FakeContents {
  const made = new FakeContents();
  electron.app.emit('web-contents-created', {}, made);
  return made;
}

/** Whether the guard of an event prevents it. */
function prevents(made: FakeContents, event: string, details: object = {}): boolean {
  let prevented = false;
  made.emit(event, { ...details, preventDefault: () => (prevented = true) });
  return prevented;
}

function asks(senderFrame: FakeFrame | null, mainFrame: FakeFrame | null = senderFrame): FakeContents {
  const sender = contents();
  sender.mainFrame = mainFrame;
  electron.ipcMain.emit('plumbline:desk-port', { senderFrame, sender });
  return sender;
}

function clientOver(frame: FakeFrame, nth = 0): DeskClient {
  const port = frame.posted[nth]?.ports[0] as NodePort;
  const client: DeskClient = createORPCClient(new RPCLink({ port: port }));
  port.start();
  ends.push(() => port.close());
  return client;
}

describe('a running program', () => {
  beforeAll(async () => {
    plant();
    await run();
  });
  afterAll(endProgram);

  test('the sandbox and the scheme are set before Electron is ready', async () => {
    expect(electron.app.beforeReady).toEqual(['sandbox early']);
    expect(electron.schemes).toEqual([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
      false,
    ]);
  });

  test('[1-4, 6, 8-10] isolated, sandboxed, without node; what is safe by default is left so', async () => {
    const options = electron.windows[0]?.options;
    const { session, preload, ...rest } = options?.webPreferences ?? {};
    expect(session).toBe(electron.sessions.get('persist:plumbline'));
    expect(existsSync(String(preload))).toBe(true);
    expect(rest).toEqual({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    });
    expect(options?.show).toBe(false);
    expect(electron.windows[0]?.loaded).toEqual(['app://plumbline/']);
  });

  test('[11-14] no webview, no new window, no way off the page', async () => {
    const made = contents();
    expect(made.windowOpen()).toEqual({ action: 'deny' });
    expect(prevents(made, 'will-attach-webview')).toBe(true);
    expect(prevents(made, 'will-redirect')).toBe(true);
    for (const event of ['will-navigate', 'will-frame-navigate']) {
      const goes = (url: string, isMainFrame = true): boolean => !prevents(made, event, { url, isMainFrame });
      expect(goes('app://plumbline/')).toBe(true);
      expect(goes('app://plumbline/#/review')).toBe(true);
      expect(goes('app://plumbline/', false)).toBe(false);
      const elsewhere = [
        'https://attacker.example/',
        'app://demo/',
        'app://plumbline.attacker.example/',
        'file:///etc/passwd',
      ];
      elsewhere.push(
        'app://plumbline/assets/x.js',
        'app://plumbline@attacker.example/',
        'javascript:alert(1)',
        'about:blank',
      );
      elsewhere.push('data:text/html,x', 'app://x@plumbline/', 'app://plumbline:8/', 'APP:plumbline', '', 'plumbline');
      for (const url of elsewhere) expect(goes(url), url).toBe(false);
    }
  });

  test('[5] only what is used is permitted, and only to the page', async () => {
    const own = sessionOf('persist:plumbline');
    const asked = (permission: string, requestingUrl = 'app://plumbline/', isMainFrame = true): unknown => {
      let answer: unknown;
      own.permissionRequest(null, permission, (value) => (answer = value), { requestingUrl, isMainFrame });
      return answer;
    };
    expect(asked('screen-wake-lock')).toBe(true);
    expect(asked('fullscreen')).toBe(true);
    expect(asked('fullscreen', 'https://attacker.example/')).toBe(false);
    expect(asked('fullscreen', 'app://plumbline/', false)).toBe(false);
    for (const other of [
      'media',
      'geolocation',
      'notifications',
      'midi',
      'clipboard-read',
      'openExternal',
      'hid',
      'unknown',
    ]) {
      expect(asked(other), other).toBe(false);
      expect(own.permissionCheck(null, other, 'app://plumbline/'), other).toBe(false);
    }
    expect(own.permissionCheck(null, 'screen-wake-lock', 'app://plumbline/')).toBe(true);
    expect(own.permissionCheck(null, 'screen-wake-lock', 'https://attacker.example/')).toBe(false);
    expect(own.devicePermission()).toBe(false);
    expect(own.displayMedia).toBeNull();
    expect(own.spellChecker).toBe(false);
  });

  test('[1] a request to anything but the own origin is cancelled', async () => {
    const cancelled = (url: string): boolean => {
      let cancel = false;
      sessionOf('persist:plumbline').beforeRequest({ url }, (answer) => ({ cancel } = answer as { cancel: boolean }));
      return cancel;
    };
    expect(cancelled('app://plumbline/assets/main-1a2b.js')).toBe(false);
    expect(cancelled('blob:app://plumbline/6f1c')).toBe(false);
    const elsewhere = [
      'https://example.org/',
      'http://127.0.0.1:8080/',
      'ws://127.0.0.1:1/',
      'file:///etc/passwd',
      'app://demo/',
    ];
    for (const url of [...elsewhere, 'blob:https://example.org/1', 'data:text/html,x', 'devtools://devtools/x']) {
      expect(cancelled(url), url).toBe(true);
    }
  });

  test('[7, 18] the screens are served with the policy, and nothing beside them', async () => {
    const ask = (url: string, method = 'GET'): Promise<Response> =>
      sessionOf('persist:plumbline').serve(new Request(url, { method }));
    const page = await ask('app://plumbline/');
    expect(await page.text()).toBe('<!doctype html><title>screens</title>');
    expect(page.headers.get('content-security-policy')).toMatch(
      /^default-src 'none'; script-src 'self'; style-src 'self'; .*connect-src 'self'; /,
    );
    expect(page.headers.get('x-content-type-options')).toBe('nosniff');
    expect((await ask('app://plumbline/assets/main-1a2b.js')).headers.get('content-type')).toMatch(/javascript/);
    for (const name of [
      '../secret.txt',
      '%2e%2e/secret.txt',
      '..%2fsecret.txt',
      '..%5csecret.txt',
      'link.txt',
      '../renderer-sibling/index.html',
    ]) {
      const answer = await ask(`app://plumbline/${name}`);
      expect(answer.status, name).toBe(404);
    }
    expect((await ask('app://demo/')).status).toBe(403);
    expect((await ask('app://plumbline/', 'POST')).status).toBe(403);
  });

  test('[17] it goes to the page’s own main frame, and carries the contract', async () => {
    const frame = new FakeFrame('app://plumbline/#/judge');
    asks(frame);
    expect(frame.posted).toHaveLength(1);
    expect(await clientOver(frame).desk.about()).toMatchObject({ host: 'electron', version: '1.2.3', demo: false });
  });

  test('[17] no other frame, origin or vanished sender gets one', async () => {
    const own = new FakeFrame('app://plumbline/');
    const strangers = [
      new FakeFrame('app://plumbline/', own),
      ...['https://attacker.example/', 'app://demo/', 'app://plumbline.attacker.example/', 'about:blank', ''].map(
        (url) => new FakeFrame(url),
      ),
    ];
    for (const stranger of strangers) asks(stranger);
    asks(null);
    const impostor = new FakeFrame('app://plumbline/');
    asks(impostor, own);
    for (const stranger of [...strangers, impostor]) expect(stranger.posted, stranger.url).toEqual([]);
    expect([...electron.ipcMain.eventNames()]).toEqual(['plumbline:desk-port']);
  });

  test('a page that was loaded again gets a new port, and the old one ends', async () => {
    const frame = new FakeFrame('app://plumbline/');
    const sender = asks(frame);
    const old = frame.posted[0]?.ports[0] as NodePort;
    const closed = new Promise<void>((resolve) => old.once('close', resolve));
    electron.ipcMain.emit('plumbline:desk-port', { senderFrame: frame, sender });
    await closed;
    expect(await clientOver(frame, 1).desk.time()).toMatchObject({ now: expect.any(Number) });
  });
});

describe('from start to end', () => {
  beforeEach(plant);
  afterEach(endProgram);

  test('a second start opens nothing and brings the first window forward', async () => {
    electron.app.lock = false;
    await run();
    expect(electron.app.quits).toBe(1);
    expect(electron.windows).toHaveLength(0);
    expect(existsSync(path.join(data, 'plumbline.db'))).toBe(false);

    electron.app.lock = true;
    await run();
    electron.app.emit('second-instance');
    expect(electron.windows).toHaveLength(1);
    expect(electron.windows[0]?.focus).toHaveBeenCalledOnce();
  });

  test('the database lies in the data folder, the window’s own files below it, the demonstration’s apart', async () => {
    await run();
    expect(statSync(path.join(data, 'plumbline.db')).isFile()).toBe(true);
    expect(electron.app.paths.get('userData')).toBe(path.join(data, 'desktop'));
    await quit();
    electron.app.removeAllListeners();
    electron.app.exitCode = null;
    // One that does not open is enough to see which one is meant; filling it takes its time.
    writeFileSync(path.join(data, 'demo.db'), 'no database');
    await run('--demo');
    expect(electron.dialog.showMessageBox).toHaveBeenCalledWith(
      expect.objectContaining({ detail: expect.stringContaining(path.join(data, 'demo.db')) }),
    );
    expect(electron.app.paths.get('userData')).toBe(path.join(data, 'desktop-demo'));
  });

  test('a database that another program holds is told in words, with an exit code of its own', async () => {
    const { openDesk } = await import('../../main/desk/desk.ts');
    const ledgerPath = path.join(data, 'plumbline.db');
    const other = await openDesk({ ledgerPath, host: 'browser', demo: false, version: '0' });
    if (!other.ok) throw new Error(other.problem.message);
    ends.push(() => other.desk.close());
    await run();
    expect(electron.dialog.showErrorBox).toHaveBeenCalledWith(
      'Plumbline cannot open its database',
      expect.stringMatching(/already open in another running Plumbline/),
    );
    expect(electron.app.exitCode).toBe(3);
    expect(electron.windows).toHaveLength(0);
  });

  test('a damaged database is left alone unless the user chooses otherwise, and is kept in any case', async () => {
    const ledgerPath = path.join(data, 'plumbline.db');
    writeFileSync(ledgerPath, 'not a database any more, but where one was');
    await run();
    expect(electron.app.exitCode).toBe(3);
    expect(statSync(ledgerPath).size).toBe(42);
    const { showMessageBox } = electron.dialog;
    expect(showMessageBox).toHaveBeenCalledWith(
      expect.objectContaining({
        defaultId: 0,
        cancelId: 0,
        buttons: ['Change nothing and close', 'Begin an empty database'],
      }),
    );

    electron.app.exitCode = null;
    showMessageBox.mockResolvedValueOnce({ response: 1 });
    await run();
    expect(electron.windows).toHaveLength(1);
    expect(showMessageBox).toHaveBeenLastCalledWith(
      expect.objectContaining({ message: expect.stringMatching(/is kept as/) }),
    );
  });

  test('its place and size are remembered', async () => {
    await run();
    expect(electron.windows[0]?.options).toMatchObject({ width: 1280, height: 860 });
    electron.windows[0]?.emit('close');
    await quit();
    electron.app.removeAllListeners();
    electron.app.exitCode = null;
    await run();
    expect(electron.windows[1]?.options).toMatchObject({ x: 40, y: 50, width: 900, height: 700 });
    expect(electron.windows[1]?.maximize).toHaveBeenCalled();
  });

  test('quitting waits for the database to be closed, and ends the ports', async () => {
    await run();
    const frame = new FakeFrame('app://plumbline/');
    asks(frame);
    const port = frame.posted[0]?.ports[0] as NodePort;
    const closed = new Promise<void>((resolve) => port.once('close', resolve));
    expect((await quit()).prevented).toBe(true);
    expect(electron.app.exitCode).toBe(0);
    await closed;
    expect(existsSync(path.join(data, 'plumbline.db-wal'))).toBe(false);
  });
});

test('a window whose monitor is gone is not opened out of sight', async () => {
  const { isVisible } = await import('../../main/hosts/electron/window.ts');
  const monitor = { x: 0, y: 0, width: 1920, height: 1080 };
  expect(isVisible({ x: 100, y: 100, width: 900, height: 700 }, [monitor])).toBe(true);
  expect(isVisible({ x: 1850, y: 100, width: 900, height: 700 }, [monitor])).toBe(false);
  expect(isVisible({ x: 2000, y: 100, width: 900, height: 700 }, [monitor])).toBe(false);
  expect(isVisible({ x: 2000, y: 100, width: 900, height: 700 }, [monitor, { ...monitor, x: 1920 }])).toBe(true);
  expect(isVisible({ x: 0, y: -30, width: 900, height: 700 }, [monitor])).toBe(false);
  expect(isVisible({ x: 0, y: 1060, width: 900, height: 700 }, [monitor])).toBe(false);
});
