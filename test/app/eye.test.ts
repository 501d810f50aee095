// Each drill of Train the eye played to its end in real time by a scripted judge who knows the truth and errs on purpose.

import { readFile } from 'node:fs/promises';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser } from '../browser.ts';
import { type Program, startProgram } from '../program.ts';
import {
  browserArguments,
  nextTrial,
  offerTruth,
  press,
  reachPhase,
  type Said,
  score,
  scoresOf,
  type Trial,
} from './eye-driver.ts';
import { goTo, openProgram, textOf } from './judge-driver.ts';
import { accessibilityProblems, inEveryLook } from './screens.ts';

let browser: Browser;
let program: Program;
let context: BrowserContext;
let page: Page;
let errors: readonly string[];
beforeAll(async () => {
  browser = await openBrowser(browserArguments);
  program = await startProgram();
  const opened = await openProgram(
    browser,
    program,
    // A small picture: without a graphics chip its size is what a frame costs.
    { viewport: { width: 1000, height: 560 }, reducedMotion: 'reduce' },
    offerTruth,
  );
  ({ context, page, errors } = opened);
  await page.getByRole('navigation').waitFor();
});
afterAll(async () => {
  await context?.close();
  await browser?.close();
  await program?.stop();
});

const long = { timeout: 240_000 };

async function home(): Promise<void> {
  await goTo(page, '#/eye');
  await page.getByRole('heading', { level: 1, name: 'Train the eye' }).waitFor();
}

/** Chooses a drill of the wall throw and goes to it. */
async function choose(kind: string, reps: string): Promise<void> {
  await home();
  const judge = page.getByRole('combobox', { name: 'Who is judging?' });
  await judge.waitFor();
  if ((await judge.inputValue()) === '') {
    await judge.fill('Jon Adeyemi');
    await page.getByRole('option', { name: 'Add Jon Adeyemi' }).click();
  }
  await page.getByRole('radio', { name: kind, exact: true }).check();
  await page.getByRole('radio', { name: reps, exact: true }).check();
  await page.getByRole('button', { name: 'Go to the drill' }).click();
  await page.getByRole('button', { name: 'Begin', exact: true }).waitFor();
}

const rightOf = (trial: Trial): Said => {
  const [code] = trial.broken;
  return code === undefined ? 'counted' : { noRep: code };
};
const otherThan = (trial: Trial): Said => ({
  noRep: ['line', 'depth', 'aim'].find((code) => !trial.broken.includes(code)) ?? 'stand',
});

async function expectScores(calls: readonly { broken: readonly string[]; said: Said }[]): Promise<void> {
  const expected = scoresOf(calls);
  await page.getByTestId('score-hits').waitFor();
  expect(await score(page, 'hits')).toContain(expected.hits);
  expect(await score(page, 'false-alarms')).toContain(expected.falseAlarms);
  expect(await score(page, 'reasons')).toContain(expected.reasons);
  await page.getByRole('heading', { name: expected.right }).waitFor();
}

test('the truth is not at hand unless a test asks for it by name', async () => {
  const plain = await browser.newContext();
  try {
    const other = await plain.newPage();
    await other.goto(page.url());
    expect(await other.evaluate(() => 'plumblineTestEye' in window)).toBe(false);
  } finally {
    await plain.close();
  }
});

