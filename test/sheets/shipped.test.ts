import { describe, expect, test } from 'vitest';
import { standardSheet } from '../../shared-types/sheets/sheet.ts';
import { shippedSheets } from '../../shared-types/sheets/shipped.ts';

/** The faults that the design names for each station. */
const faults: Record<string, string[]> = {
  'wall-throw': ['depth', 'line', 'aim', 'stand', 'bounce'],
  'jump-burpee': ['chest', 'hands', 'over', 'off', 'on', 'creep', 'start'],
  'box-jump-over': ['off', 'on', 'tall', 'touch'],
};

describe('the sheets that ship', () => {
  test.each(shippedSheets.map((sheet) => [sheet.id, sheet] as const))(
    '%s is a valid sheet with all its faults',
    (id, sheet) => {
      expect(standardSheet.parse(sheet)).toEqual(sheet);
      expect(sheet.faults.map((fault) => fault.code).sort()).toEqual([...(faults[id] ?? [])].sort());
      expect(sheet.summary).toContain('rulebook of your own event decides');
    },
  );

  test('faults stand from high to low, so that the buttons follow the body', () => {
    for (const sheet of shippedSheets) {
      const heights = sheet.faults.map((fault) => fault.bodyHeight);
      expect(heights).toEqual([...heights].sort((one, other) => other - one));
    }
  });

  test('a sheet with a fault code or an initial twice is refused in words', () => {
    const [sheet] = shippedSheets;
    if (sheet === undefined) throw new Error('no sheet ships');
    const [first] = sheet.faults;
    const twice = standardSheet.safeParse({ ...sheet, faults: [first, first] });
    expect(twice.error?.issues.map((issue) => issue.message)).toContain('each fault code stands once on a sheet');
  });
});
