// The Judge area for everyone: axe-core on each screen in both looks, the whole way by keyboard alone, a narrow phone.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser } from '../browser.ts';
import { type Program, startProgram } from '../program.ts';
import {
  allSaved,
  briefFirst,
  desktop,
  goNow,
  goTo,
  openProgram,
  phone,
  readCautions,
  textOf,
} from './judge-driver.ts';
import { accessibilityProblems } from './screens.ts';

let browser: Browser;
let program: Program;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});

const longName = 'Wilhelmina Alexandrowna Papadopoulou-Oyelaran of the Lower Harbour';

interface Visited {
  readonly screen: string;
  readonly page: Page;
}

/** Goes through every screen of the area and calls `look` on each as it stands. */
async function visitAll(page: Page, look: (visited: Visited) => Promise<void>): Promise<void> {
  const at = (screen: string) => look({ screen, page });
  await page.getByRole('button', { name: 'I have read this' }).waitFor();
  await at('cautions');
  await goTo(page, '#/judge/sets');
  await page.getByText('No set has been judged yet.').waitFor();
  await at('no sets');
  await goTo(page, '#/judge');
  await page.getByRole('button', { name: 'I have read this' }).waitFor();
  await readCautionsKept(page);
  await at('first set-up');
  await page.getByLabel('Who is the athlete?').fill(longName);
  await page.getByLabel('Who is judging?').fill('Jon');
  await page.getByRole('button', { name: 'Brief the athlete' }).click();
  await page.getByRole('heading', { name: 'Read this to the athlete' }).waitFor();
  await at('card');
  await page.getByRole('button', { name: /^Count down/ }).click();
  await page.getByRole('button', { name: 'Go now' }).waitFor();
  await at('countdown');
  await page.getByRole('button', { name: 'Go now' }).click();
  await page.getByRole('button', { name: 'Counted', exact: true }).waitFor();
  await at('running, empty');
  for (const key of ['Space', 'KeyD', 'Space', 'Period', 'Comma', 'Space', 'Backspace', 'Comma', 'Digit0']) {
    await page.keyboard.press(key);
  }
  await page.getByText('No-rep 5: why?').waitFor();
  await at('running, a fault to name, a break on');
  await page.getByRole('button', { name: 'More' }).click();
  await page.getByRole('heading', { name: 'Keys' }).waitFor();
  await at('menu of the set');
  await page.getByRole('button', { name: 'Abandon the set' }).click();
  await page.getByRole('heading', { name: 'Abandon this set?' }).waitFor();
  await at('abandoning');
  await page.getByRole('button', { name: 'No, go on judging' }).click();
  await page.getByRole('button', { name: 'More' }).click();
  await page.getByRole('button', { name: 'Finish', exact: true }).click();
  await at('finishing');
  await page.getByRole('button', { name: 'Finish now' }).click();
  await page.getByRole('button', { name: 'See the summary' }).waitFor();
  await at('ended');
  await page.getByRole('button', { name: 'See the summary' }).click();
  await allSaved(page);
  await page.getByTestId('figure-cost').waitFor();
  await page.getByText('How is this computed?').click();
  await page.getByText(/^The log in words/).click();
  await at('summary');
  await page.getByRole('button', { name: 'Put a call right' }).click();
  await page.getByRole('heading', { name: 'Put a call right' }).waitFor();
  await at('putting a call right');
  await page.getByRole('button', { name: 'Cancel' }).click();
  await page.getByRole('button', { name: 'Dispute a call' }).click();
  await at('disputing a call');
  await page.getByRole('button', { name: 'Lodge the appeal' }).click();
  await page.getByRole('button', { name: 'Head judge’s answer' }).click();
  await at('answering an appeal');
  await page.getByRole('button', { name: 'Refuse, the call stands' }).click();
  await goTo(page, '#/judge/sets');
  await page.getByText('1 set', { exact: true }).waitFor();
  await page.getByText('Filters').click();
  await page.getByLabel('State').waitFor();
  await at('sets with filters');
  await goTo(page, '#/judge');
  await page.getByRole('heading', { name: 'Latest sets' }).waitFor();
  await page.getByText('Tags and practice').click();
  await at('set-up');
}

async function readCautionsKept(page: Page): Promise<void> {
  await readCautions(page);
  await page.getByRole('dialog').waitFor({ state: 'detached' });
}

async function chooseLook(page: Page, look: RegExp): Promise<void> {
  await goTo(page, '#/settings');
  await page.getByRole('radio', { name: look }).check();
  await page.waitForTimeout(200);
  await goTo(page, '#/judge');
}

for (const [name, look] of [
  ['paper', /^Paper/],
  ['hall', /^Hall/],
] as const) {
  test(`axe-core finds nothing on any screen in the ${name} look`, async () => {
    program = await startProgram();
    const { page, context, errors } = await openProgram(browser, program, { ...desktop, reducedMotion: 'reduce' });
    try {
      await chooseLook(page, look);
      const found: string[] = [];
      await visitAll(page, async ({ screen }) => {
        expect(await page.evaluate(() => document.documentElement.dataset.theme)).toBe(name);
        for (const problem of await accessibilityProblems(page)) found.push(`${screen}: ${problem}`);
      });
      expect(found).toEqual([]);
      expect(errors).toEqual([]);
    } finally {
      await context.close();
      await program.stop();
    }
  });
}

