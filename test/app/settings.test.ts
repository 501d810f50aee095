import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessibilityProblems, inEveryLook, openScreens, type Screens } from './screens.ts';

let screens: Screens;
let page: Page;
beforeAll(async () => {
  screens = await openScreens();
  page = screens.page;
});
afterAll(async () => {
  await screens?.close();
});

const look = () => page.evaluate(() => document.documentElement.dataset.theme);

test('the look is changed at once and kept', async () => {
  await screens.go('/settings');
  expect(await look()).toBe('paper');
  await page.getByRole('radio', { name: 'Hall, dark' }).check();
  await expect.poll(look).toBe('hall');
  await page.reload();
  await screens.go('/settings');
  await expect.poll(() => page.getByRole('radio', { name: 'Hall, dark' }).isChecked()).toBe(true);
  expect(await look()).toBe('hall');
});

test('a clicker’s key is bound by pressing it, taken from another action, and given back', async () => {
  await screens.go('/settings');
  await page.getByRole('button', { name: 'Add a key: Counted', exact: true }).click();
  await page.keyboard.press('PageDown');
  await page.getByRole('button', { name: 'Remove Page Down from Counted', exact: true }).waitFor();

  await page.getByRole('button', { name: 'Add a key: No-rep, reason later' }).click();
  await page.keyboard.press('Tab');
  await page.getByText('That key is needed by the browser or the screen itself.').waitFor();
  await page.keyboard.press('PageDown');
  await page.getByText('Page Down was taken from “Counted”.').waitFor();
  await page.getByRole('button', { name: 'Remove Page Down from No-rep, reason later' }).waitFor();
  expect(await page.getByRole('button', { name: 'Remove Page Down from Counted', exact: true }).count()).toBe(0);

  await page.reload();
  await screens.go('/settings');
  await page.getByRole('button', { name: 'Remove Page Down from No-rep, reason later' }).click();
  await expect.poll(() => page.getByRole('button', { name: /Remove Page Down/ }).count()).toBe(0);

  await page.getByRole('button', { name: 'Add a key: Abandon the set' }).click();
  await page.keyboard.press('Escape');
  expect(await page.getByText('Press it now…').count()).toBe(0);
});

test('the countdown takes whole seconds only', async () => {
  const field = page.getByLabel('Countdown before go');
  await field.fill('2.5');
  await page.getByText('Whole seconds from 0 to 60.').waitFor();
  await field.fill('5');
  await expect.poll(() => page.getByText('Whole seconds from 0 to 60.').count()).toBe(0);
  await page.reload();
  await screens.go('/settings');
  await expect.poll(() => page.getByLabel('Countdown before go').inputValue()).toBe('5');
});

test('settings, their help and the cautions are free of accessibility problems', async () => {
  await screens.go('/settings');
  await page.getByText('Database', { exact: true }).waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.keyboard.press('?');
  await page.getByRole('dialog', { name: 'What do I do here?' }).waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Read the cautions again' }).click();
  await page.getByRole('dialog', { name: 'Before the first set' }).waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.getByRole('button', { name: 'I have read this' }).click();
  await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
});

test('the areas can be walked by keyboard, and on a phone through the menu', async () => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.getByRole('button', { name: 'Menu' }).click();
  expect(await accessibilityProblems(page)).toEqual([]);
  await page.getByRole('link', { name: 'People' }).click();
  await page.getByRole('heading', { level: 1, name: 'People' }).waitFor();
  await expect.poll(() => page.getByRole('link', { name: 'Standards' }).isVisible()).toBe(false);
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('content');
  expect(screens.troubles).toEqual([]);
});
