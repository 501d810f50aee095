// Takes the README's pictures from the real program over its demonstration: `npm run with-node -- test/app/pictures.ts`.

import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { openBrowser } from '../browser.ts';
import { startProgram } from '../program.ts';
import { goNow, goTo, openProgram, readCautions } from './judge-driver.ts';

const folder = path.resolve(import.meta.dirname, '../../renderer/parts/look/pictures');

async function settle(page: Page): Promise<void> {
  await page.waitForLoadState('networkidle');
  await page.waitForTimeout(2_500);
}

async function shoot(page: Page, name: string, fullPage = false): Promise<void> {
  await page.screenshot({ path: path.join(folder, `${name}.png`), fullPage });
}

/** A running set with a little history, judged by touch keys. */
async function judgeSome(page: Page): Promise<void> {
  await goTo(page, '#/judge');
  await page
    .locator('main')
    .getByRole('button', { name: /Again: .*Wall throw/ })
    .first()
    .click();
  await goNow(page);
  const presses = 'SSSSDSSSSSSLSSSSSSS'.split('').map((key) => (key === 'S' ? 'Space' : `Key${key}`));
  for (const key of presses) {
    await page.waitForTimeout(700);
    await page.keyboard.press(key);
  }
}

mkdirSync(folder, { recursive: true });
const browser = await openBrowser();
const program = await startProgram({ args: ['--demo'] });
try {
  const { page, context } = await openProgram(browser, program, {
    viewport: { width: 1280, height: 800 },
    colorScheme: 'light',
  });
  await readCautions(page);
  await goTo(page, '#/review');
  await page
    .getByRole('link', { name: /Ines Marrow/ })
    .first()
    .click();
  await settle(page);
  await shoot(page, 'review');
  await goTo(page, '#/judge/sets');
  await page.locator('main a', { hasText: 'Ines Marrow' }).first().click();
  await settle(page);
  await shoot(page, 'summary');
  await goTo(page, '#/eye');
  await settle(page);
  const entered = page.url();
  const phone = await browser.newContext({
    viewport: { width: 390, height: 780 },
    deviceScaleFactor: 2,
    storageState: await context.storageState(),
    locale: 'en-GB',
  });
  const floor = await phone.newPage();
  await floor.goto(entered.replace(/#.*$/, ''));
  await judgeSome(floor);
  await shoot(floor, 'judge-phone');
} finally {
  await browser.close();
  await program.stop();
}
