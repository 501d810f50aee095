import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { BrowserWindow, type Rectangle, type Session, screen } from 'electron';
import { z } from 'zod';
import { originOf, type Place } from './origin.ts';

const smallest = { width: 480, height: 480 };
const usual = { width: 1280, height: 860 };
const kept = z.object({
  x: z.number().int(),
  y: z.number().int(),
  width: z.number().int().min(smallest.width),
  height: z.number().int().min(smallest.height),
  maximised: z.boolean(),
});
type Kept = z.infer<typeof kept>;

/** Opens the window, where and as large as it was last time. Show it by its `ready-to-show`. */
export function openWindow(session: Session, place: Place, stateFile: string): BrowserWindow {
  const last = readKept(stateFile);
  const bounds = last !== null && isVisible(last, areas()) ? last : usual;
  const window = new BrowserWindow({
    ...pick(bounds),
    minWidth: smallest.width,
    minHeight: smallest.height,
    show: false,
    title: 'Plumbline',
    backgroundColor: '#101418',
    webPreferences: {
      session,
      preload: path.join(import.meta.dirname, 'preload.cjs'),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    },
  });
  if (last?.maximised) window.maximize();
  window.once('ready-to-show', () => window.show());
  window.on('close', () => {
    const state: Kept = { ...window.getNormalBounds(), maximised: window.isMaximized() };
    writeKept(stateFile, state);
  });
  void window.loadURL(`${originOf(place)}/`);
  return window;
}

function areas(): Rectangle[] {
  return screen.getAllDisplays().map((display) => display.workArea);
}

function pick(bounds: Partial<Rectangle>): Partial<Rectangle> {
  const { x, y, width, height } = bounds;
  return { ...(x === undefined || y === undefined ? {} : { x, y }), ...(width && height ? { width, height } : {}) };
}

/**
 * Whether enough of the window's top edge to take hold of lies on one of the areas: a monitor may be gone.
 * @internal exported for its test
 */
export function isVisible(window: Rectangle, on: readonly Rectangle[]): boolean {
  return on.some((area) => {
    const overlap = Math.min(window.x + window.width, area.x + area.width) - Math.max(window.x, area.x);
    return overlap >= 120 && window.y >= area.y && window.y <= area.y + area.height - 40;
  });
}

function readKept(file: string): Kept | null {
  try {
    return kept.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    return null;
  }
}

function writeKept(file: string, state: Kept): void {
  try {
    writeFileSync(file, JSON.stringify(state));
  } catch {
    // Only the window's size is lost.
  }
}
