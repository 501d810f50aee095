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

async function add(name: string, nickname = ''): Promise<void> {
  await screens.go('/people/new');
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel(/^Nickname/).fill(nickname);
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('heading', { level: 1, name: 'People', exact: true }).waitFor();
}

const rows = () => page.getByRole('main').getByRole('listitem');

test('an empty list says what belongs here and leads to the first person', async () => {
  await screens.go('/people');
  await page.getByText('Nobody here yet').waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.getByRole('link', { name: 'Add a person' }).click();
  await page.getByRole('heading', { name: 'A new person' }).waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
});

test('a person is added by keyboard alone, with what is missing named first', async () => {
  await screens.go('/people/new');
  const name = page.getByLabel('Name', { exact: true });
  await name.waitFor();
  expect(await name.evaluate((element) => element === document.activeElement)).toBe(true);
  await page.keyboard.press('Enter');
  await page.getByText('A name is needed.').waitFor();
  expect(await page.locator('[aria-invalid]').evaluate((element) => element === document.activeElement)).toBe(true);
  expect(await accessibilityProblems(page)).toEqual([]);

  await page.keyboard.type('Ana Brandt');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Ana');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await page.keyboard.press('Tab');
  await page.keyboard.type('left-handed');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.getByRole('status').getByText('Ana is saved.').waitFor();
  await rows().filter({ hasText: 'Athlete and judge' }).filter({ hasText: 'Ana Brandt' }).waitFor();
});

test('a person is changed, archived, brought back by undo, and shown when asked for', async () => {
  await add('Björn Ó Súilleabháin', 'Bear');
  await page.getByRole('link', { name: /Björn/ }).click();
  await page.getByLabel(/^Notes/).fill('prefers the high box');
  await page.getByRole('button', { name: 'Save' }).click();

  await page.getByLabel('Find by name or note').fill('BJORN suil');
  await expect.poll(() => rows().count()).toBe(1);
  await page.getByLabel('Find by name or note').fill('high box');
  await expect.poll(() => rows().count()).toBe(1);
  await page.getByLabel('Find by name or note').fill('nobody at all');
  await page.getByText('Nobody matches “nobody at all”.').waitFor();
  await page.getByLabel('Find by name or note').fill('');

  const archive = async (): Promise<void> => {
    await page.getByRole('link', { name: /Björn/ }).click();
    await page.getByRole('button', { name: 'Archive' }).click();
    await page.getByText('Bear is archived.').waitFor();
    await expect.poll(() => page.getByRole('link', { name: /Björn/ }).count()).toBe(0);
  };
  await archive();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('link', { name: /Björn/ }).waitFor();
  await archive();

  await page.getByLabel('Show archived').check();
  await page.getByRole('link', { name: /Björn.*archived/ }).click();
  await page.getByRole('button', { name: 'Bring back' }).click();
  await page.getByRole('button', { name: 'Archive' }).waitFor();
  await screens.go('/people');
  await page.getByRole('link', { name: /Björn/ }).waitFor();
});

test('what was typed and not saved is asked about, and is still there after a look elsewhere', async () => {
  await screens.go('/people/new');
  await page.getByLabel('Name', { exact: true }).fill('Half a na');
  await page.getByRole('link', { name: 'Standards' }).click();
  await page.getByRole('heading', { level: 1, name: 'Standards' }).waitFor();
  await page.goBack();
  await expect.poll(() => page.getByLabel('Name', { exact: true }).inputValue()).toBe('Half a na');
  await page.getByRole('button', { name: 'Cancel' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByText('Give up what you typed?').waitFor();
  expect(await accessibilityProblems(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect.poll(() => dialog.count()).toBe(0);
  expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('Half a na');
  await page.getByRole('button', { name: 'Cancel' }).click();
  await dialog.getByRole('button', { name: 'Give it up' }).click();
  await page.getByRole('heading', { level: 1, name: 'People', exact: true }).waitFor();
  await page.getByRole('link', { name: 'Add a person' }).click();
  expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('');
});

test('hostile and endless names are text, and break nothing', async () => {
  const names = [
    '<b>Bold</b> & <script>document.title = "broken in"</script>',
    'عائشة بنت محمد',
    '\u202egnirts desrever',
    '🏋️‍♀️ Zoë 👩‍👩‍👧',
    '=HYPERLINK("x")',
    `${'Wolfeschlegelstein'.repeat(555)}endless`,
  ];
  for (const name of names) await add(name);
  await screens.go('/people');
  await expect.poll(() => rows().count()).toBeGreaterThanOrEqual(names.length);
  const shown = await rows().locator('bdi:first-child').allTextContents();
  for (const name of names) expect(shown).toContain(name);
  expect(await page.getByRole('main').locator('b, script').count()).toBe(0);
  expect(await page.title()).toBe('People – Plumbline');
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.getByRole('link', { name: /endless/ }).click();
  await page.getByRole('button', { name: 'Archive' }).waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
});

test('everything is there again after the page is loaded anew', async () => {
  await page.reload();
  await screens.go('/people');
  await page.getByRole('link', { name: /Ana Brandt/ }).waitFor();
  expect(screens.troubles).toEqual([]);
});
