// What must hold on the floor, on the real clock: a call carries the time of its input, shows within a frame, survives a
// reload, a closed page and a killed program; two fingers are two calls; nothing fires twice.

import type { Browser, CDPSession, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { SetEvent } from '../../shared-types/log/events.ts';
import { openBrowser } from '../browser.ts';
import { type Program, startProgram } from '../program.ts';
import { allSaved, briefFirst, desktop, goNow, goTo, openProgram, phone, savedLog, textOf } from './judge-driver.ts';

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

const count = (page: Page) => page.locator('output');

async function firstSet(screen: typeof desktop | typeof phone) {
  program = await startProgram();
  const opened = await openProgram(browser, program, screen);
  await briefFirst(opened.page, 'Mara', 'Jon');
  await goNow(opened.page);
  return opened;
}

function calls(log: readonly SetEvent[]) {
  return log.filter((event) => event.kind === 'call');
}

test('a call carries the time stamp of its input, however late the page gets to handle it', async () => {
  const { page, context } = await firstSet(desktop);
  try {
    await page.evaluate(() => {
      const seen: { stamp: number; handled: number }[] = [];
      Object.assign(window, { seen });
      window.addEventListener(
        'keydown',
        (event) => seen.push({ stamp: event.timeStamp, handled: performance.now() }),
        true,
      );
    });
    await page.keyboard.press('Space');
    // The page is busy for half a second; the second press falls into that time and waits.
    await page.evaluate(() => {
      setTimeout(() => {
        const until = performance.now() + 500;
        while (performance.now() < until);
      }, 20);
    });
    await page.waitForTimeout(120);
    await page.keyboard.press('KeyD');
    await expect.poll(() => textOf(page.getByText('1 no-rep', { exact: true }))).toBe('1 no-rep');
    await allSaved(page);
    const seen = await page.evaluate(() => Reflect.get(window, 'seen') as { stamp: number; handled: number }[]);
    const [first, second] = seen;
    const [one, other] = calls(await savedLog(page));
    if (first === undefined || second === undefined || one === undefined || other === undefined) {
      throw new Error('two presses were expected');
    }
    expect(second.handled - second.stamp).toBeGreaterThan(100);
    // Whole milliseconds in the log: each end may be rounded by half of one.
    expect(Math.abs(other.at - one.at - (second.stamp - first.stamp))).toBeLessThanOrEqual(1);
  } finally {
    await context.close();
  }
});

test('a press shows in the very next frame, before the desk has answered', async () => {
  const { page, context } = await firstSet(desktop);
  try {
    const frames = await page.evaluate(
      () =>
        new Promise<string[]>((resolve) => {
          const shown = () => document.querySelector('output')?.textContent ?? '';
          window.addEventListener(
            'keydown',
            () => {
              const before = shown();
              // The first callback runs in the frame that paints the press, the second after that frame.
              requestAnimationFrame(() => requestAnimationFrame(() => resolve([before, shown()])));
            },
            { capture: true, once: true },
          );
          window.dispatchEvent(new KeyboardEvent('keydown', { code: 'Space', bubbles: true }));
        }),
    );
    expect(frames).toEqual(['0', '1']);
  } finally {
    await context.close();
  }
});

async function touch(session: CDPSession, type: 'touchStart' | 'touchEnd', points: { x: number; y: number }[]) {
  const touchPoints = points.map((point, id) => ({ ...point, id }));
  await session.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : touchPoints });
}

