// The Review area over the demonstration: what each view shows against what a few independent lines make of the exported
// logs (review-by-hand.ts), the way from a figure to the set behind it, keys, filters in the address, files, looks, paper.

import { mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Download, Locator } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { textOf } from './judge-driver.ts';
import {
  cleanCycles,
  median,
  rateText,
  reasonsByHand,
  roughCost,
  type SetByHand,
  type SetsFile,
  setsByHand,
  total,
  wilson,
} from './review-by-hand.ts';
import { accessibilityProblems, inEveryLook, openScreens, type Screens } from './screens.ts';

let folder: string;
let screens: Screens;
let file: SetsFile;
let sets: readonly SetByHand[];

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'plumbline-review-'));
  screens = await openScreens({ folder, args: ['--demo'] });
  await screens.go('/judge/sets');
  const close = screens.page.getByRole('button', { name: 'I have read this' });
  if (await close.isVisible()) await close.click();
  file = JSON.parse(await saved(screens.page.getByRole('button', { name: 'Logs as JSON' })));
  sets = setsByHand(file);
}, 240_000);
afterAll(async () => {
  await screens?.close();
  rmSync(folder, { recursive: true, force: true });
});
beforeEach(() => {
  expect(sets.length).toBeGreaterThan(200);
});

/** Presses a button that saves a file and answers the file's text. */
async function saved(button: Locator): Promise<string> {
  const [download] = await Promise.all([screens.page.waitForEvent('download'), button.click()]);
  return textOfFile(download);
}

async function textOfFile(download: Download): Promise<string> {
  return readFile(await download.path(), 'utf8');
}

const nameOf = (id: string): string => {
  const person = file.people.find((one) => one.id === id);
  return person === undefined ? '' : person.nickname || person.name;
};
const idOf = (name: string): string => file.people.find((one) => one.name === name)?.id ?? '';
const faultName = (code: string): string =>
  file.sheets.flatMap((sheet) => sheet.faults).find((fault) => fault.code === code)?.name ?? code;
const setsOf = (athlete: string, sheet: string): readonly SetByHand[] =>
  sets.filter(({ setup }) => setup.athlete === athlete && setup.sheet.id === sheet);
const shortNumber = (value: number): string => value.toLocaleString('en-GB');
const plural = (count: number, one: string, other: string): string =>
  `${shortNumber(count)} ${count === 1 ? one : other}`;

async function totalText(name: string): Promise<string> {
  const parts = await screens.page.getByTestId(`total-${name}`).locator('dd, span').allTextContents();
  return parts.join(' | ').replace(/\s+/g, ' ');
}

async function leadingTotal(name: string): Promise<number> {
  const text = await screens.page.getByTestId(`total-${name}`).locator('dd').first().textContent();
  return Number((text ?? '').replace(/[^\d.]/g, ''));
}

/** The rows of a figure's table, each its cells' texts. */
async function tableOf(figure: string): Promise<readonly (readonly string[])[]> {
  const box = screens.page.getByTestId(figure);
  await box.locator('tbody tr').first().waitFor({ state: 'attached' });
  return box
    .locator('tbody tr')
    .evaluateAll((rows) =>
      rows.map((row) => [...row.children].map((cell) => (cell.textContent ?? '').replace(/\s+/g, ' ').trim())),
    );
}

const expectTotals = async (of: readonly SetByHand[]): Promise<void> => {
  const [attempts, noReps] = [total(of, (set) => set.attempts.length), total(of, (set) => set.noReps)];
  expect(await leadingTotal('sets')).toBe(of.length);
  expect(await leadingTotal('attempts')).toBe(attempts);
  expect(await totalText('attempts')).toContain(`${shortNumber(attempts - noReps)} counted`);
  expect(await leadingTotal('no-reps')).toBe(noReps);
  expect(await totalText('no-reps')).toContain(rateText(noReps, attempts));
};

