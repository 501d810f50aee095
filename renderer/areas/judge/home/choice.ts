import type { Settings } from '../../../../shared-types/contract/settings.ts';
import type { Before, Goal, GoalKind, SetSetup } from '../../../../shared-types/log/setup.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { wallThrow } from '../../../../shared-types/sheets/wall-throw.ts';

/** What the judge has chosen so far for the next set. */
export interface Choice {
  readonly athlete: string | null;
  readonly judge: string | null;
  readonly sheet: string | null;
  readonly goal: Goal;
  readonly loadKg: number | null;
  readonly heightM: number | null;
  readonly before: Before;
  readonly tags: readonly string[];
  readonly practice: boolean;
}

type LastSetup = NonNullable<Settings['lastSetup']>;

/** A goal of a kind with the sheet's usual amount where it has one, else one that a gym would try first. */
export function goalOf(kind: GoalKind, sheet: Pick<StandardSheet, 'usualGoal'>): Goal {
  const usual = sheet.usualGoal.kind === kind ? sheet.usualGoal.amount : 0;
  switch (kind) {
    case 'reps':
      return { kind, reps: usual >= 1 ? Math.round(usual) : 50 };
    case 'metres':
      return { kind, metres: usual >= 1 ? usual : 80 };
    case 'clock':
      return { kind, milliseconds: usual >= 1_000 ? Math.round(usual) : 300_000 };
    case 'open':
      return { kind };
  }
}

/** Takes another sheet: its usual goal, and load and height kept only where the sheet knows such a thing. */
export function withSheet(choice: Choice, sheet: StandardSheet): Choice {
  const goal = choice.sheet === sheet.id && sheet.goals.includes(choice.goal.kind) ? choice.goal : null;
  return {
    ...choice,
    sheet: sheet.id,
    goal: goal ?? goalOf(sheet.usualGoal.kind, sheet),
    loadKg: usualOr(sheet.loadsKg, choice.loadKg, choice.sheet === sheet.id),
    heightM: usualOr(sheet.heightsM, choice.heightM, choice.sheet === sheet.id),
  };
}

/** A free value stays with its own sheet; on another one only a value that is usual there does. */
function usualOr(usual: readonly number[], value: number | null, sameSheet: boolean): number | null {
  if (usual.length === 0) return null;
  if (value !== null && (sameSheet || usual.includes(value))) return value;
  return sameSheet ? null : (usual[0] ?? null);
}

const nothingChosen: Choice = {
  athlete: null,
  judge: null,
  sheet: null,
  goal: { kind: 'open' },
  loadKg: null,
  heightM: null,
  before: 'fresh',
  tags: [],
  practice: false,
};

/**
 * What the form begins with: the last choices as far as they still hold, else the wall throw's usual ones, or the first sheet's. `known` are
 * the ids of the people who are not archived.
 */
export function firstChoice(
  last: LastSetup | null,
  sheets: readonly StandardSheet[],
  known: ReadonlySet<string>,
): Choice {
  const sheet = sheets.find((item) => item.id === (last?.sheet ?? wallThrow.id)) ?? sheets[0];
  if (sheet === undefined) return nothingChosen;
  if (last === null || last.sheet !== sheet.id) {
    const people = { athlete: stillKnown(last?.athlete, known), judge: stillKnown(last?.judge, known) };
    return withSheet({ ...nothingChosen, ...people, before: last?.before ?? 'fresh' }, sheet);
  }
  const remembered: Choice = {
    athlete: stillKnown(last.athlete, known),
    judge: stillKnown(last.judge, known),
    sheet: sheet.id,
    goal: last.goal ?? goalOf(sheet.usualGoal.kind, sheet),
    loadKg: last.loadKg,
    heightM: last.heightM,
    before: last.before,
    tags: last.tags,
    practice: false,
  };
  return withSheet(remembered, sheet);
}

function stillKnown(id: string | null | undefined, known: ReadonlySet<string>): string | null {
  return typeof id === 'string' && known.has(id) ? id : null;
}

/** What is remembered for the next time. Practice is chosen anew each time: it leaves a set out of every figure. */
export function toLastSetup(choice: Choice): LastSetup {
  const { athlete, judge, sheet, goal, loadKg, heightM, before, tags } = choice;
  return { athlete, judge, sheet, goal, loadKg, heightM, before, tags: [...tags] };
}

export type Missing = 'athlete' | 'judge' | 'sheet';

export function missing(choice: Choice): readonly Missing[] {
  return (['athlete', 'judge', 'sheet'] as const).filter((field) => choice[field] === null);
}

/** The setup that the log will belong to. `now` milliseconds since 1970 UTC; null while something is missing. */
export function toSetup(choice: Choice, sheet: StandardSheet, id: string, now: number): SetSetup | null {
  if (choice.athlete === null || choice.judge === null || choice.sheet !== sheet.id) return null;
  return {
    id,
    athlete: choice.athlete,
    judge: choice.judge,
    sheet: { id: sheet.id, version: sheet.version },
    goal: choice.goal,
    loadKg: choice.loadKg,
    heightM: choice.heightM,
    before: choice.before,
    tags: [...choice.tags],
    note: '',
    role: 'main',
    practice: choice.practice,
    createdAt: Math.round(now),
  };
}

/** The same set once more, under the sheet's present version. */
export function choiceOf(setup: SetSetup): Choice {
  const { athlete, judge, goal, loadKg, heightM, before, tags, practice } = setup;
  return { athlete, judge, sheet: setup.sheet.id, goal, loadKg, heightM, before, tags, practice };
}
