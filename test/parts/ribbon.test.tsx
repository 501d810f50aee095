import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { markAt, outline, placeMarks } from '../../renderer/parts/ribbon/geometry.ts';
import { type RibbonAttempt, ribbonMarks, ribbonTally } from '../../renderer/parts/ribbon/marks.ts';
import { Ribbon } from '../../renderer/parts/ribbon/ribbon.tsx';
import { lineParts } from '../../renderer/parts/ribbon/ribbon-line.tsx';
import { en } from '../../renderer/parts/words/en.ts';
import { formatsFor } from '../../renderer/parts/words/formats.ts';

const faults = [
  { code: 'depth', name: 'Not deep enough', initial: 'D' },
  { code: 'line', name: 'Below the line', initial: 'L' },
];
const words = en(formatsFor('en-GB')).ribbon;

function attempt(at: number, part: Partial<RibbonAttempt> = {}): RibbonAttempt {
  return { at, verdict: 'counted', faults: [], withdrawn: false, ...part };
}

const anAttempt = fc.record({
  verdict: fc.constantFrom('counted' as const, 'no-rep' as const, 'caution' as const),
  withdrawn: fc.boolean(),
  gap: fc.integer({ min: 0, max: 60_000 }),
  code: fc.constantFrom('depth', 'line', 'unknown'),
});
const someAttempts = fc.array(anAttempt, { maxLength: 150 }).map((list) => {
  let at = 0;
  return list.map(({ verdict, withdrawn, gap, code }) => {
    at += gap;
    return attempt(at, { verdict, withdrawn, faults: verdict === 'counted' ? [] : [code] });
  });
});

describe('marks', () => {
  const marks = ribbonMarks(
    [
      attempt(2_000),
      attempt(4_500, { verdict: 'no-rep', faults: ['depth', 'line'] }),
      attempt(5_000, { withdrawn: true }),
      attempt(7_000, { verdict: 'caution', faults: ['line'] }),
      attempt(9_000, { verdict: 'no-rep' }),
      attempt(9_900, { verdict: 'no-rep', faults: ['gone'] }),
    ],
    faults,
  );

  test('number what stands, and leave out what was withdrawn', () => {
    expect(marks.map((mark) => mark.number)).toEqual([1, 2, null, 3, 4, 5]);
  });

  test('take their height from the time since the attempt before that stands', () => {
    expect(marks.map((mark) => mark.cycleS)).toEqual([null, 2.5, 0.5, 2.5, 2, 0.9]);
  });

  test('carry the first fault’s letter and all the names', () => {
    expect(marks.map((mark) => mark.initial)).toEqual([null, 'D', null, 'L', null, 'G']);
    expect(marks[1]?.reasons).toEqual(['Not deep enough', 'Below the line']);
  });

  test('add up', () => {
    expect(ribbonTally(marks)).toEqual({
      attempts: 5,
      counted: 2,
      cautions: 1,
      noReps: 3,
      reasons: [
        ['Not deep enough', 1],
        ['Below the line', 1],
        ['gone', 1],
      ],
      medianCycleS: 2.25,
    });
  });

  test('are told in words', () => {
    expect(words.summary(ribbonTally(marks))).toBe(
      '5 attempts: 2 counted, 3 no-reps, 1 with caution (1 × Not deep enough, 1 × Below the line and 1 × gone). Typical time from one to the next 2.3\u00a0s.',
    );
    expect(marks.map(words.mark)).toEqual([
      '1, counted',
      '2, no-rep, Not deep enough, Below the line, 2.5\u00a0s',
      'withdrawn, counted, 0.5\u00a0s',
      '3, counted with caution, Below the line, 2.5\u00a0s',
      '4, no-rep, no reason yet, 2.0\u00a0s',
      '5, no-rep, gone, 0.9\u00a0s',
    ]);
  });
});

describe('the drawing', () => {
  test('stays in its frame, in order, and letters of one row do not touch', () => {
    fc.assert(
      fc.property(
        someAttempts,
        fc.integer({ min: 120, max: 1_600 }),
        fc.option(fc.integer({ min: 1, max: 200 })),
        (list, width, slots) => {
          const placed = placeMarks(ribbonMarks(list, faults), width, 72, slots ?? undefined);
          let edge = 0;
          const letters: [number, number] = [-100, -100];
          for (const { x, width: wide, y, height, letterRow } of placed) {
            expect(x).toBeGreaterThanOrEqual(edge - 1e-9);
            edge = x + wide;
            expect(y).toBeGreaterThanOrEqual(-1e-9);
            expect(y + height).toBeCloseTo(72, 6);
            if (letterRow === null) continue;
            expect(x + wide / 2 - letters[letterRow]).toBeGreaterThanOrEqual(10 - 1e-9);
            letters[letterRow] = x + wide / 2;
          }
          expect(edge).toBeLessThanOrEqual(width + 1e-9);
        },
      ),
    );
  });

  test('a growing ribbon does not move what stands', () => {
    const list = Array.from({ length: 40 }, (_, index) => attempt(2_000 * (index + 1)));
    const before = placeMarks(ribbonMarks(list.slice(0, 20), faults), 600, 72, 100);
    const after = placeMarks(ribbonMarks(list, faults), 600, 72, 100).slice(0, 20);
    expect(after.map(({ x, y, width }) => [x, y, width])).toEqual(before.map(({ x, y, width }) => [x, y, width]));
  });

  test('a no-rep is an open outline, a counted rep one closed bar, a caution two closed pieces', () => {
    const list = [attempt(2_000), attempt(4_000, { verdict: 'no-rep' }), attempt(6_000, { verdict: 'caution' })];
    const paths = placeMarks(ribbonMarks(list, faults), 60, 72).map((item) => outline(item, 72));
    expect(paths.map((path) => [path.split('M').length - 1, path.split('Z').length - 1])).toEqual([
      [1, 1],
      [1, 0],
      [2, 2],
    ]);
  });

  test('the pointer finds the mark below it', () => {
    const placed = placeMarks(ribbonMarks([attempt(1), attempt(2), attempt(3)], faults), 30, 72);
    expect(placed.map(({ x, width }) => markAt(placed, x + width / 2))).toEqual([0, 1, 2]);
    expect(markAt([], 5)).toBe(-1);
  });

  test('the list’s line draws each sign as one mark', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('.', '!', 'D', '?', '💥'), { maxLength: 200 }), (signs) => {
        const parts = lineParts(signs.join(''));
        expect(parts.noRepCount).toBe(signs.filter((sign) => sign !== '.' && sign !== '!').length);
        const bars = signs.filter((sign) => sign === '.').length + 2 * signs.filter((sign) => sign === '!').length;
        expect(parts.counted.split('Z').length - 1).toBe(bars);
      }),
    );
  });
});

test('the ribbon says itself to a screen reader, and hostile names stay text', () => {
  const hostile = [{ code: 'depth', name: '<img src=x onerror=alert(1)>', initial: '<' }];
  const list = [attempt(1_000), attempt(3_000, { verdict: 'no-rep', faults: ['depth'] })];
  const html = renderToStaticMarkup(<Ribbon marks={ribbonMarks(list, hostile)} />);
  expect(html).not.toContain('<img');
  expect(html.match(/role="option"/g)).toHaveLength(2);
  expect(html).toContain('aria-label="2 attempts: 1 counted, 1 no-rep (1 × &lt;img src=x onerror=alert(1)&gt;)');
});