test('home: every athlete and judge with sets, how many, and the rate', async () => {
  await screens.go('/review');
  await screens.page.getByRole('link', { name: /Ines Marrow/ }).waitFor();
  for (const part of ['athlete', 'judge'] as const) {
    for (const [id, own] of Map.groupBy(sets, (set) => set.setup[part])) {
      const line = screens.page.locator(`a[href^="#/review/${part}/${id}"]`);
      const text = await textOf(line);
      expect(text).toContain(nameOf(id));
      expect(text).toContain(plural(own.length, 'set', 'sets'));
      const attempts = total(own, (set) => set.attempts.length);
      expect(text).toContain(
        rateText(
          total(own, (set) => set.noReps),
          attempts,
        ),
      );
    }
  }
  await screens.page.getByLabel('Find a person').fill('marrow');
  await expect.poll(() => screens.page.locator('a[href^="#/review/athlete/"]').count()).toBe(1);
});

test('athlete: totals, each set, reasons, clocks and attempts as the logs say', async () => {
  const ines = idOf('Ines Marrow');
  const own = setsOf(ines, 'wall-throw');
  await screens.go('/review');
  await screens.page.getByRole('link', { name: /Ines Marrow/ }).click();
  await screens.page.getByRole('radio', { name: 'Wall throw' }).click({ force: true });
  await expect.poll(async () => leadingTotal('sets')).toBe(own.length);
  await expectTotals(own);

  const rates = await tableOf('figure-rate');
  expect(rates).toHaveLength(own.length);
  for (const [index, set] of own.toReversed().entries()) {
    const [day, attempts, noReps, rate] = rates[index] ?? [];
    const [low, high] = wilson(set.noReps, set.attempts.length);
    expect(new Date(`${day} UTC`).toISOString().slice(0, 10)).toBe(new Date(set.goAt).toISOString().slice(0, 10));
    expect([attempts, noReps]).toEqual([String(set.attempts.length), String(set.noReps)]);
    expect(rate).toBe(
      `${rateText(set.noReps, set.attempts.length)} (${(100 * low).toFixed(1)} to ${(100 * high).toFixed(1)} %)`,
    );
  }

  const reasons = reasonsByHand(own);
  const all = total(own, (set) => set.noReps);
  const shown = await tableOf('figure-reasons');
  expect(shown).toHaveLength(reasons.size);
  for (const [code, count] of reasons) {
    const name = code === '' ? 'No reason yet' : faultName(code);
    const row = shown.find((cells) => cells[0] === name);
    expect([row?.[1], row?.[2]]).toEqual([String(count), `${((100 * count) / all).toFixed(0)} %`]);
  }
  const perHundred = (100 * total(own, roughCost)) / total(own, (set) => set.counted);
  const told = await leadingTotal('per-100');
  expect(Math.abs(told / perHundred - 1)).toBeLessThan(0.05);
  const parts = shown.map((row) => Number.parseFloat(row[3] ?? ''));
  expect(Math.abs(parts.reduce((sum, value) => sum + value, 0) - told)).toBeLessThan(0.3);
  expect(parts).toEqual(parts.toSorted((a, b) => b - a));

  const clocks = await tableOf('figure-ledgers');
  expect(own.filter((set) => set.breaksEnded && set.breaks.length > 0).length).toBeGreaterThan(3);
  const tenths = (text: string | undefined): number => {
    const [minutes = '0', seconds = '0'] = (text ?? '').split(':');
    return Number(minutes) * 60 + Number(seconds);
  };
  for (const [index, set] of own.toReversed().slice(0, clocks.length).entries()) {
    const [, clock, work, noRep, pause, start] = clocks[index] ?? [];
    expect(tenths(clock)).toBeCloseTo(Math.floor(set.clockMs / 100) / 10, 6);
    const rested = set.breaks.reduce((sum, [from, to]) => sum + to - from, 0) / 1_000;
    if (set.breaksEnded) expect(Math.abs(tenths(pause) - rested)).toBeLessThan(0.11);
    // Each line is cut to tenths, so the four may fall short of the clock by less than four of them.
    const sum = tenths(work) + tenths(noRep) + tenths(pause) + tenths(start);
    expect(tenths(clock) - sum).toBeGreaterThan(-0.001);
    expect(tenths(clock) - sum).toBeLessThan(0.4);
  }

  const picture = await tableOf('figure-picture');
  for (const [index, set] of own.toReversed().slice(0, picture.length).entries()) {
    const marks = picture[index]?.[3] ?? '';
    expect(marks).toHaveLength(set.attempts.length);
    const failed = set.attempts.map((attempt) => attempt.verdict === 'no-rep');
    expect(Array.from(marks).map((sign) => sign !== '.' && sign !== '!')).toEqual(failed);
  }

  const tenthsOfSet = await tableOf('figure-place');
  const column = (at: number) => tenthsOfSet.reduce((sum, row) => sum + Number(row[at]?.replace(',', '')), 0);
  expect([column(1), column(2)]).toEqual([total(own, (set) => set.attempts.length), all]);
});

