import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  codeOf,
  emptySheet,
  entryOf,
  newSheetId,
  readNumbers,
  type SheetEntry,
  sheetOf,
} from '../../renderer/areas/standards/form/sheet-entry.ts';
import { sheetProblems } from '../../renderer/areas/standards/form/sheet-problems.ts';
import { bodyPlace, sheetChanges } from '../../renderer/areas/standards/sheet-changes.ts';
import { byHeight } from '../../renderer/areas/standards/sheet-order.ts';
import { en } from '../../renderer/parts/words/en.ts';
import { formatsFor } from '../../renderer/parts/words/formats.ts';
import { fault as faultSchema, type StandardSheet, standardSheet } from '../../shared-types/sheets/sheet.ts';
import { shippedSheets } from '../../shared-types/sheets/shipped.ts';

const words = en(formatsFor('en-GB')).standards;
const identity = { id: 'sandbag-lunge', version: 1, createdAt: 1_000 };
const [first] = shippedSheets;
if (first === undefined) throw new Error('no sheet ships');

const problemsOf = (entry: SheetEntry) => sheetProblems(sheetOf(entry, identity), words.form.problems);

describe('a sheet and its form', () => {
  test.each(shippedSheets.map((sheet) => [sheet.station, sheet] as const))(
    '%s goes through the form unchanged',
    (_name, sheet) => {
      const { id, version, createdAt } = sheet;
      expect(sheetOf(entryOf(sheet), { id, version, createdAt })).toEqual({ ...sheet, shipped: false });
    },
  );

  test('a clock goal goes through in minutes', () => {
    const sheet: StandardSheet = { ...first, goals: ['clock'], usualGoal: { kind: 'clock', amount: 90_000 } };
    expect(entryOf(sheet).usualAmount).toBe(1.5);
    expect(sheetOf(entryOf(sheet), identity).usualGoal).toEqual({ kind: 'clock', amount: 90_000 });
  });

  test('lists of numbers take points, commas and semicolons, and keep what is no number as none', () => {
    expect(readNumbers('4 6; 9,5')).toEqual([4, 6, 9.5]);
    expect(readNumbers('4, 6, 9')).toEqual([4, 6, 9]);
    expect(readNumbers('')).toEqual([]);
    expect(readNumbers('4 heavy')).toEqual([4, Number.NaN]);
  });

  test('what is proposed for a code or an id is one, or nothing', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (name) => {
        const code = codeOf(name);
        if (code !== '') expect(faultSchema.shape.code.safeParse(code).success).toBe(true);
        const id = newSheetId(name, new Set(['sheet', 'a', 'a-2']));
        expect(standardSheet.shape.id.safeParse(id).success).toBe(true);
      }),
    );
    expect(codeOf('Knee off the floor')).toBe('knee-off-the-floor');
    expect(newSheetId('Wall throw', new Set(['wall-throw', 'wall-throw-2']))).toBe('wall-throw-3');
  });
});

