import { expect, test } from 'vitest';
import { amounts, firstChoice, shownSheets, toDrill, withSheet } from '../../renderer/areas/eye/home/choice.ts';
import { drill } from '../../shared-types/drills/drill.ts';
import { shippedSheets } from '../../shared-types/sheets/shipped.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';

const judge = '22222222-2222-4222-8222-222222222222';
const id = '11111111-1111-4111-8111-111111111111';

test('every choice that the form offers makes a drill that the contract takes', () => {
  const sheets = shownSheets(shippedSheets);
  expect(sheets).toHaveLength(3);
  for (const sheet of sheets) {
    for (const kind of ['single', 'stream', 'line', 'place'] as const) {
      for (const reps of amounts[kind]) {
        for (const place of ['advised', 'poor'] as const) {
          const base = withSheet(firstChoice(sheets, judge), sheet);
          const choice = { ...base, kind, place, reps: { ...base.reps, [kind]: reps } };
          const made = toDrill(choice, sheet, id, 1_700_000_000_000.4, 5);
          expect(() => drill.parse(made)).not.toThrow();
        }
      }
    }
  }
});

test('the line height chosen is the one drawn and judged', () => {
  const choice = { ...firstChoice([wallThrow], judge), heightM: 2.7 };
  expect(toDrill(choice, wallThrow, id, 0, 5)?.numbers.lineHeight).toBe(2.7);
});

test('nothing is made without a judge, and a gym’s own movement is not offered', () => {
  expect(toDrill(firstChoice([wallThrow], null), wallThrow, id, 0, 5)).toBe(null);
  expect(shownSheets([{ ...wallThrow, movement: 'other' }])).toEqual([]);
});

test('another sheet keeps only faults that are on it', () => {
  const [, burpee] = shippedSheets;
  const chosen = { ...firstChoice([wallThrow], judge), faults: ['depth' as const, 'line' as const] };
  const next = withSheet(chosen, burpee);
  expect(next.faults).toEqual([]);
  expect(next.fault).toBe('chest');
});