test('athlete: the address holds the choices, and the same address shows the same', async () => {
  const ines = idOf('Ines Marrow');
  const { page } = screens;
  await screens.go(`/review/athlete/${ines}?station=wall-throw`);
  await page.getByText('Filters', { exact: true }).click();
  await page.getByLabel('After a run').check();
  await page.getByLabel('Time', { exact: true }).selectOption({ label: 'From a day to a day' });
  const own = setsOf(ines, 'wall-throw').filter(({ setup }) => setup.before === 'run');
  const middle = own[Math.floor(own.length / 2)];
  const day = new Date(middle?.goAt ?? 0).toISOString().slice(0, 10);
  await page.getByLabel('From', { exact: true }).fill(day);
  await expect.poll(() => page.url()).toContain(`station=wall-throw&before=run&from=${day}`);
  const narrowed = own.filter((set) => set.goAt >= Date.parse(`${day}T00:00:00Z`));
  expect(narrowed.length).toBeLessThan(own.length);
  await expect.poll(async () => leadingTotal('sets')).toBe(narrowed.length);
  await expectTotals(narrowed);
  await page.reload();
  await page.getByTestId('total-sets').waitFor();
  await expectTotals(narrowed);

  await page.getByLabel('To', { exact: true }).fill('2001-01-01');
  await page.getByText('No set matches.').waitFor();
  await page.getByRole('button', { name: 'Show all' }).first().click();
  await expect.poll(async () => leadingTotal('sets')).toBe(setsOf(ines, 'wall-throw').length);
  expect(page.url()).toMatch(/\?station=wall-throw$/);
});

test('athlete: by keyboard alone from a figure to the set behind it, and back', async () => {
  const ines = idOf('Ines Marrow');
  const own = setsOf(ines, 'wall-throw');
  const { page } = screens;
  for (const [figure, keys] of [
    ['figure-rate', ['End']],
    ['figure-picture', ['End', 'ArrowRight', 'ArrowRight']],
    ['figure-ledgers', ['End']],
    ['figure-pacing', ['End']],
  ] as const) {
    await screens.go(`/review/athlete/${ines}?station=wall-throw`);
    await expect.poll(async () => leadingTotal('sets')).toBe(own.length);
    const list = page.getByTestId(figure).getByRole('listbox');
    await list.focus();
    for (const key of keys) await page.keyboard.press(key);
    const active = await list.getAttribute('aria-activedescendant');
    const label = await page.locator(`[id="${active}"]`).getAttribute('aria-label');
    const last = own.at(-1);
    if (figure === 'figure-picture') expect(label).toMatch(/: 2, /);
    if (figure === 'figure-rate') expect(label).toContain(`${last?.noReps} no-reps of ${last?.attempts.length}`);
    await page.keyboard.press('Enter');
    await expect.poll(() => page.url()).toContain(`#/judge/set/${last?.id}`);
    await page.goBack();
    await page.getByTestId('answer').waitFor();
  }
});

