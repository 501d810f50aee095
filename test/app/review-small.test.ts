// The Review area with nothing to review, with one set of three reps, and with names and years beyond the usual.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createRouterClient } from '@orpc/server';
import { afterEach, expect, test } from 'vitest';
import { openDesk } from '../../main/desk/desk.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import { textOf } from './judge-driver.ts';
import { accessibilityProblems, inEveryLook, openScreens, type Screens } from './screens.ts';

const athlete = '00000000-0000-4000-8000-00000000000a';
const judge = '00000000-0000-4000-8000-00000000000b';

let folder: string | undefined;
let screens: Screens | undefined;
afterEach(async () => {
  await screens?.close();
  if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
  [screens, folder] = [undefined, undefined];
});

interface Judged {
  readonly day: string;
  /** A sign an attempt: `.` counted, else the first letter of "depth" or "line"; two seconds apart. */
  readonly calls: string;
}

const faultOf = (sign: string): string => (sign === 'd' ? 'depth' : 'line');

/** Fills a data folder with sets of one athlete, under the given name, and opens the program on it. */
async function openWith(name: string, judged: readonly Judged[]): Promise<Screens> {
  folder = mkdtempSync(path.join(tmpdir(), 'plumbline-review-'));
  const opened = await openDesk({
    ledgerPath: path.join(folder, 'plumbline.db'),
    host: 'browser',
    demo: false,
    version: '0.0.0',
  });
  if (!opened.ok) throw new Error(opened.problem.message);
  const calls = createRouterClient(opened.desk.router, { context: {} });
  const person = { nickname: '', notes: '', archivedAt: null, createdAt: 1 };
  await calls.people.save({ ...person, id: athlete, name, athlete: true, judge: false });
  await calls.people.save({ ...person, id: judge, name: 'Jon', athlete: false, judge: true });
  for (const [index, { day, calls: signs }] of judged.entries()) {
    const set = `00000000-0000-4000-8000-${String(index + 1).padStart(12, '0')}`;
    const wallClock = Date.parse(`${day}T18:00:00Z`);
    await calls.sets.create({
      id: set,
      athlete,
      judge,
      sheet: { id: 'wall-throw', version: 1 },
      goal: { kind: 'reps', reps: 100 },
      loadKg: 6,
      heightM: 2.7,
      before: 'fresh',
      tags: [],
      note: '',
      role: 'main',
      practice: false,
      createdAt: wallClock,
    });
    const base = (seq: number, at: number) => ({ set, pad: `pad-${index}`, seq, at });
    const events: SetEvent[] = [
      { ...base(1, 0), kind: 'go', wallClock },
      ...Array.from(signs).map(
        (sign, place): SetEvent => ({
          ...base(place + 2, 2_000 * (place + 1)),
          kind: 'call',
          ...(sign === '.' ? { verdict: 'counted', faults: [] } : { verdict: 'no-rep', faults: [faultOf(sign)] }),
        }),
      ),
      { ...base(signs.length + 2, 2_000 * (signs.length + 1)), kind: 'finish' },
    ];
    await calls.sets.append({ events });
  }
  await opened.desk.close();
  screens = await openScreens({ folder });
  return screens;
}

const views = [
  '/review',
  `/review/athlete/${athlete}?station=wall-throw`,
  `/review/athlete/${athlete}/compare`,
  `/review/athlete/${athlete}/race-card`,
  `/review/judge/${judge}`,
  '/review/gym',
];

async function expectSound({ page, go }: Screens): Promise<void> {
  for (const place of views) {
    await go(place);
    await page.waitForTimeout(700);
    expect(await textOf(page.locator('main')), place).not.toMatch(/NaN|Infinity|undefined|null/);
    const found = await inEveryLook(page, () => accessibilityProblems(page));
    expect(found, place).toEqual([]);
  }
}

test('nothing judged yet: every view says so and leads to Judge', async () => {
  const opened = await openWith('Mara', []);
  const { page, go } = opened;
  for (const place of views) {
    await go(place);
    await page.getByText('There is nothing to review yet.').waitFor();
  }
  await page.getByRole('link', { name: 'Judge a set' }).click();
  await expect.poll(() => page.url()).toMatch(/#\/judge$/);
  expect(opened.troubles).toEqual([]);
});

test('one set of three reps: what three reps can say, and that the rest cannot be told', async () => {
  const opened = await openWith('Mara', [{ day: '2026-03-07', calls: '.d.' }]);
  const { page, go } = opened;
  await go(`/review/athlete/${athlete}?station=wall-throw`);
  const answer = await textOf(page.getByTestId('answer'));
  expect(answer).toContain('33 no-reps in 100 attempts');
  expect(answer).toContain('can’t be told yet: there are too few sets');
  // Wilson's interval of 1 in 3, computed by hand: 6.1 to 79.2 %.
  expect(answer).toContain('33.3 % of attempts (6.1 to 79.2 %)');
  expect(await textOf(page.getByTestId('train-first'))).toContain('Too few to say how sure that is.');
  for (const figure of ['place', 'hurry', 'pacing']) {
    expect(await textOf(page.getByTestId(`figure-${figure}`))).toContain('Can’t be told');
  }
  await go(`/review/athlete/${athlete}/race-card`);
  await page.getByRole('heading', { name: 'Cautions' }).waitFor();
  expect(await textOf(page.locator('main'))).toContain('Lower!');
  await expectSound(opened);
  expect(opened.troubles).toEqual([]);
});

test('sets without one no-rep: how rare they may still be, and nothing to train', async () => {
  const { page, go } = await openWith('Mara', [
    { day: '2026-03-07', calls: '.'.repeat(60) },
    { day: '2026-03-09', calls: '.'.repeat(60) },
  ]);
  await go(`/review/athlete/${athlete}?station=wall-throw`);
  const answer = await textOf(page.getByTestId('answer'));
  // Wilson's upper bound of 0 in 120: z^2 / (n + z^2) = 3.1 %.
  expect(answer).toBe('Not one no-rep in 120 attempts. The true rate lies below 3.1 %.');
  expect(await page.getByTestId('train-first').count()).toBe(0);
});

test('twelve years and a name of 300 letters: nothing breaks out of the page', async () => {
  const judged = Array.from({ length: 48 }, (_, index) => ({
    day: new Date(Date.UTC(2014, 3 * index, 5)).toISOString().slice(0, 10),
    calls: `${'.'.repeat(10)}d${'.'.repeat(12)}${index % 3 === 0 ? 'l' : '.'}${'.'.repeat(8)}`,
  }));
  const opened = await openWith('Wolkenschieber'.repeat(22), judged);
  await expectSound(opened);
  await opened.go(`/review/athlete/${athlete}?station=wall-throw`);
  await opened.page.getByTestId('figure-rate').waitFor();
  const ticks = await opened.page.getByTestId('figure-rate').locator('svg text').allTextContents();
  expect(ticks.some((text) => /20\d\d/.test(text))).toBe(true);
  expect(opened.troubles).toEqual([]);
}, 180_000);
