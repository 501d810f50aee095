import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Choice,
  filterOf,
  narrowings,
  noChoice,
  readChoice,
  writeChoice,
} from '../../renderer/areas/review/address/choice.ts';
import { goalOf, readGoal, writeGoal } from '../../renderer/areas/review/address/goal.ts';
import { placeWith } from '../../renderer/areas/review/address/places.ts';
import { datesOf, dayOf, type Span, spanLimits } from '../../renderer/areas/review/address/span.ts';
import { athleteFilter } from '../../shared-types/contract/review/filter.ts';
import { goal } from '../../shared-types/log/setup.ts';

const judge = '00000000-0000-4000-8000-00000000000b';
const athlete = '00000000-0000-4000-8000-00000000000a';

const aDay = fc
  .date({ min: new Date('1990-01-01'), max: new Date('2090-01-01'), noInvalidDate: true })
  .map((date) => dayOf(date.getTime()));
const aSpan: fc.Arbitrary<Span> = fc.oneof(
  fc.constant<Span>({ kind: 'all' }),
  fc.integer({ min: 1, max: 2_000 }).map((weeks): Span => ({ kind: 'last', weeks })),
  fc.tuple(aDay, fc.oneof(aDay, fc.constant(''))).map(([from, to]): Span => datesOf(from, to)),
);
const aChoice: fc.Arbitrary<Choice> = fc.record({
  sheet: fc.oneof(fc.constant(''), fc.string({ minLength: 1, maxLength: 64 })),
  span: aSpan,
  loadsKg: fc.uniqueArray(fc.option(fc.integer({ min: 0, max: 5_000 }).map((value) => value / 10)), { maxLength: 6 }),
  before: fc.subarray(['fresh', 'run', 'station'] as const),
  judge: fc.constantFrom('', judge),
  tags: fc.uniqueArray(fc.string({ minLength: 1, maxLength: 40 }), { maxLength: 12 }),
});

describe('the choices of a view', () => {
  test('every choice comes back from its address, whatever its texts are made of', () => {
    fc.assert(
      fc.property(aChoice, (choice) => {
        const params = new URLSearchParams();
        writeChoice(params, choice);
        expect(readChoice(new URLSearchParams(params.toString()))).toEqual(choice);
      }),
    );
  });

  test('every choice is a filter that the contract takes', () => {
    fc.assert(
      fc.property(aChoice, fc.integer({ min: 0, max: 4e12 }), (choice, now) => {
        const filter = { ...filterOf(choice, now), athlete, sheet: choice.sheet };
        expect(athleteFilter.safeParse(filter).success).toBe(true);
      }),
    );
  });

  test('no address is an error: what cannot be read does not narrow', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.constantFrom('station', 'weeks', 'from', 'to', 'load', 'before', 'judge', 'tag'), fc.string()),
        ),
        (pairs) => {
          const choice = readChoice(new URLSearchParams(pairs.map(([name, text]) => [name, text])));
          expect(athleteFilter.safeParse({ ...filterOf(choice, 0), athlete, sheet: '' }).success).toBe(true);
        },
      ),
    );
    expect(readChoice(new URLSearchParams('load=six&weeks=-4&judge=me&before=dinner&from=soon'))).toEqual(noChoice);
  });

  test('what else stands in the address stays', () => {
    const params = new URLSearchParams('goal=100-reps&load=6&tag=a&tag=b');
    writeChoice(params, { ...noChoice, tags: ['c'] });
    expect(params.toString()).toBe('goal=100-reps&tag=c');
  });

  test('only loads, what came before, the judge and the tags are counted as filters in use', () => {
    expect(narrowings({ ...noChoice, sheet: 'x', span: { kind: 'last', weeks: 4 } })).toBe(0);
    expect(narrowings({ ...noChoice, loadsKg: [6, 9], before: ['run'], judge, tags: ['a', 'b'] })).toBe(5);
  });

  test('a place with its choices', () => {
    expect(placeWith('/athlete/1', noChoice)).toBe('/athlete/1');
    expect(
      placeWith('/athlete/1', { ...noChoice, sheet: 'wall-throw', loadsKg: [null, 6] }, { goal: '', rate: '5' }),
    ).toBe('/athlete/1?station=wall-throw&load=none+6&rate=5');
  });
});

describe('spans', () => {
  test('days are those of the user’s own calendar, and the last one is included', () => {
    const { from, to } = spanLimits({ kind: 'dates', from: '2026-03-28', to: '2026-03-29' }, 0);
    expect(from).toBe(new Date(2026, 2, 28).getTime());
    expect(to).toBe(new Date(2026, 2, 30).getTime());
    expect(dayOf((to ?? 0) - 1)).toBe('2026-03-29');
  });

  test('the last weeks begin at a midnight and have no end', () => {
    const now = new Date(2026, 10, 25, 14, 30).getTime();
    expect(spanLimits({ kind: 'last', weeks: 4 }, now)).toEqual({ from: new Date(2026, 9, 28).getTime(), to: null });
  });

  test('two texts that are no days are no span', () => {
    expect(datesOf('yesterday', null)).toEqual({ kind: 'all' });
    expect(datesOf('2026-01-02', 'x')).toEqual({ kind: 'dates', from: '2026-01-02', to: '' });
  });
});

describe('goals', () => {
  const aGoal = fc.oneof(
    fc.integer({ min: 1, max: 10_000 }).map((reps) => ({ kind: 'reps' as const, reps })),
    fc.integer({ min: 4, max: 4_000 }).map((quarters) => ({ kind: 'metres' as const, metres: quarters / 4 })),
    fc.integer({ min: 1, max: 86_400 }).map((seconds) => ({ kind: 'clock' as const, milliseconds: seconds * 1_000 })),
  );

  test('every goal comes back from its address', () => {
    fc.assert(
      fc.property(aGoal, (wanted) => {
        expect(readGoal(writeGoal(wanted))).toEqual(wanted);
      }),
    );
  });

  test('what is read is a goal that a set may have, or none', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true }),
        fc.constantFrom('reps' as const, 'metres' as const, 'clock' as const),
        (amount, kind) => {
          const read = goalOf(kind, amount);
          expect(read === null || goal.safeParse(read).success).toBe(true);
        },
      ),
    );
    for (const text of [null, '', '0-reps', '1.5-reps', '-3-metres', '100-throws', '1e3-reps']) {
      expect(readGoal(text)).toBeNull();
    }
  });
});