test('comparison: fresh beside after work as the logs say', async () => {
  const ines = idOf('Ines Marrow');
  const own = setsOf(ines, 'wall-throw');
  await screens.go(`/review/athlete/${ines}?station=wall-throw`);
  await screens.page.getByRole('link', { name: 'Compare two conditions or two spans' }).click();
  const rows = await tableOf('figure-rates');
  const fresh = own.filter(({ setup }) => setup.before === 'fresh');
  const tired = own.filter(({ setup }) => setup.before !== 'fresh');
  const share = (of: readonly SetByHand[]) => total(of, (set) => set.noReps) / total(of, (set) => set.attempts.length);
  const row = (name: string) => rows.find((cells) => cells[0] === name) ?? [];
  expect(row('Sets').slice(1, 3)).toEqual([String(fresh.length), String(tired.length)]);
  const rates = row('No-reps per 100 attempts');
  expect(rates[1]).toContain(`${(100 * share(fresh)).toFixed(1)} %`);
  expect(rates[2]).toContain(`${(100 * share(tired)).toFixed(1)} %`);
  expect(rates[3]?.replace('−', '-')).toContain(`${(100 * (share(fresh) - share(tired))).toFixed(1)} in 100`);
  const pace = (of: readonly SetByHand[]) => median(of.map((set) => median(cleanCycles(set))));
  expect(Math.abs(Number.parseFloat(row('Clean cycle')[1] ?? '') - pace(fresh))).toBeLessThan(0.03);
  expect(Math.abs(Number.parseFloat(row('Clean cycle')[2] ?? '') - pace(tired))).toBeLessThan(0.03);
});

test('forecast and race card: what the rate makes of the goal, and a plan that adds up to the wished time', async () => {
  const ines = idOf('Ines Marrow');
  const own = setsOf(ines, 'wall-throw');
  const { page } = screens;
  await screens.go(`/review/athlete/${ines}?station=wall-throw&goal=150-reps`);
  const scenarios = await tableOf('figure-forecast');
  const rate = total(own, (set) => set.noReps) / total(own, (set) => set.attempts.length);
  // Sets vary about the rate, which makes the mean number of no-reps a little larger than at one rate alone.
  const expected = (150 * rate) / (1 - rate);
  expect(Number.parseFloat(scenarios[0]?.[2] ?? '') / expected).toBeGreaterThan(0.95);
  expect(Number.parseFloat(scenarios[0]?.[2] ?? '') / expected).toBeLessThan(1.15);
  expect(Number.parseFloat(scenarios[1]?.[1] ?? '') * 2).toBeCloseTo(Number.parseFloat(scenarios[0]?.[1] ?? ''), 0);

  await page.getByRole('link', { name: 'Race card' }).click();
  await page.getByLabel('Wished time').fill('7:30');
  await expect.poll(() => page.url()).toContain('goal=150-reps&wish=450');
  await page.getByText('150 throws in 7:30').waitFor();
  const plan = await textOf(page.getByTestId('plan'));
  const usual = median(own.slice(-20).map((set) => median(cleanCycles(set))));
  const told = /usual clean cycle takes ([\d.]+)/.exec(plan)?.[1];
  expect(Math.abs(Number(told) - usual)).toBeLessThan(0.02);
  const rows = await page.getByTestId('plan').locator('tbody tr').allTextContents();
  expect(rows.at(-1)?.replace(/\s+/g, ' ')).toContain('1507:30done');
  expect(await textOf(page.locator('main'))).toContain('at least 90 minutes before the start');
});

test('judge: the own rate beside the others on the same athletes, slips and reversals', async () => {
  const judge = idOf('Wanda Strick');
  const own = sets.filter(({ setup }) => setup.judge === judge);
  await screens.go(`/review/judge/${judge}`);
  await screens.page.getByTestId('total-sets').waitFor();
  await expectTotals(own);
  expect(await leadingTotal('slips')).toBe(total(own, (set) => set.slips));
  expect(await leadingTotal('reversals')).toBe(total(own, (set) => set.reversals));
  const stratum = ({ setup }: SetByHand) => `${setup.athlete} ${setup.sheet.id}`;
  const mine = new Set(own.map(stratum));
  const others = sets.filter((set) => set.setup.judge !== judge && mine.has(stratum(set)));
  const theirs = new Set(others.map(stratum));
  const both = own.filter((set) => theirs.has(stratum(set)));
  const rates = [both, others].map((of) =>
    rateText(
      total(of, (set) => set.noReps),
      total(of, (set) => set.attempts.length),
    ),
  );
  const rows = await tableOf('figure-beside');
  expect(rows[0]?.slice(1, 3)).toEqual(rates);
  const depth = [both, others].map((of) => {
    const throws = of.filter(({ setup }) => setup.sheet.id === 'wall-throw');
    return rateText(
      reasonsByHand(throws).get('depth') ?? 0,
      total(throws, (set) => set.attempts.length),
    );
  });
  expect(rows.find((row) => row[0] === 'Not deep enough · Wall throw')?.slice(1, 3)).toEqual(depth);
});

