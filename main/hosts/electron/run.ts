import { existsSync, mkdirSync } from 'node:fs';
import path from 'node:path';
import { app, type BrowserWindow, ipcMain, protocol, session } from 'electron';
import { type Desk, openDesk } from '../../desk/desk.ts';
import { problemCode } from '../exit-code.ts';
import { createIntake } from '../intake.ts';
import { readOptions, type StartOptions } from '../options.ts';
import { entranceCalls } from '../pads/entrance.ts';
import { createPads } from '../pads.ts';
import { makeFolder, type Places, placesIn, usualFolder } from '../places.ts';
import { screenFiles } from '../screen-files.ts';
import { guardContents } from './contents.ts';
import { handOutPorts } from './desk-port.ts';
import { setMenu } from './menu.ts';
import { type Place, scheme } from './origin.ts';
import { tellProblem } from './problem.ts';
import { guardSession } from './session.ts';
import { openWindow } from './window.ts';

/** How long calls under way may take when the program ends, milliseconds. */
const drainMs = 3_000;

/**
 * The desktop program, from its arguments to its end. Must run before Electron is ready: the sandbox and the scheme of the
 * screens can be set only until then.
 * @param args the arguments after the program's own
 */
export async function runProgram(args: readonly string[]): Promise<void> {
  app.enableSandbox();
  protocol.registerSchemesAsPrivileged([
    { scheme, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
  const options = readOptions(args);
  const place: Place = options.demo ? 'demo' : 'plumbline';
  const places = preparePlaces(options);
  guardContents(app, place);
  // One window a ledger: a second start brings the first one to the front.
  if (!app.requestSingleInstanceLock()) return app.quit();
  await app.whenReady();

  const desk = await openOrTell(places, options);
  if (desk === null) return app.exit(problemCode);
  const own = session.fromPartition(`persist:${place}`);
  const screens = options.screens ?? screensFolder();
  guardSession(own, screenFiles(screens), place);
  const intake = createIntake();
  const pads = createPads({ router: desk.padRouter, screens, rememberedFile: places.pads });
  await pads.resume();
  const router = { ...desk.router, entrance: entranceCalls(pads) };
  const closePorts = handOutPorts(ipcMain, router, intake, place);
  setMenu(process.platform === 'darwin', !app.isPackaged);

  let window: BrowserWindow | null = null;
  const show = (): void => {
    if (window !== null && !window.isDestroyed()) {
      if (window.isMinimized()) window.restore();
      return window.focus();
    }
    window = openWindow(own, place, path.join(places.desktop, 'window.json'));
    return undefined;
  };
  app.on('second-instance', show);
  app.on('activate', show);
  app.on('window-all-closed', () => app.quit());
  endInOrder(async () => {
    await intake.stop(drainMs);
    closePorts();
    await pads.close();
    await desk.close();
  });
  show();
}

/** Stop intake, let calls end, close the database, and only then go. */
function endInOrder(end: () => Promise<void>): void {
  let ended = false;
  app.on('will-quit', (event) => {
    if (ended) return;
    event.preventDefault();
    ended = true;
    void end().then(
      () => app.exit(0),
      (error: unknown) => {
        console.error('plumbline: closing failed:', error);
        app.exit(1);
      },
    );
  });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => app.quit());
}

/** The same data folder as the browser host's; the window's own files lie in a folder of their own below it. */
function preparePlaces(options: StartOptions): Places {
  const folder = options.data ?? usualFolder(process.platform, process.env, app.getPath('home'));
  const places = placesIn(path.resolve(folder), options.demo);
  makeFolder(places.folder);
  mkdirSync(places.desktop, { recursive: true, mode: 0o700 });
  app.setPath('userData', places.desktop);
  app.setPath('sessionData', places.desktop);
  return places;
}

async function openOrTell(places: Places, options: StartOptions): Promise<Desk | null> {
  for (;;) {
    const opened = await openDesk({
      ledgerPath: places.ledger,
      host: 'electron',
      demo: options.demo,
      version: app.getVersion(),
    });
    if (opened.ok) return opened.desk;
    if (!(await tellProblem(opened.problem))) return null;
  }
}

/** Packed, the screens lie beside main/; compiled for a start from the source, one folder higher. */
function screensFolder(): string {
  const candidates = ['../../../dist/renderer', '../../../../renderer'];
  const folders = candidates.map((name) => path.resolve(import.meta.dirname, name));
  const found = folders.find((folder) => existsSync(path.join(folder, 'index.html')));
  if (found === undefined) throw new Error(`The screens are not built: there is none of ${folders.join(', ')}.`);
  return found;
}