async function middleOf(page: Page, name: string): Promise<{ x: number; y: number }> {
  const box = await page.getByRole('button', { name, exact: true }).boundingBox();
  if (box === null) throw new Error(`no button ${name}`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

test('two fingers at once are two calls, a long press is one, and nothing zooms, scrolls or opens a menu', async () => {
  const { page, context } = await firstSet(phone);
  try {
    const session = await context.newCDPSession(page);
    const counted = await middleOf(page, 'Counted');
    const fault = await middleOf(page, 'Below the line');
    await touch(session, 'touchStart', [counted, fault]);
    await touch(session, 'touchEnd', []);
    await expect.poll(() => textOf(count(page))).toBe('1');
    await expect.poll(() => page.getByText('1 no-rep', { exact: true }).count()).toBe(1);

    await touch(session, 'touchStart', [counted]);
    await page.waitForTimeout(900);
    await touch(session, 'touchEnd', []);
    for (let tap = 0; tap < 3; tap += 1) await page.touchscreen.tap(counted.x, counted.y);
    await expect.poll(() => textOf(count(page))).toBe('5');
    await allSaved(page);
    expect(calls(await savedLog(page))).toHaveLength(6);
    const view = await page.evaluate(() => [visualViewport?.scale, scrollX, scrollY, getSelection()?.toString()]);
    expect(view).toEqual([1, 0, 0, '']);
  } finally {
    await context.close();
  }
});

test('mouse, keyboard and focus: one press is one call, and the space bar counts after a fault was clicked', async () => {
  const { page, context } = await firstSet(desktop);
  try {
    await page.getByRole('button', { name: 'Not deep enough', exact: true }).click();
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Counted', exact: true }).dblclick();
    // A fault that was reached by Tab has the key for itself; held down, a key is one press.
    await page.getByRole('button', { name: 'Off the bounce', exact: true }).focus();
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await page.keyboard.down('Space');
    await page.keyboard.down('Space');
    await page.keyboard.up('Space');
    await allSaved(page);
    const log = calls(await savedLog(page)).map((event) => event.faults[0] ?? event.verdict);
    expect(log).toEqual(['depth', 'counted', 'counted', 'counted', 'bounce', 'counted']);
  } finally {
    await context.close();
  }
});

test('the program is killed in mid-set: calls go on, and all are there once it is back', async () => {
  const { page, context } = await firstSet(desktop);
  try {
    for (let rep = 0; rep < 3; rep += 1) await page.keyboard.press('Space');
    await allSaved(page);
    const { folder } = program ?? { folder: '' };
    await program?.kill();
    for (let rep = 0; rep < 4; rep += 1) await page.keyboard.press('Space');
    await page.keyboard.press('KeyL');
    await expect.poll(() => textOf(count(page))).toBe('7');
    await page.getByText('5 kept here until the desk is back').waitFor();
    program = await startProgram({ folder });
    await allSaved(page);
    expect(calls(await savedLog(page))).toHaveLength(8);
    await page.reload();
    await expect.poll(() => textOf(count(page))).toBe('7');
  } finally {
    await context.close();
  }
});

test('a set that was left is offered on the home screen: go on with the clock still right, or end it where it stopped', async () => {
  const { page, context } = await firstSet(desktop);
  try {
    await page.keyboard.press('Space');
    await page.keyboard.press('Space');
    await allSaved(page);
    const home = page.url().replace(/#.*$/, '#/judge');
    const before = await page.getByRole('timer', { name: 'Clock' }).textContent();
    const left = Date.now();
    await page.close();
    const next = await context.newPage();
    await next.goto(home);
    await next.getByRole('button', { name: 'Go on' }).click();
    await expect.poll(() => textOf(count(next))).toBe('2');
    const shown = async () => secondsOf(await next.getByRole('timer', { name: 'Clock' }).textContent());
    const away = (Date.now() - left) / 1000;
    expect(Math.abs((await shown()) - secondsOf(before) - away)).toBeLessThan(1);

    await goTo(next, '#/judge');
    await next.getByRole('button', { name: 'End it where it stopped' }).click();
    await next.getByRole('dialog').getByRole('button', { name: 'End it where it stopped' }).click();
    await next.getByRole('button', { name: 'Go on' }).waitFor({ state: 'detached' });
    const log = await savedLog(next, next.url());
    expect(log.at(-1)).toMatchObject({ kind: 'finish', at: calls(log).at(-1)?.at });
  } finally {
    await context.close();
  }
});

function secondsOf(clock: string | null): number {
  const [minutes, seconds] = (clock ?? '').split(':');
  return Number(minutes) * 60 + Number(seconds);
}

test('sounds are made at every call and none when they are switched off', async () => {
  program = await startProgram();
  const { page, context } = await openProgram(browser, program, desktop, async (fresh) => {
    await fresh.addInitScript(() => {
      const made = { notes: 0 };
      Object.assign(window, { made });
      const create = AudioContext.prototype.createOscillator;
      AudioContext.prototype.createOscillator = function (this: AudioContext) {
        made.notes += 1;
        return create.call(this);
      };
    });
  });
  const notes = () => page.evaluate(() => (Reflect.get(window, 'made') as { notes: number }).notes);
  try {
    await briefFirst(page, 'Mara', 'Jon');
    await goNow(page);
    const atGo = await notes();
    expect(atGo).toBe(1);
    await page.keyboard.press('Space');
    await page.keyboard.press('KeyD');
    expect(await notes()).toBe(atGo + 1 + 2);
    await page.getByRole('button', { name: 'More' }).click();
    await page.getByRole('checkbox', { name: 'Sounds' }).uncheck();
    await page.getByRole('button', { name: 'Back to the set' }).click();
    const muted = await notes();
    await page.keyboard.press('Space');
    await expect.poll(() => textOf(count(page))).toBe('2');
    expect(await notes()).toBe(muted);
  } finally {
    await context.close();
  }
});
