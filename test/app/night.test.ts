import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
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

const athletes = ['Ana', 'Ben'];
const judges = ['Cleo', 'Dora', 'Eli'];
const button = (name: string | RegExp): Locator => page.getByRole('button', { name });

async function addPerson(name: string, role: 'athlete' | 'judge'): Promise<void> {
  await screens.go('/people/new');
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('an athlete').setChecked(role === 'athlete');
  await page.getByLabel('a judge').setChecked(role === 'judge');
  await button('Save').click();
  await page.getByRole('heading', { level: 1, name: 'People', exact: true }).waitFor();
}

/** The heat, counted from 1, in which an athlete competes, and who judges there. */
async function heatOf(athlete: string): Promise<{ heat: string; judge: string }> {
  const label = await button(new RegExp(`^${athlete}, athlete, heat`)).getAttribute('aria-label');
  const heat = /heat (\d+)/.exec(label ?? '')?.[1] ?? '';
  const judge = await button(new RegExp(`, judge, heat ${heat},`)).getAttribute('aria-label');
  return { heat, judge: /^[^,]+/.exec(judge ?? '')?.[0] ?? '' };
}

async function note(name: string, state: string): Promise<void> {
  await page.getByLabel(`Where is ${name}?`).selectOption({ label: state });
  await page.getByText(`${name}: ${state}.`).waitFor({ state: 'attached' });
}

test('without a night the area says what belongs here; what a new one lacks is named', async () => {
  await screens.go('/night');
  await page.getByText('No night planned yet').waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  for (const name of athletes) await addPerson(name, 'athlete');
  for (const name of judges) await addPerson(name, 'judge');
  await screens.go('/night');
  await page.getByRole('link', { name: 'Plan a night' }).click();
  await button('Save the night').click();
  await page.getByText('A name is needed.').waitFor();
  await page.getByText('Nobody competes yet').waitFor();
  expect(
    await page
      .locator('[aria-invalid]')
      .first()
      .evaluate((one) => one === document.activeElement),
  ).toBe(true);
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
});

test('a night is arranged, the desk makes its plan, and the plan keeps who must not judge whom', async () => {
  await page.getByLabel('Name', { exact: true }).fill('Evening of the test');
  await page.getByLabel('Date').fill('2026-09-07');
  await page.getByLabel('Lanes').fill('1');
  await button('Take everybody as under People').click();
  await page.getByText('Chosen: 2 athletes, 3 judges.').waitFor();
  await page.getByLabel('Judge', { exact: true }).selectOption({ label: 'Cleo' });
  await page.getByLabel('Athlete', { exact: true }).selectOption({ label: 'Ana' });
  await button('Add the pair').click();
  await page.getByText('Cleo must not judge Ana').waitFor();
  await button('Save the night').click();
  await page.getByText('No plan yet').waitFor();
  await button('Make the plan').click();
  await page.getByText('Every hard rule is kept.').waitFor();
  const { heat } = await heatOf('Ana');
  expect(await button(new RegExp(`^Cleo, (judge|shadow), heat ${heat},`)).count()).toBe(0);
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
});

test('by keyboard two people change places, the broken rule is named at once; dragging does the same', async () => {
  const { heat, judge } = await heatOf('Ana');
  await button(new RegExp(`^${judge}, judge, heat ${heat},`)).focus();
  await page.keyboard.press('Enter');
  await page.getByText(`Taken up: ${judge}, judge`).waitFor();
  await page.keyboard.press('Escape');
  await page.getByText('To change the plan by hand').waitFor();
  await page.keyboard.press('Enter');
  await button(/^Cleo, without a place in heat/)
    .or(button(/^Cleo, (judge|shadow), heat/))
    .first()
    .focus();
  await page.keyboard.press('Enter');
  const breaches = page.getByTestId('breaches');
  await breaches.getByText(`Cleo must not judge Ana (heat ${heat}).`).waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.reload();
  await breaches.getByText(`Cleo must not judge Ana (heat ${heat}).`).waitFor();
  const cleo = button(new RegExp(`^Cleo, judge, heat ${heat},`));
  await cleo.dragTo(button(new RegExp(`^${judge}, .*heat ${heat}`)).first());
  await page.getByText('Every hard rule is kept.').waitFor();
  expect((await heatOf('Ana')).judge).toBe(judge);
});

test('who did not come is planned without; what is short is said; one who came after all mends it', async () => {
  await page.getByText('Who is here').click();
  await note('Cleo', 'Did not come');
  await button('Plan again').click();
  await page.getByText('Every hard rule is kept.').waitFor();
  expect(await button(/^Cleo, (judge|shadow)/).count()).toBe(0);
  await note('Dora', 'Did not come');
  await page.getByTestId('breaches').getByText('Dora is not here in heat 1.').waitFor();
  await button('Plan again').click();
  const refused = page.getByTestId('refused');
  await refused.getByText('There is no plan that keeps every rule:').waitFor();
  expect(await refused.getByRole('listitem').allTextContents()).toContainEqual(expect.stringMatching(/short in heat/));
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await note('Dora', 'Arrived');
  await button('Plan again').click();
  await page.getByText('Every hard rule is kept.').waitFor();
});

test('somebody unannounced is added to the night and planned in', async () => {
  const night = page.url().replace(/^[^#]*#/, '');
  await addPerson('Fay', 'athlete');
  await screens.go(night);
  await page.getByRole('link', { name: 'Change the night' }).click();
  await page.getByRole('heading', { name: 'Change: Evening of the test' }).waitFor();
  await page.getByLabel('Competes: Fay').check();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await button('Save the night').click();
  await page.getByTestId('breaches').getByText('Fay has no heat for').waitFor();
  await button('Plan again').click();
  await page.getByText('Every hard rule is kept.').waitFor();
  await button(/^Fay, athlete, heat/).waitFor();
});

test('the plan prints on one page, is exported, and stands in the list', async () => {
  const paper = await screens.another(page.url().replace(/^[^#]*#/, ''));
  await paper.getByRole('button', { name: /^Ana, athlete/ }).waitFor();
  const pdf = (await paper.pdf({ format: 'A4' })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  await paper.close();
  const [file] = await Promise.all([page.waitForEvent('download'), button('Export').click()]);
  expect(await readFile(await file.path(), 'utf8')).toContain('"by-hand"');
  await page.getByRole('link', { name: 'All nights' }).click();
  await page.getByRole('link', { name: /Evening of the test.*3 athletes, 3 judges.*3 heats/ }).waitFor();
  expect(screens.troubles).toEqual([]);
});
