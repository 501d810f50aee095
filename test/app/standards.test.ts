import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { shippedSheets } from '../../shared-types/sheets/shipped.ts';
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

test('the shipped sheets are listed and read, with every fault’s place to stand and cue', async () => {
  await screens.go('/standards');
  for (const { station } of shippedSheets) await page.getByRole('link', { name: station }).waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  for (const sheet of shippedSheets) {
    await screens.go(`/standards/sheet/${sheet.id}`);
    await page.getByRole('heading', { level: 1, name: sheet.station }).waitFor();
    const text = await page.getByRole('main').textContent();
    for (const fault of sheet.faults) {
      for (const part of [fault.name, fault.standard, fault.stand, fault.look, fault.cue, fault.remedy]) {
        expect(text).toContain(part);
      }
    }
    expect(text).toContain('Your event’s own rulebook decides.');
    expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  }
});

/** Pages of a PDF by its page objects (ISO 32000-2, 7.7.3.3); Chromium writes them uncompressed. */
function pageCount(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

test.each(shippedSheets.map((sheet) => [sheet.station, sheet.id] as const))(
  '%s: the cue card prints on one page, without the frame around it',
  async (_name, id) => {
    const place = `/standards/sheet/${id}/card`;
    await screens.go(place);
    await page.getByText('Version 1').waitFor();
    expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
    const printed = await screens.another(place);
    try {
      await printed.getByText('Version 1').waitFor();
      expect(pageCount(await printed.pdf({ format: 'A4' }))).toBe(1);
      expect(pageCount(await printed.pdf({ format: 'Letter' }))).toBe(1);
      await printed.emulateMedia({ media: 'print' });
      expect(await printed.getByRole('navigation').isVisible()).toBe(false);
    } finally {
      await printed.close();
    }
  },
);

test('the printed briefing carries the general cautions, which the screen leaves to their own place', async () => {
  const printed = await screens.another('/standards/sheet/wall-throw');
  try {
    const caution = printed.getByText('This tool gives no medical advice.');
    await printed.getByText('Version 1').waitFor();
    expect(await caution.isVisible()).toBe(false);
    await printed.emulateMedia({ media: 'print' });
    expect(await caution.isVisible()).toBe(true);
  } finally {
    await printed.close();
  }
});

test('a next version is written, and says what it changed; the earlier one can still be read', async () => {
  await screens.go('/standards/sheet/wall-throw');
  await page.getByRole('link', { name: 'Write the next version' }).click();
  await page.getByLabel(/^Usual loads/).fill('5 heavy');
  await page.getByRole('button', { name: 'Publish version 2' }).click();
  await page.getByText('Only numbers, separated by spaces.').waitFor();
  await page.getByText('One thing is missing or wrong.').waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.getByLabel(/^Usual loads/).fill('5 7,5');
  await page.getByText('Below the line', { exact: true }).click();
  await page.getByLabel('What to shout').first().fill('Up to the line!');
  await page.getByRole('button', { name: 'Publish version 2' }).click();
  await page.getByText('Wall throw, version 2, is published.').waitFor();
  await page.getByText('5\u00a0kg and 7.5\u00a0kg').waitFor();

  await page.getByRole('link', { name: 'Versions and what changed' }).click();
  await page.getByRole('heading', { name: 'Loads' }).waitFor();
  await page.getByRole('heading', { name: 'Below the line: Shout' }).waitFor();
  await page.getByText('Up to the line!').waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.getByRole('link', { name: 'Version 1, as shipped' }).click();
  await page.getByText('This is an earlier version; the sheet now stands at version 2.').waitFor();
  await page.getByText('4\u00a0kg, 6\u00a0kg and 9\u00a0kg').waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
});

test('a sheet of one’s own is written from nothing, each gap named beside its field', async () => {
  await screens.go('/standards/new');
  await page.getByLabel('Name of the station').fill('Sandbag <i>lunge</i>');
  await page.getByRole('button', { name: 'Publish the sheet' }).click();
  await page.getByText('10 things are missing or wrong.').waitFor();
  expect(await inEveryLook(page, () => accessibilityProblems(page))).toEqual([]);
  await page.getByLabel('What its reps are called').fill('steps');
  await page.getByLabel('One rep, from start to end').fill('Step, let the trailing knee touch, stand.');
  await page.getByLabel('Name, as the judge sees the fault').fill('Knee off the floor');
  expect(await page.getByLabel('Code').inputValue()).toBe('knee-off-the-floor');
  expect(await page.getByLabel('Letter').inputValue()).toBe('K');
  await page.getByLabel('The standard that it breaks').fill('The trailing knee touches the floor.');
  await page.getByLabel('Where the judge stands').fill('In front, to the side.');
  await page.getByLabel('What the judge looks at').fill('The gap under the knee.');
  await page.getByLabel('What to shout').fill('Touch!');
  await page.getByLabel('What to train').fill('Lunges to a mat.');
  await page.getByLabel('Where the body breaks it').fill('0.1');
  await page.getByRole('button', { name: 'Publish the sheet' }).click();
  await page.getByRole('heading', { level: 1, name: 'Sandbag <i>lunge</i>' }).waitFor();
  await page.getByText('Touch!').waitFor();
  await screens.go('/standards');
  await page.getByRole('link', { name: 'Sandbag <i>lunge</i>' }).waitFor();
});

test('an address of nothing says so', async () => {
  await screens.go('/standards/sheet/no-such-sheet');
  await page
    .getByText(/no such sheet|not found|no sheet/i)
    .first()
    .waitFor();
  await screens.go('/nowhere');
  await page.getByText('There is nothing at this address.').waitFor();
  expect(screens.troubles).toEqual([]);
});