test('single reps: called by key, the truth shown after each, the scores as counted by hand', long, async () => {
  await choose('Single reps with feedback', '6');
  expect(await accessibilityProblems(page)).toEqual([]);
  await page.keyboard.press('Space');
  const calls: { broken: readonly string[]; said: Said }[] = [];
  for (let i = 0; i < 6; i += 1) {
    const trial = await nextTrial(page, i);
    if (trial === null) throw new Error('the drill ended early');
    // The second is counted whatever it is; the fourth gets a reason that is not there.
    const said: Said = i === 1 ? 'counted' : i === 3 ? otherThan(trial) : rightOf(trial);
    if (i === 2) {
      // Pressed by mistake, withdrawn, called anew.
      await press(page, otherThan(trial));
      await page.getByText('Noted: no-rep').waitFor();
      await page.keyboard.press('Backspace');
      await page.getByText(/Your call\?|Watch/).waitFor();
    }
    // The judge has walked behind the athlete for one call.
    if (i === 4) await page.keyboard.press('Digit5');
    await page.waitForTimeout(60);
    await press(page, said);
    calls.push({ broken: trial.broken, said });
    await reachPhase(page, 'feedback');
    const panel = page.getByTestId('feedback');
    const right = (said !== 'counted') === trial.broken.length > 0;
    expect(await textOf(panel.getByRole('status'))).toMatch(right ? /^Right\./ : /^Not so\./);
    expect(await textOf(panel.getByRole('heading'))).toMatch(
      trial.broken.length === 0 ? /^It was a good rep$/ : /^It was a no-rep: /,
    );
    if (i === 0) {
      // A still, since the browser asks for less motion; its margin is drawn in and said.
      await panel.getByText('A still, since you asked for less motion').waitFor();
      expect(await panel.locator('[aria-pressed="true"]').count()).toBe(1);
      expect(await accessibilityProblems(page)).toEqual([]);
    }
    await page.keyboard.press('Space');
  }
  await page.getByRole('heading', { name: 'That was it' }).waitFor();
  await page.keyboard.press('Space');
  await expectScores(calls);
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.setViewportSize({ width: 1000, height: 560 });

  // A rep is made again from its seed and looked at once more.
  await page.getByRole('button', { name: 'Look at it again' }).nth(1).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByTestId('feedback').waitFor();
  expect(await textOf(dialog.getByTestId('feedback').getByRole('status'))).toContain('You called: counted');
  expect(await accessibilityProblems(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Close' }).click();
});

test('a live stream: called as it comes, one rep left out, the scores as counted by hand', long, async () => {
  await choose('Live stream', '20');
  await page.keyboard.press('Space');
  await reachPhase(page, 'stream');
  const calls: { broken: readonly string[]; said: Said }[] = [];
  for (let i = 0; i < 20; i += 1) {
    const trial = await nextTrial(page, i);
    if (trial === null) throw new Error('the stream ended early');
    if (i === 11) continue;
    const said: Said = i % 7 === 3 ? (trial.broken.length > 0 ? 'counted' : otherThan(trial)) : rightOf(trial);
    await press(page, said);
    calls.push({ broken: trial.broken, said });
  }
  await reachPhase(page, 'done');
  await page.getByRole('button', { name: 'See the result' }).click();
  await page.getByTestId('score-hits').waitFor();
  const spoilt = await page.getByTestId('score-spoilt').count();
  if (spoilt === 0) {
    await expectScores(calls);
    expect(await score(page, 'unanswered')).toBe('1');
  } else {
    // The machine was too busy to draw some of it: those reps are left out, and said so.
    expect(Number(await score(page, 'spoilt'))).toBeGreaterThan(0);
  }
  expect(await page.getByTestId('score-extra').count()).toBe(0);
  const reaction = await score(page, 'reaction');
  expect(reaction).toMatch(/\d/);
});

test('finding the line: a judge who lets 4 cm through is told so, and the drill ends by its rule', long, async () => {
  await choose('Find your line', '30');
  await page.keyboard.press('Space');
  const calls: { broken: readonly string[]; said: Said }[] = [];
  for (let i = 0; i < 30; i += 1) {
    const trial = await nextTrial(page, i);
    if (trial === null) break;
    const margin = trial.margins.depth ?? 0;
    // An eye of a centimetre's precision with its line at -4: the same noise in every run.
    const seen = margin + Math.sin(i * 12.9898);
    const said: Said = seen < -4 ? { noRep: 'depth' } : 'counted';
    await press(page, said);
    calls.push({ broken: trial.broken, said });
    await page.getByText(/^Noted: /).waitFor();
  }
  await reachPhase(page, 'done');
  await page.keyboard.press('Space');
  await expectScores(calls);
  await page.getByTestId('fault-depth-all').waitFor();
  const sentence = await textOf(page.getByTestId('sentences'));
  const told = /You let through squats up to (\d+\.\d) cm too high/.exec(sentence);
  expect(told, sentence).not.toBe(null);
  expect(Math.abs(Number(told?.[1]) - 4)).toBeLessThan(1.5);
});

test('places: the same reps from both, and the gain of the advised place shown', long, async () => {
  await choose('Place to stand', '10');
  await page.keyboard.press('Space');
  const calls: { broken: readonly string[]; said: Said }[] = [];
  for (let i = 0; i < 20; i += 1) {
    const trial = await nextTrial(page, i);
    if (trial === null) throw new Error('the drill ended early');
    const poor = (await page.getByRole('img', { name: /poor place/ }).count()) > 0;
    // From the poor place this judge counts everything.
    const said: Said = poor ? 'counted' : rightOf(trial);
    await press(page, said);
    calls.push({ broken: trial.broken, said });
    await page.getByText(/^Noted: /).waitFor();
  }
  await reachPhase(page, 'done');
  await page.keyboard.press('Space');
  await expectScores(calls);
  expect(await textOf(page.getByTestId('gain'))).toMatch(/From the advised place (you call )?100 % right/);
});

test('history, readiness, the list of drills and their files know what was done', long, async () => {
  await home();
  await page.getByText('reps still needed').first().waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.getByRole('link', { name: 'Your history' }).click();
  await page.getByRole('heading', { level: 1, name: 'Jon Adeyemi, Wall throw' }).waitFor();
  await page.getByText('4 drills').waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);

  await goTo(page, '#/eye/ready');
  await page.getByRole('link', { name: 'History of Jon Adeyemi, Wall throw' }).waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.getByLabel('Least reps called, each fault').fill('5');
  await page.getByRole('button', { name: 'Make these the gym’s bounds' }).click();
  await page.getByText('The bounds are saved.').first().waitFor();
  await page.reload();
  await expect.poll(() => page.getByLabel('Least reps called, each fault').inputValue()).toBe('5');

  await goTo(page, '#/eye/drills');
  await page.getByText('4 drills').waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Reps as CSV' }).click(),
  ]);
  const lines = (await readFile(await file.path(), 'utf8')).trim().split('\n');
  expect(lines.length).toBeGreaterThan(6 + 20 + 20);
  const [log] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Logs as JSON' }).click(),
  ]);
  const walked = (await readFile(await log.path(), 'utf8')).match(/"bearing":\s*170,/g);
  expect(walked?.length).toBeGreaterThanOrEqual(1);
  expect(errors).toEqual([]);
});