test('at 360 by 640 nothing is wider than the screen, and every target of a running set is 24 by 24 or more', async () => {
  program = await startProgram();
  const { page, context } = await openProgram(browser, program, phone);
  try {
    const wide: string[] = [];
    await visitAll(page, async ({ screen }) => {
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      if (width > 360) wide.push(`${screen}: ${width}`);
      if (!screen.startsWith('running')) return;
      for (const button of await page.getByRole('button').all()) {
        const box = await button.boundingBox();
        const inside =
          box !== null && box.x >= 0 && box.x + box.width <= 360 && box.y >= 0 && box.y + box.height <= 640;
        // WCAG 2.2, success criterion 2.5.8: 24 by 24 CSS pixels.
        if (box === null || !inside || box.width < 24 || box.height < 24) {
          wide.push(`${screen}: ${await textOf(button)} ${JSON.stringify(box)}`);
        }
      }
    });
    expect(wide).toEqual([]);
  } finally {
    await context.close();
    await program.stop();
  }
});

/** Presses Tab until the element with this name has the focus. */
async function tabTo(page: Page, name: RegExp, most = 60): Promise<void> {
  for (let step = 0; step < most; step += 1) {
    const held = await page.evaluate(() => {
      const element = document.activeElement;
      if (!(element instanceof HTMLElement)) return '';
      const field = element instanceof HTMLInputElement || element instanceof HTMLSelectElement;
      const label = field ? element.labels?.[0]?.textContent : null;
      return (element.getAttribute('aria-label') ?? label ?? element.textContent ?? '').trim();
    });
    if (name.test(held)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`nothing named ${name} takes the focus within ${most} steps`);
}

test('the whole way by keyboard alone: set up, brief, judge, explain, put right, sign off', async () => {
  program = await startProgram();
  const { page, context } = await openProgram(browser, program, desktop);
  const press = (key: string) => page.keyboard.press(key);
  try {
    await page.getByRole('dialog').waitFor();
    await tabTo(page, /^I have read this$/);
    await press('Enter');
    await tabTo(page, /^Who is the athlete\?$/);
    await page.keyboard.type('Mara');
    await tabTo(page, /^Who is judging\?$/);
    await page.keyboard.type('Jon');
    await tabTo(page, /^100$/);
    await press('ArrowRight');
    await tabTo(page, /^Counted reps$/);
    await press('Control+A');
    await page.keyboard.type('3');
    await tabTo(page, /^Brief the athlete$/);
    await press('Enter');
    await page.getByRole('heading', { name: 'Read this to the athlete' }).waitFor();
    // The countdown has the focus already.
    await press('Enter');
    await page.getByRole('button', { name: 'Go now' }).waitFor();
    await press('Escape');
    await tabTo(page, /^Go now$/);
    await press('Enter');
    await page.getByRole('button', { name: 'Counted', exact: true }).waitFor();
    for (const key of ['Space', 'Digit0', 'KeyD', 'Space', 'Shift+KeyL', 'Digit0', 'Space']) await press(key);
    await page.getByRole('heading', { name: 'Goal reached' }).waitFor();
    await tabTo(page, /^See the summary$/);
    await press('Enter');
    await page.getByRole('heading', { name: '1 no-rep to explain' }).waitFor();
    await tabTo(page, /^Not standing tall$/);
    await press('Enter');
    await page.getByRole('heading', { name: '1 no-rep to explain' }).waitFor({ state: 'detached' });
    await tabTo(page, /^Mara signs off$/);
    await press('Enter');
    await page.getByText(/^Signed off by Mara,/).waitFor();
    await tabTo(page, /^Put a call right$/);
    await press('Space');
    await tabTo(page, /^Stands as$/);
    await press('n');
    await tabTo(page, /^Off the bounce$/);
    await press('Space');
    await tabTo(page, /^Put right$/);
    await press('Enter');
    await page.getByText(/^0 slips, 1 reversal/).waitFor();
  } finally {
    await context.close();
    await program.stop();
  }
});

test('a set under another look of the keys: a clicker’s key that the judge has bound counts', async () => {
  program = await startProgram();
  const { page, context } = await openProgram(browser, program, desktop);
  try {
    await briefFirst(page, 'Mara', 'Jon');
    await goTo(page, '#/settings');
    await page.getByRole('heading', { name: 'Settings' }).waitFor();
    await page
      .getByRole('button', { name: /Add a key.*Counted$/ })
      .first()
      .click();
    await page.keyboard.press('PageDown');
    await page.waitForTimeout(300);
    await goTo(page, '#/judge');
    await page.getByRole('button', { name: 'Brief the athlete' }).click();
    await goNow(page);
    await page.keyboard.press('PageDown');
    await page.keyboard.press('PageDown');
    await expect.poll(() => textOf(page.locator('output'))).toBe('2');
  } finally {
    await context.close();
    await program.stop();
  }
});