test('gym: everyone together, the reason that comes first, people and stations to drill into', async () => {
  await screens.go('/review');
  await screens.page.getByRole('link', { name: /The whole gym/ }).click();
  await screens.page.getByTestId('total-sets').waitFor();
  await expectTotals(sets);
  const text = await textOf(screens.page.locator('main'));
  const counts = [...Map.groupBy(sets, (set) => set.setup.sheet.id)].map(([, own]) => reasonsByHand(own));
  const depth = counts.map((reasons) => reasons.get('depth') ?? 0).reduce((sum, value) => sum + value, 0);
  expect(text).toContain(`from ${shortNumber(depth)} no-reps`);
  for (const [id, own] of Map.groupBy(sets, (set) => set.setup.athlete)) {
    const row = screens.page.locator('tr', { has: screens.page.locator(`a[href^="#/review/athlete/${id}"]`) });
    const cells = await row.locator('td').allTextContents();
    expect(cells[0]).toBe(String(own.length));
    const attempts = total(own, (set) => set.attempts.length);
    expect(cells[1]?.replace(/\s/g, ' ')).toContain(
      rateText(
        total(own, (set) => set.noReps),
        attempts,
      ),
    );
  }
  await screens.page.getByRole('radio', { name: 'Jump burpee' }).click({ force: true });
  const jumps = sets.filter(({ setup }) => setup.sheet.id === 'jump-burpee');
  await expect.poll(async () => leadingTotal('sets')).toBe(jumps.length);
  await expectTotals(jumps);
});

test('files: the figures of a view as JSON and CSV are those on the screen', async () => {
  const ines = idOf('Ines Marrow');
  const own = setsOf(ines, 'wall-throw');
  await screens.go(`/review/athlete/${ines}?station=wall-throw`);
  await screens.page.getByTestId('total-sets').waitFor();
  const json = JSON.parse(await saved(screens.page.getByRole('button', { name: 'Figures as JSON' })));
  expect(json.figures.totals).toMatchObject({ sets: own.length, noReps: total(own, (set) => set.noReps) });
  expect(json.of.filter).toEqual({ athlete: ines, sheet: 'wall-throw' });
  const csv = await saved(screens.page.getByRole('button', { name: 'Figures as CSV' }));
  expect(csv.split('\r\n')).toContain(`totals,,noReps,${total(own, (set) => set.noReps)},,`);
});

const views = (): readonly (readonly [string, string])[] => {
  const [ines, wanda] = [idOf('Ines Marrow'), idOf('Wanda Strick')];
  return [
    ['home', '/review'],
    ['athlete', `/review/athlete/${ines}?station=wall-throw&rate=5`],
    ['comparison', `/review/athlete/${ines}/compare?station=wall-throw`],
    ['race card', `/review/athlete/${ines}/race-card?station=wall-throw&wish=300`],
    ['judge', `/review/judge/${wanda}`],
    ['gym', '/review/gym'],
  ];
};

test('every view: no finding of axe-core and nothing too wide, in both looks, wide and narrow', async () => {
  for (const [name, place] of views()) {
    await screens.go(place);
    await screens.page.locator('main h2, main section').first().waitFor();
    await screens.page.locator('details').evaluateAll((all) => {
      for (const one of all) if (one instanceof HTMLDetailsElement) one.open = true;
    });
    const found = await inEveryLook(screens.page, () => accessibilityProblems(screens.page));
    expect(found, name).toEqual([]);
  }
  expect(screens.troubles).toEqual([]);
}, 240_000);

test('every view is printed on one page', async () => {
  for (const [name, place] of views()) {
    const page = await screens.another(place);
    await page.locator('main h2, main section').first().waitFor();
    await page.waitForTimeout(500);
    const pdf = await page.pdf({ format: 'A4', printBackground: true });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g), name).toHaveLength(1);
    await page.close();
  }
});