describe('what is wrong with a sheet', () => {
  test('an empty form names every field that is needed', () => {
    expect([...problemsOf(emptySheet).keys()].toSorted()).toEqual(
      [
        ...['faults.0.code', 'faults.0.cue', 'faults.0.initial', 'faults.0.look', 'faults.0.name', 'faults.0.remedy'],
        ...['faults.0.stand', 'faults.0.standard', 'repsName', 'station', 'summary'],
      ].toSorted(),
    );
  });

  const good = entryOf(first);
  const [one] = good.faults;
  if (one === undefined) throw new Error('the sheet has no fault');
  const wrong: readonly (readonly [string, Partial<SheetEntry>, string, string])[] = [
    ['no station', { station: ' ' }, 'station', 'Some text is needed here.'],
    ['a long station', { station: 'x'.repeat(81) }, 'station', 'At most 80 characters.'],
    ['a word among the loads', { loads: '4 heavy' }, 'loadsKg', 'Only numbers, separated by spaces.'],
    ['a load of nothing', { loads: '0' }, 'loadsKg', 'More than 0.'],
    ['too high a line', { heights: '11' }, 'heightsM', '10 or less.'],
    ['too many loads', { loads: '1 2 3 4 5 6 7 8 9 10 11 12 13' }, 'loadsKg', 'At most 12 of them.'],
    ['no goal', { goals: [] }, 'goals', 'Choose one goal at least.'],
    [
      'a usual goal that is not allowed',
      { usualKind: 'metres' },
      'usualGoal.kind',
      'The usual goal must be one of the goals above.',
    ],
    ['no usual amount', { usualAmount: null }, 'usualGoal.amount', 'A number is needed here.'],
    ['metres back of how many', { consequence: 'metres-back' }, 'consequence.metres', 'A number is needed here.'],
    [
      'seconds of nothing',
      { consequence: 'seconds-added', consequenceAmount: 0 },
      'consequence.seconds',
      'More than 0.',
    ],
    ['no fault', { faults: [] }, 'faults', 'A sheet needs one fault at least.'],
    ['a bad code', { faults: [{ ...one, code: 'Two words' }] }, 'faults.0.code', words.form.problems.codeForm],
    ['a bad letter', { faults: [{ ...one, initial: '!' }] }, 'faults.0.initial', words.form.problems.initialForm],
    [
      'the same code twice',
      { faults: [one, { ...one, initial: 'Z' }] },
      'faults.1.code',
      words.form.problems.codeTwice,
    ],
    [
      'the same letter twice',
      { faults: [one, { ...one, code: 'z' }] },
      'faults.1.initial',
      words.form.problems.initialTwice,
    ],
    [
      'a margin without a measure',
      { faults: [{ ...one, margin: { quantity: '', unit: 'cm', direction: 'x', tolerance: null } }] },
      'faults.0.margin.tolerance',
      'A number is needed here.',
    ],
  ];
  test.each(wrong)('%s', (_name, part, place, problem) => {
    expect(problemsOf({ ...good, ...part }).get(place)).toBe(problem);
  });

  test('there is a word for what is wrong exactly where the schema refuses', () => {
    const text = fc.oneof(fc.string({ unit: 'grapheme' }), fc.constantFrom('', 'x'.repeat(2_001)));
    const amount = fc.option(fc.oneof(fc.integer(), fc.double()));
    const anEntry = fc.record({
      station: text,
      loads: text,
      heights: text,
      cautions: text,
      usualAmount: amount,
      consequence: fc.constantFrom('repeat' as const, 'metres-back' as const, 'seconds-added' as const),
      consequenceAmount: amount,
      markEveryM: amount,
      goals: fc.subarray(['reps', 'metres', 'clock', 'open'] as const).map((goals) => [...goals]),
      faults: fc
        .array(fc.record({ code: text, name: text, initial: fc.constantFrom('A', 'B', '', 'ß', '👍') }), {
          maxLength: 3,
        })
        .map((list) => list.map((part, index) => ({ ...one, ...part, key: String(index) }))),
    });
    fc.assert(
      fc.property(
        fc.record({
          all: anEntry,
          keys: fc.subarray([
            'station',
            'loads',
            'heights',
            'cautions',
            'usualAmount',
            'consequence',
            'consequenceAmount',
            'markEveryM',
            'goals',
            'faults',
          ] as const),
        }),
        ({ all, keys }) => {
          const entry = { ...good, ...Object.fromEntries(keys.map((key) => [key, all[key]])) };
          const fits = standardSheet.safeParse(sheetOf(entry, identity)).success;
          expect(problemsOf(entry).size === 0).toBe(fits);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('what changed between versions', () => {
  test('nothing from a sheet to itself', () => {
    for (const sheet of shippedSheets) expect(sheetChanges(sheet, { ...sheet, version: 2 }, words)).toEqual([]);
  });

  test('each difference once, before and after in the sheet’s own words', () => {
    const [top, ...rest] = first.faults;
    if (top === undefined) throw new Error('the sheet has no fault');
    const fresh = { ...top, code: 'fresh', name: 'A fresh fault', initial: 'F', standard: 'Something new.' };
    const [changed, ...others] = rest.slice(1);
    if (changed === undefined) throw new Error('the sheet has too few faults');
    const later: StandardSheet = {
      ...first,
      version: 2,
      loadsKg: [5],
      consequence: { kind: 'metres-back', metres: 5 },
      faults: [{ ...changed, cue: 'New cue!' }, ...others, fresh],
    };
    expect(sheetChanges(first, later, words)).toEqual([
      { where: 'A no-rep', before: 'is done again', after: 'costs 5 m back' },
      { where: 'Loads', before: '4\u00a0kg, 6\u00a0kg and 9\u00a0kg', after: '5\u00a0kg' },
      { where: `${changed.name}: Shout`, before: changed.cue, after: 'New cue!' },
      { where: 'New fault: A fresh fault', before: null, after: 'Something new.' },
      ...first.faults
        .slice(0, 2)
        .map((gone) => ({ where: `Fault taken out: ${gone.name}`, before: gone.standard, after: null })),
    ]);
  });

  test('another order alone is told', () => {
    const turned = { ...first, version: 2, faults: first.faults.toReversed() };
    expect(sheetChanges(first, turned, words).map((change) => change.where)).toEqual(['Order of the faults']);
  });
});

test('faults are read from high to low', () => {
  const heights = byHeight(first.faults).map((item) => item.bodyHeight);
  expect(heights).toEqual(heights.toSorted((a, b) => b - a));
  expect([0, 0.25, 0.5, 0.7, 0.9, 1].map(bodyPlace)).toEqual(['floor', 'knee', 'hip', 'chest', 'head', 'above']);
});
