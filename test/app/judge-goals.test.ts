// The other ways of a set: against the clock, by metres, open, abandoned, left standing; and what is done with it later.
// The page's clock is Playwright's, moved on by hand (see judge.test.ts).

import { readFile } from 'node:fs/promises';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { openBrowser } from '../browser.ts';
import { type Program, startProgram } from '../program.ts';
import { allSaved, desktop, figure, goPaused, openProgram, readCautions, textOf } from './judge-driver.ts';

let browser: Browser;
let program: Program;
let context: BrowserContext;
let page: Page;
/** Set time that has gone by already, milliseconds. */
let spent = 0;
const begin = new Date('2026-03-07T10:00:00Z').getTime();

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  program = await startProgram();
  const opened = await openProgram(browser, program, desktop, async (fresh) => {
    await fresh.clock.install({ time: begin });
  });
  context = opened.context;
  page = opened.page;
  await readCautions(page);
  await page.getByLabel('Who is the athlete?').fill('Mara');
  await page.getByLabel('Who is judging?').fill('Jon');
});
afterEach(async () => {
  await context?.close();
  await program?.stop();
});

/** Chooses by the words on the buttons, goes, and stops the clock at go. */
async function begun(...choices: readonly string[]): Promise<void> {
  for (const choice of choices) await page.getByRole('radio', { name: choice, exact: true }).check({ force: true });
  await page.getByRole('button', { name: 'Brief the athlete' }).click();
  await page.getByRole('heading', { name: 'Read this to the athlete' }).waitFor();
  await page.clock.pauseAt(begin + 600_000);
  spent = await goPaused(page);
}

async function after(milliseconds: number, key?: string): Promise<void> {
  await page.clock.runFor(milliseconds - spent);
  spent = 0;
  if (key !== undefined) await page.keyboard.press(key);
}

async function summary(): Promise<void> {
  await after(100);
  await page.getByRole('button', { name: 'See the summary' }).click();
  await page.clock.resume();
  await allSaved(page);
  await page.getByTestId('figure-time').waitFor();
}

test('against the clock: it ends at exactly its time, a press a millisecond before counts, one after does not', async () => {
  await begun('Clock', '1:00');
  for (let rep = 0; rep < 29; rep += 1) await after(2_000, 'Space');
  await after(1_999, 'Space');
  await after(100, 'Space');
  await after(100);
  await page.getByRole('heading', { name: 'Time is up' }).waitFor();
  await summary();
  expect(await figure(page, 'time')).toBe('Time 1:00.0');
  expect(await figure(page, 'counted')).toBe('Counted 30');
});

test('against the clock, with nobody pressing: it ends by itself', async () => {
  await begun('Clock', '1:00');
  await after(2_000, 'Space');
  await after(57_900);
  expect(await page.getByRole('heading', { name: 'Time is up' }).count()).toBe(0);
  await after(400);
  await page.getByRole('heading', { name: 'Time is up' }).waitFor();
  await summary();
  expect(await figure(page, 'time')).toBe('Time 1:00.0');
});

test('by metres: marks in one press or by their figure, the last one ends the set at its own time', async () => {
  await begun('Jump burpee', '20 m');
  await after(3_000, 'Space');
  await after(4_000, 'Space');
  await after(500, 'Equal');
  await after(100);
  expect(await textOf(page.locator('output'))).toBe('10m');
  await page.getByRole('button', { name: 'Other mark' }).click();
  await page.getByLabel('Metres reached').fill('13,5');
  await page.getByRole('button', { name: 'Set mark' }).click();
  await after(100);
  expect(await textOf(page.locator('output'))).toBe('13.5m');
  await after(3_400, 'Space');
  await page.getByRole('button', { name: '20 m mark' }).click();
  await summary();
  expect(await figure(page, 'metres')).toBe('Distance 20 m');
  expect(await figure(page, 'counted')).toBe('Counted 3');
  expect(await figure(page, 'time')).toBe('Time 0:11.1');
});

test('an open set ends on purpose, and its finish can be taken back', async () => {
  await begun('Open end');
  await after(2_000, 'Space');
  await after(2_000, 'Space');
  await after(1_000);
  await page.getByRole('button', { name: 'Finish', exact: true }).click();
  await after(100);
  await page.getByRole('button', { name: 'It was a slip' }).click();
  await after(1_000, 'Space');
  await after(500, 'End');
  await summary();
  expect(await figure(page, 'time')).toBe('Time 0:06.6');
  expect(await figure(page, 'counted')).toBe('Counted 3');
  await page.getByText(/^1 slip, 0 reversals/).waitFor();
});

test('slip after slip goes further back, says what was withdrawn, and can be put back', async () => {
  await begun();
  await after(2_000, 'Space');
  await after(2_000, 'KeyD');
  await after(500, 'Comma');
  await after(500, 'Backspace');
  await after(100);
  await page.getByText('Withdrawn: begin of break').waitFor();
  await after(100, 'Backspace');
  await after(100);
  await page.getByText('Withdrawn: a no-rep').waitFor();
  await page.getByRole('button', { name: 'Put back' }).click();
  await after(100);
  await page.getByText('Put back: a no-rep').waitFor();
  await page.getByText('1 no-rep', { exact: true }).waitFor();
});

