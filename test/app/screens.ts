// The program in a browser, for tests that look at its screens.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../browser.ts';
import { type Program, type ProgramOptions, startProgram } from '../program.ts';

export interface Screens {
  readonly page: Page;
  readonly program: Program;
  /** Goes to a place of the program, such as `/people`, as a user would who types it into the address. */
  go(place: string): Promise<void>;
  /** Another page of the program beside it, for what would disturb the first, such as printing. */
  another(place: string): Promise<Page>;
  /** Every error that the pages have shown to the console or thrown, in order. */
  readonly troubles: readonly string[];
  close(): Promise<void>;
}

/** Starts the program, on an empty data folder unless told otherwise, and opens it on a page of the usual size. */
export async function openScreens(options: ProgramOptions = {}): Promise<Screens> {
  const program = await startProgram(options);
  let browser: Browser | undefined;
  try {
    browser = await openBrowser();
    const opened = browser;
    const context = await opened.newContext({
      viewport: { width: 1280, height: 900 },
      locale: 'en-GB',
      reducedMotion: 'reduce',
    });
    const page = await context.newPage();
    const troubles: string[] = [];
    page.on('pageerror', (error) => troubles.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') troubles.push(message.text());
    });
    await page.goto(program.address);
    await page.getByRole('navigation').waitFor();
    const base = page.url().replace(/[?#].*$/, '');
    return {
      page,
      program,
      troubles,
      go: async (place) => {
        await page.goto(`${base}#${place}`);
        await page.getByRole('heading', { level: 1 }).waitFor();
      },
      another: async (place) => {
        const other = await context.newPage();
        await other.goto(`${base}#${place}`);
        await other.getByRole('heading', { level: 1 }).waitFor();
        return other;
      },
      close: async () => {
        await opened.close();
        await program.stop();
      },
    };
  } catch (error) {
    await browser?.close();
    await program.stop();
    throw error;
  }
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe-core finds on the page as it stands, one line a finding: WCAG 2.2 A and AA, and its best practices. */
export async function accessibilityProblems(page: Page): Promise<string[]> {
  // Colours on their way from one look to the other are not what anybody reads.
  await page.evaluate(() => {
    const ending = document.getAnimations().filter(({ effect }) => effect?.getComputedTiming().endTime !== Infinity);
    return Promise.all(ending.map((animation) => animation.finished.catch(() => null))).then(() => undefined);
  });
  await page.evaluate(`${axeSource};undefined`);
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
  const results = await page.evaluate<AxeResults>(`axe.run(document, { runOnly: ${JSON.stringify(tags)} })`);
  return results.violations.flatMap((violation) =>
    violation.nodes.map((node) => `${violation.id}: ${node.html.slice(0, 160)}`),
  );
}

const looks = [
  ['paper', 1280],
  ['hall', 1280],
  ['paper', 360],
] as const;

/** Runs a check in both looks, and as narrow as a small phone; answers with its findings, each with where. */
export async function inEveryLook(page: Page, check: () => Promise<readonly string[]>): Promise<string[]> {
  const found: string[] = [];
  for (const [look, width] of looks) {
    await page.setViewportSize({ width, height: 800 });
    await page.evaluate((name) => {
      document.documentElement.dataset.theme = name;
    }, look);
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    if (sideways > 0) found.push(`${look} ${width}: ${sideways} pixels too wide`);
    found.push(...(await check()).map((line) => `${look} ${width}: ${line}`));
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  return found;
}
