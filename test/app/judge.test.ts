// A whole set at race pace, by keyboard and by touch, through the real program. The page's clock is Playwright's: it stands
// still between two deeds and is moved on by exactly the time of each, and with it Date, performance and the time stamps
// of events, so that four minutes of set pass in seconds and every figure can be computed by hand (see judge-race.ts).
// That a call carries the time of its input and not that of its handling is tested on the real clock in
// judge-floor.test.ts.

import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { openBrowser } from '../browser.ts';
import { type Program, startProgram } from '../program.ts';
import {
  allSaved,
  briefFirst,
  desktop,
  figure,
  goPaused,
  openProgram,
  phone,
  textOf,
  untilPaused,
} from './judge-driver.ts';
import { byHand, type Deed, type Fault, faults, race } from './judge-race.ts';

let browser: Browser;
let program: Program | undefined;
beforeAll(async () => {
  browser = await openBrowser();
});
afterEach(async () => {
  await program?.stop();
  program = undefined;
});
afterAll(async () => {
  await browser?.close();
});

type Press = (page: Page, deed: Exclude<Deed, { do: 'reload' }>) => Promise<void>;

const keys = {
  count: 'Space',
  caution: 'Period',
  'no-rep-later': 'Digit0',
  reverse: 'Minus',
  slip: 'Backspace',
  break: 'Comma',
} as const;
const faultKeys: Readonly<Record<Fault, string>> = {
  line: 'KeyL',
  aim: 'KeyA',
  stand: 'KeyT',
  depth: 'KeyD',
  bounce: 'KeyB',
};

const byKey: Press = async (page, deed) => {
  if (deed.do === 'fault') await page.keyboard.press(faultKeys[deed.fault]);
  else if (deed.do === 'explain') await page.keyboard.press(`Shift+${faultKeys[deed.fault]}`);
  else await page.keyboard.press(keys[deed.do]);
};

const buttons = {
  count: 'Counted',
  caution: 'Counted, with caution',
  'no-rep-later': 'No-rep, fault later',
  reverse: 'Last one was a no-rep',
  slip: 'Slip',
  break: /^(Break|End of break.*)$/,
} as const;

const byTouch: Press = async (page, deed) => {
  const name =
    deed.do === 'fault'
      ? faults[deed.fault]
      : deed.do === 'explain'
        ? new RegExp(`was: ${faults[deed.fault]}$`)
        : buttons[deed.do];
  const box = await page.getByRole('button', { name, exact: true }).boundingBox();
  if (box === null) throw new Error(`no button for ${deed.do}`);
  await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
};

async function judgeRace(page: Page, press: Press, begun: number): Promise<void> {
  let spent = begun;
  for (const deed of race) {
    await page.clock.runFor(deed.wait - spent);
    spent = 0;
    if (deed.do === 'reload') spent = await reload(page);
    else await press(page, deed);
  }
}

/** Loads the page again in the middle of the set; answers the set time that went by until it stood again, milliseconds. */
async function reload(page: Page): Promise<number> {
  await page.reload();
  const count = page.locator('output');
  return untilPaused(page, async () => (await count.count()) === 1 && (await count.textContent()) === '52');
}

async function expectByHand(page: Page): Promise<void> {
  expect(await figure(page, 'time')).toBe(`Time ${byHand.time}`);
  expect(await figure(page, 'counted')).toBe(`Counted ${byHand.counted} ${byHand.cautions}`);
  expect(await figure(page, 'no-reps')).toBe(`No-reps ${byHand.noReps} ${byHand.rate}`);
  expect(await figure(page, 'cost')).toMatch(`Lost to no-reps ${byHand.cost}`);
  expect(await textOf(page.getByTestId('train-first'))).toContain(byHand.train);
  expect(await textOf(page.locator('main'))).toContain(byHand.split);
  const reasons = await page
    .getByRole('list', { name: 'Reasons, by time lost' })
    .getByRole('listitem')
    .evaluateAll((items) =>
      items.map((item) => {
        const name = item.querySelector('p > :first-child')?.textContent;
        return `${name} ${item.querySelector('svg')?.getAttribute('aria-label')}`.replace(/\s/g, ' ');
      }),
    );
  expect(reasons.toSorted()).toEqual([...byHand.reasons].toSorted());
  expect(reasons[0]).toBe(byHand.reasons[0]);
  const ledger = await textOf(page.locator('dl', { hasText: 'Breaks' }));
  for (const [line, time] of Object.entries(byHand.ledger)) expect(ledger).toContain(`${line}${time}`);
  expect(await textOf(page.locator('main'))).toContain(byHand.history);
  expect(await page.getByText('to explain').count()).toBe(0);
}

async function race100(press: Press, screen: typeof desktop | typeof phone): Promise<void> {
  program = await startProgram();
  const begin = new Date('2026-03-07T10:00:00Z');
  const { page, context, errors } = await openProgram(browser, program, screen, async (fresh) => {
    await fresh.clock.install({ time: begin });
  });
  try {
    await briefFirst(page, 'Mara', 'Jon');
    await page.clock.pauseAt(new Date(begin.getTime() + 600_000));
    await judgeRace(page, press, await goPaused(page));
    await page.clock.runFor(100);
    await page.getByRole('heading', { name: 'Goal reached' }).waitFor();
    await page.getByRole('button', { name: 'See the summary' }).click();
    await page.clock.runFor(1_000);
    await allSaved(page);
    await page.getByTestId('figure-cost').waitFor();
    await expect.poll(async () => figure(page, 'time')).toBe(`Time ${byHand.time}`);
    await expectByHand(page);

    // The same from the address alone, as another page reads it from the desk.
    await page.clock.resume();
    const other = await context.newPage();
    await other.goto(page.url());
    await other.getByTestId('figure-cost').waitFor();
    await expectByHand(other);
    expect(errors).toEqual([]);
  } finally {
    await context.close();
  }
}

test('a hundred throws at race pace by keyboard, with a reload in the middle: every figure as computed by hand', async () => {
  await race100(byKey, desktop);
});

test('the same by touch on a phone', async () => {
  await race100(byTouch, phone);
});
