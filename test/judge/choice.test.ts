import { expect, test } from 'vitest';
import {
  choiceOf,
  firstChoice,
  missing,
  toLastSetup,
  toSetup,
  withSheet,
} from '../../renderer/areas/judge/home/choice.ts';
import { readSpan } from '../../renderer/parts/controls/read-span.ts';
import { setSetup } from '../../shared-types/log/setup.ts';
import { boxJumpOver } from '../../shared-types/sheets/box-jump-over.ts';
import { jumpBurpee } from '../../shared-types/sheets/jump-burpee.ts';
import { shippedSheets } from '../../shared-types/sheets/shipped.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';

const MARA = '00000000-0000-4000-8000-00000000000a';
const JON = '00000000-0000-4000-8000-00000000000b';
const ID = '00000000-0000-4000-8000-00000000000c';

test('the first set ever: the first sheet with its usual goal, load and height; the people are missing', () => {
  const choice = firstChoice(null, shippedSheets, new Set());
  expect(choice).toMatchObject({ sheet: 'wall-throw', goal: { kind: 'reps', reps: 100 }, loadKg: 4, heightM: 2.7 });
  expect(missing(choice)).toEqual(['athlete', 'judge']);
  expect(toSetup(choice, wallThrow, ID, 1)).toBeNull();
});

test('the last choices come back, but for practice and for people who are no longer there', () => {
  const first = {
    ...firstChoice(null, shippedSheets, new Set()),
    athlete: MARA,
    judge: JON,
    loadKg: 6.5,
    practice: true,
  };
  const again = firstChoice(toLastSetup(first), shippedSheets, new Set([MARA]));
  expect(again).toMatchObject({ athlete: MARA, judge: null, loadKg: 6.5, practice: false });
  expect(missing(again)).toEqual(['judge']);
});

test('a free value stays with its sheet and is dropped with it', () => {
  const choice = { ...firstChoice(null, shippedSheets, new Set()), loadKg: 6.5, heightM: 2.9 };
  expect(withSheet(choice, wallThrow)).toMatchObject({ loadKg: 6.5, heightM: 2.9 });
  expect(withSheet(choice, jumpBurpee)).toMatchObject({
    sheet: 'jump-burpee',
    loadKg: null,
    heightM: null,
    goal: { kind: 'metres', metres: 80 },
  });
  expect(withSheet(choice, boxJumpOver)).toMatchObject({
    heightM: 0.5,
    loadKg: null,
    goal: { kind: 'reps', reps: 40 },
  });
});

test('a setup of a complete choice is one that the log accepts, and gives the same choice back', () => {
  const choice = { ...firstChoice(null, shippedSheets, new Set()), athlete: MARA, judge: JON, tags: ['heat 2'] };
  const setup = toSetup(choice, wallThrow, ID, 1_700_000_000_000.4);
  expect(setSetup.safeParse(setup).success).toBe(true);
  expect(setup === null ? null : choiceOf(setup)).toEqual(choice);
});

test('typed spans: minutes and seconds, or minutes', () => {
  expect(['5:00', '0:45', '2.5', '90'].map(readSpan)).toEqual([300_000, 45_000, 150_000, 5_400_000]);
  expect(['5:60', '0', '', 'five', '-3', '1441'].map(readSpan)).toEqual(Array(6).fill(null));
});
