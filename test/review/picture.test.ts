import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nextPlace } from '../../renderer/parts/figure/rows-walk.ts';
import { markPaths, slotAt, slotMiddle, slotsOf } from '../../renderer/parts/figure/set-marks.ts';

const aRow = fc.string({ unit: fc.constantFrom('.', '!', 'D', 'L', '?'), maxLength: 140 }).chain((marks) =>
  fc.record({
    marks: fc.constant(marks),
    cyclesS: fc.array(fc.option(fc.double({ min: 0.05, max: 90, noNaN: true })), {
      minLength: marks.length,
      maxLength: marks.length,
    }),
  }),
);
const field = { topOf: (row: number) => row * 25, rowHeight: 22 };

test('the picture is two paths: a closed bar for what counted, two for a caution, an open notch for each no-rep', () => {
  fc.assert(
    fc.property(fc.array(aRow, { maxLength: 6 }), (rows) => {
      const signs = rows.flatMap((row) => Array.from(row.marks));
      const { counted, noReps } = markPaths(rows, slotsOf(rows, [60, 700]), field);
      const bars = signs.filter((sign) => sign === '.').length + 2 * signs.filter((sign) => sign === '!').length;
      expect(counted.split('Z').length - 1).toBe(bars);
      expect(noReps.split('M').length - 1).toBe(signs.filter((sign) => sign !== '.' && sign !== '!').length);
      expect(noReps).not.toContain('Z');
      expect(counted + noReps).not.toMatch(/NaN|Infinity/);
    }),
  );
});

test('no mark leaves its row or its slot', () => {
  fc.assert(
    fc.property(fc.array(aRow, { minLength: 1, maxLength: 4 }), (rows) => {
      const slots = slotsOf(rows, [60, 400]);
      const { counted } = markPaths(rows, slots, field);
      for (const [, x, base, tall, wide] of counted.matchAll(/M([\d.]+) ([\d.]+)v(-?[\d.]+)h([\d.]+)/g)) {
        expect(Number(x)).toBeGreaterThanOrEqual(60 - 0.01);
        expect(Number(x) + Number(wide)).toBeLessThanOrEqual(400.02);
        expect(-Number(tall)).toBeLessThanOrEqual(22.01);
        expect(Number(base)).toBeGreaterThan(0);
      }
    }),
  );
});

test('the mark at a place is the mark that is drawn there', () => {
  fc.assert(
    fc.property(fc.array(aRow, { minLength: 1, maxLength: 4 }), (rows) => {
      const slots = slotsOf(rows, [60, 700]);
      for (const row of rows) {
        for (let index = 0; index < row.marks.length; index += 1) {
          expect(slotAt(row, slots, slotMiddle(slots, index))).toBe(index);
        }
        expect(slotAt(row, slots, 59)).toBe(-1);
        expect(slotAt(row, slots, slotMiddle(slots, row.marks.length))).toBe(-1);
      }
    }),
  );
});

test('keys: up and down among the rows, right and left among the marks of one, back to the row as a whole', () => {
  const marks = (row: number) => [3, 0][row] ?? 0;
  const go = (key: string, row: number, mark: number) => nextPlace(key, { row, mark }, 2, marks);
  expect(go('ArrowDown', -1, -1)).toEqual({ row: 0, mark: -1 });
  expect(go('ArrowRight', -1, -1)).toEqual({ row: 0, mark: -1 });
  expect(go('ArrowRight', 0, -1)).toEqual({ row: 0, mark: 0 });
  expect(go('ArrowRight', 0, 2)).toEqual({ row: 0, mark: 2 });
  expect(go('ArrowLeft', 0, 0)).toEqual({ row: 0, mark: -1 });
  expect(go('ArrowLeft', 0, -1)).toEqual({ row: 0, mark: -1 });
  expect(go('ArrowDown', 0, 2)).toEqual({ row: 1, mark: -1 });
  expect(go('End', 0, 1)).toEqual({ row: 1, mark: -1 });
  expect(go('Escape', 0, 1)).toBeNull();
});
