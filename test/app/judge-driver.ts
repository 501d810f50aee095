// Drives the Judge area as a judge does, in a real browser against the real program.

import { readFile } from 'node:fs/promises';
import type { Browser, BrowserContext, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { setsFile } from '../../shared-types/contract/exchange.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import type { Program } from '../program.ts';

export const desktop = { viewport: { width: 1280, height: 800 } } as const;
export const phone = { viewport: { width: 360, height: 640 }, hasTouch: true, isMobile: true } as const;

export interface Opened {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the page threw or logged as an error. */
  readonly errors: readonly string[];
}

/** Opens the program's address, which is good once: further pages of the same context are let in by its cookie. */
export async function openProgram(
  browser: Browser,
  program: Pick<Program, 'address'>,
  options: BrowserContextOptions,
  prepare: (page: Page) => Promise<void> = async () => {},
): Promise<Opened> {
  const context = await browser.newContext({ locale: 'en-GB', ...options });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await prepare(page);
  await page.goto(program.address);
  await page.locator('main').waitFor();
  return { context, page, errors };
}

export async function readCautions(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'I have read this' }).click();
}

/** The very first set: two names and the card. */
export async function briefFirst(page: Page, athlete: string, judge: string): Promise<void> {
  await readCautions(page);
  await page.getByLabel('Who is the athlete?').fill(athlete);
  await page.getByLabel('Who is judging?').fill(judge);
  await page.getByRole('button', { name: 'Brief the athlete' }).click();
  await page.getByRole('heading', { name: 'Read this to the athlete' }).waitFor();
}

export async function goNow(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Go now' }).click();
  await page.getByRole('button', { name: 'Counted', exact: true }).waitFor();
}

/** The text of a part of the page, its spaces made plain. */
export async function textOf(part: Locator): Promise<string> {
  return ((await part.textContent()) ?? '').replace(/\s+/g, ' ').trim();
}

export async function figure(page: Page, name: string): Promise<string> {
  const parts = await page.getByTestId(`figure-${name}`).locator('dt, dd').allTextContents();
  return parts.join(' ').replace(/\s+/g, ' ').trim();
}

/** Waits until the desk has acknowledged everything. */
export async function allSaved(page: Page): Promise<void> {
  await page.getByTestId('link-state').getByText('Saved').waitFor();
}

/** The way to a place of the program, as its address says it. */
export async function goTo(page: Page, place: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, place);
}

/**
 * The log of the latest set as the desk exports it: what a user would get as a file. Reads it in a further page, so that
 * the one under test stays as it is.
 */
export async function savedLog(page: Page, address = page.url()): Promise<readonly SetEvent[]> {
  const reader = await page.context().newPage();
  try {
    await reader.goto(address.replace(/#.*$/, '#/judge/sets'));
    const [file] = await Promise.all([
      reader.waitForEvent('download'),
      reader.getByRole('button', { name: 'Logs as JSON' }).click(),
    ]);
    const { sets } = setsFile.parse(JSON.parse(await readFile(await file.path(), 'utf8')));
    return sets[0]?.events ?? [];
  } finally {
    await reader.close();
  }
}

/**
 * Waits while the page's clock stands still, moving it on in small steps: the page's own timers and frames need time to
 * pass. Answers how much did, milliseconds of set time to be taken off the next wait.
 */
export async function untilPaused(page: Page, there: () => Promise<boolean>): Promise<number> {
  for (let spent = 0; spent < 1_500; spent += 10) {
    if (await there()) return spent;
    await page.clock.runFor(10);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  throw new Error('what was waited for did not come');
}

/** Go on a clock that stands still; answers the set time that went by until the screen stood, milliseconds. */
export async function goPaused(page: Page): Promise<number> {
  await page.getByRole('button', { name: 'Go now' }).click();
  return untilPaused(page, () => page.getByRole('button', { name: 'Counted', exact: true }).isVisible());
}