test('a wrong last call at the goal is put right at once, and the set runs on with its clock', async () => {
  await begun('25');
  for (let rep = 0; rep < 25; rep += 1) await after(2_000, 'Space');
  await after(1_000);
  await page.getByRole('button', { name: 'Last one was a no-rep' }).click();
  await after(1_000, 'Shift+KeyD');
  await after(2_000, 'Space');
  await summary();
  expect(await figure(page, 'time')).toBe('Time 0:54.0');
  expect(await figure(page, 'counted')).toBe('Counted 25');
  expect(await figure(page, 'no-reps')).toMatch(/^No-reps 1 /);
});

test('a set that stood still for long asks before it goes on, and ends at its last call if told so', async () => {
  await begun();
  await after(2_000, 'Space');
  await after(2_000, 'Space');
  await page.clock.resume();
  await allSaved(page);
  await page.clock.fastForward(15 * 60_000);
  await page.reload();
  await page.getByRole('heading', { name: 'This set has not ended' }).waitFor();
  await page.getByRole('button', { name: 'End it at its last call' }).click();
  await page.getByRole('button', { name: 'See the summary' }).click();
  await expect.poll(() => figure(page, 'time')).toBe('Time 0:04.0');
});

test('an abandoned set keeps its reason, is found by its state, and is exported as CSV', async () => {
  await begun();
  await after(2_000, 'Space');
  await page.clock.resume();
  await page.getByRole('button', { name: 'More' }).click();
  await page.getByRole('button', { name: 'Abandon the set' }).click();
  await page.getByLabel('Why? (optional)').fill('=cramp');
  await page.getByRole('button', { name: 'Yes, abandon it' }).click();
  await page.getByRole('button', { name: 'See the summary' }).click();
  await page.getByText('Abandoned: =cramp').first().waitFor();
  await allSaved(page);
  await page.getByRole('link', { name: 'All sets' }).click();
  await page.getByText('1 set', { exact: true }).waitFor();
  await page.getByLabel('Search').fill('nobody');
  await page.getByText('No set matches these filters.').waitFor();
  await page.getByRole('button', { name: 'Clear all filters' }).click();
  await page.getByText('Filters', { exact: true }).click();
  await page.getByLabel('State').selectOption('finished');
  await page.getByText('No set matches these filters.').waitFor();
  await page.getByLabel('State').selectOption('abandoned');
  await page.getByRole('link', { name: /^Open the set of Mara/ }).waitFor();
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Attempts as CSV' }).click(),
  ]);
  const lines = (await readFile(await file.path(), 'utf8')).trimEnd().split('\r\n');
  expect(lines).toHaveLength(2);
});

test('the athlete disputes a call, the head judge upholds it: the figures follow, and the history tells who and why', async () => {
  await begun('25');
  for (let rep = 0; rep < 10; rep += 1) await after(2_000, 'Space');
  await after(2_000, 'KeyD');
  for (let rep = 0; rep < 15; rep += 1) await after(2_000, 'Space');
  await summary();
  await page.getByRole('button', { name: 'Dispute a call' }).click();
  await page.getByLabel('What the athlete says').fill('It was deep');
  await page.getByRole('button', { name: 'Lodge the appeal' }).click();
  await page.getByText('waits for the head judge').waitFor();
  await page.getByRole('button', { name: 'Head judge’s answer' }).click();
  await page.getByRole('textbox', { name: /^Reason/ }).fill('Seen from the side');
  await page.getByRole('button', { name: 'Uphold and change the call' }).click();
  await page.getByText('upheld, the call is changed').waitFor();
  await expect.poll(() => figure(page, 'no-reps')).toMatch(/^No-reps 0/);
  expect(await figure(page, 'counted')).toBe('Counted 26');
  await page.getByText(/^The log in words/).click();
  await page.getByText('attempt 11 turned into counted, by Jon: Seen from the side').waitFor();
  await page.getByText('Appeal against attempt 11 upheld by Jon').waitFor();
});

test('"again" briefs the same set, and a set of a hundred prints on one page', async () => {
  await begun();
  for (let rep = 1; rep <= 104; rep += 1)
    await after(2_000, rep % 26 === 0 ? ['KeyD', 'KeyL', 'KeyA', 'KeyT'][rep / 26 - 1] : 'Space');
  await summary();
  await page.getByTestId('figure-cost').waitFor();
  const pdf = (await page.pdf({ format: 'A4' })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  await page.getByRole('button', { name: 'Same set again' }).click();
  await page.getByRole('heading', { name: 'Read this to the athlete' }).waitFor();
  expect(await textOf(page.locator('article'))).toContain('100 throws, 4 kg at 2.70 m');
});
