import type { z } from 'zod';
import { type StandardSheet, standardSheet } from '../../../../shared-types/sheets/sheet.ts';
import type { Words } from '../../../parts/words/words.tsx';

type ProblemWords = Words['standards']['form']['problems'];
type Issue = z.core.$ZodIssue;

/** What is wrong, by the place in the sheet: "station", "faults.2.cue"; the first thing said of a place stands. */
export type SheetProblems = ReadonlyMap<string, string>;

/** What keeps a sheet from being published, in words. Empty exactly where the sheet's schema takes it. */
export function sheetProblems(sheet: StandardSheet, words: ProblemWords): SheetProblems {
  const problems = new Map<string, string>();
  const add = (place: string, problem: string): void => {
    if (!problems.has(place)) problems.set(place, problem);
  };
  const parsed = standardSheet.safeParse(sheet);
  if (parsed.success) return problems;
  for (const issue of parsed.error.issues) {
    // What the schema says of the sheet as a whole is named field by field below.
    if (issue.code !== 'custom') add(placeOf(issue), problemOf(issue, sheet, words));
  }
  for (const place of twice(sheet.faults.map((fault) => fault.code))) add(`faults.${place}.code`, words.codeTwice);
  for (const place of twice(sheet.faults.map((fault) => fault.initial))) {
    add(`faults.${place}.initial`, words.initialTwice);
  }
  if (sheet.goals.length > 0 && !sheet.goals.includes(sheet.usualGoal.kind)) {
    add('usualGoal.kind', words.usualNotAllowed);
  }
  if (problems.size === 0) add('sheet', words.other);
  return problems;
}

/** Lists are one field each: what is wrong with an item is said of the list. */
function placeOf(issue: Issue): string {
  const [first, ...rest] = issue.path.map(String);
  if (first === undefined) return 'sheet';
  return first === 'faults' || first === 'usualGoal' || first === 'consequence' ? [first, ...rest].join('.') : first;
}

function problemOf(issue: Issue, sheet: StandardSheet, words: ProblemWords): string {
  const [first] = issue.path;
  const last = issue.path.at(-1);
  const inList = first === 'loadsKg' || first === 'heightsM';
  switch (issue.code) {
    case 'invalid_type':
      return inList ? words.notNumbers : words.numberMissing;
    case 'invalid_format':
      if (valueAt(sheet, issue.path) === '') return words.textMissing;
      return last === 'code' ? words.codeForm : last === 'initial' ? words.initialForm : words.other;
    case 'too_small':
      if (first === 'goals') return words.goalMissing;
      if (issue.origin === 'array') return words.faultMissing;
      if (issue.origin === 'string') return words.textMissing;
      return issue.inclusive === false ? words.above(Number(issue.minimum)) : words.atLeast(Number(issue.minimum));
    case 'too_big':
      if (issue.origin === 'array') return words.tooMany(Number(issue.maximum));
      return issue.origin === 'string' ? words.tooLong(Number(issue.maximum)) : words.atMost(Number(issue.maximum));
    default:
      return words.other;
  }
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (held, key) => (held !== null && typeof held === 'object' ? Reflect.get(held, key) : undefined),
    value,
  );
}

/** The places of values that stand earlier in the list already; empty ones are missing, not doubled. */
function twice(values: readonly string[]): number[] {
  return values.flatMap((value, index) => (value !== '' && values.indexOf(value) !== index ? [index] : []));
}
