import type { Goal } from '../../../../shared-types/log/setup.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';

/** Metres of the next mark on the lane, never past the goal; null where the sheet counts no distance. */
export function nextMark(sheet: Pick<StandardSheet, 'markEveryM'>, goal: Goal, reached: number): number | null {
  const every = sheet.markEveryM;
  if (every === null) return null;
  // A mark lies at a whole number of spans; the small excess keeps 0.1 m spans from repeating a mark by rounding.
  const next = Math.round((Math.floor(reached / every + 1e-9) + 1) * every * 1000) / 1000;
  return goal.kind === 'metres' && reached < goal.metres ? Math.min(next, goal.metres) : next;
}
