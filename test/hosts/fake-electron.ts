import { EventEmitter } from 'node:events';
import { MessageChannel, type MessagePort } from 'node:worker_threads';
import { vi } from 'vitest';

/** What stands in for the module `electron`: it records what it is told, and a test plays what Electron would do. */
export function fakeElectron() {
  const app = Object.assign(new EventEmitter(), {
    isPackaged: false,
    ready: false,
    /** What was asked of the app before it was ready, in order. */
    beforeReady: [] as string[],
    paths: new Map<string, string>(),
    lock: true,
    exitCode: null as number | null,
    quits: 0,
    enableSandbox: () => app.beforeReady.push(`sandbox ${app.ready ? 'late' : 'early'}`),
    whenReady: async () => {
      app.ready = true;
    },
    requestSingleInstanceLock: () => app.lock,
    getPath: () => '/nowhere',
    setPath: (name: string, value: string) => app.paths.set(name, value),
    getVersion: () => '1.2.3',
    quit: () => {
      app.quits += 1;
    },
    exit: (code: number) => {
      app.exitCode = code;
    },
  });
  const schemes: unknown[] = [];
  const sessions = new Map<string, FakeSession>();
  const electron = {
    app,
    schemes,
    sessions,
    windows: FakeWindow.all,
    ipcMain: new EventEmitter(),
    protocol: { registerSchemesAsPrivileged: (list: unknown[]) => schemes.push(...list, app.ready) },
    session: {
      fromPartition: (name: string) => {
        const own = new FakeSession();
        sessions.set(name, own);
        return own;
      },
    },
    dialog: { showErrorBox: vi.fn(), showMessageBox: vi.fn(async () => ({ response: 0 })) },
    Menu: { buildFromTemplate: (template: unknown) => template, setApplicationMenu: vi.fn() },
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
    BrowserWindow: FakeWindow,
    MessageChannelMain: MessageChannel,
  };
  return electron;
}

export type FakeElectron = ReturnType<typeof fakeElectron>;

type Answer = (value: unknown) => void;

export class FakeSession {
  serve: (request: Request) => Promise<Response> = () => Promise.reject(new Error('nothing is served'));
  beforeRequest: (details: { url: string }, answer: Answer) => void = () => {};
  permissionRequest: (contents: null, permission: string, answer: Answer, details: unknown) => void = () => {};
  permissionCheck: (contents: null, permission: string, origin: string) => boolean = () => true;
  devicePermission: () => boolean = () => true;
  readonly protocol = {
    handle: (_scheme: string, serve: FakeSession['serve']) => {
      this.serve = serve;
    },
  };
  readonly webRequest = {
    onBeforeRequest: (listener: FakeSession['beforeRequest']) => {
      this.beforeRequest = listener;
    },
  };
  /** What was set for sharing the screen, and for the spelling checker, which fetches its words from elsewhere. */
  displayMedia: unknown = 'not set';
  spellChecker = true;
  setPermissionRequestHandler(handler: FakeSession['permissionRequest']) {
    this.permissionRequest = handler;
  }
  setPermissionCheckHandler(handler: FakeSession['permissionCheck']) {
    this.permissionCheck = handler;
  }
  setDisplayMediaRequestHandler(handler: unknown) {
    this.displayMedia = handler;
  }
  setSpellCheckerEnabled(enabled: boolean) {
    this.spellChecker = enabled;
  }
  setDevicePermissionHandler(handler: FakeSession['devicePermission']) {
    this.devicePermission = handler;
  }
}

export class FakeContents extends EventEmitter {
  windowOpen: () => unknown = () => ({ action: 'allow' });
  mainFrame: FakeFrame | null = null;
  setWindowOpenHandler(handler: () => unknown) {
    this.windowOpen = handler;
  }
}

export class FakeFrame {
  readonly posted: { channel: string; ports: readonly MessagePort[] }[] = [];
  readonly detached = false;
  readonly url: string;
  readonly parent: FakeFrame | null;
  constructor(url: string, parent: FakeFrame | null = null) {
    this.url = url;
    this.parent = parent;
  }
  postMessage(channel: string, _message: null, ports: readonly MessagePort[]) {
    this.posted.push({ channel, ports });
  }
}

interface FakeWindowOptions {
  readonly width: number;
  readonly height: number;
  readonly x?: number;
  readonly y?: number;
  readonly show: boolean;
  readonly webPreferences: Readonly<Record<string, unknown>>;
}

class FakeWindow extends EventEmitter {
  static readonly all: FakeWindow[] = [];
  readonly options: FakeWindowOptions;
  readonly loaded: string[] = [];
  readonly focus = vi.fn();
  readonly show = vi.fn();
  readonly maximize = vi.fn();
  constructor(options: FakeWindowOptions) {
    super();
    this.options = options;
    FakeWindow.all.push(this);
  }
  isDestroyed = () => false;
  isMinimized = () => false;
  isMaximized = () => true;
  getNormalBounds = () => ({ x: 40, y: 50, width: 900, height: 700 });
  async loadURL(url: string) {
    this.loaded.push(url);
  }
}
