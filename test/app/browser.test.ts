import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser } from '../browser.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});

test('a browser is found, opens a page and runs its script', async () => {
  const page = await browser.newPage();
  await page.setContent('<p></p><script>document.querySelector("p").textContent = String(6 * 7)</script>');
  expect(await page.textContent('p')).toBe('42');
});
