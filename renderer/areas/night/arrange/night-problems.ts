import type { GoalKind } from '../../../../shared-types/log/setup.ts';
import type { Words } from '../../../parts/words/words.tsx';
import { leaving, type NightEntry, timeOf } from './night-entry.ts';

/** What a goal's amount may be: reps, metres, milliseconds. */
const amounts = { reps: [1, 10_000], metres: [1, 100_000], clock: [1_000, 86_400_000] } as const;

/**
 * What is wrong with a night's entry, in words, by the field it is wrong in (`name`, `stations`, `amount 1`, `times <person>`, …);
 * empty where it can be saved. Whether a plan is possible is the desk's to say.
 */
export function nightProblems(entry: NightEntry, words: Words['night']['form']): Readonly<Record<string, string>> {
  const problems: Record<string, string> = {};
  const { name, date, start, heatMinutes, lanes, stations, pairs } = entry;
  if (name.trim() === '') problems.name = words.nameMissing;
  else if (name.trim().length > 200) problems.name = words.nameLong;
  if (timeOf(date, '12:00') === null) problems.date = words.dateMissing;
  if (timeOf('2000-01-01', start) === null) problems.start = words.startMissing;
  if (!between(heatMinutes, 1, 240)) problems.heatMinutes = words.figure(1, 240);
  if (!whole(lanes) || !between(lanes, 1, 32)) problems.lanes = words.wholeFigure(1, 32);
  if (stations.length === 0) problems.stations = words.stationMissing;
  stations.forEach(({ kind, amount, loadKg, heightM }, index) => {
    if (amountWrong(kind, amount)) problems[`amount ${index}`] = words.amounts[kind];
    if (loadKg !== null && !between(loadKg, 0, 500)) problems[`load ${index}`] = words.figure(0, 500);
    if (heightM !== null && !between(heightM, 0, 10)) problems[`height ${index}`] = words.figure(0, 10);
  });
  const parts = Object.entries(entry.parts).filter(([, part]) => part.athlete || part.judge);
  if (!parts.some(([, { athlete }]) => athlete)) problems.people = words.athleteMissing;
  else if (!parts.some(([, { judge }]) => judge)) problems.people = words.judgeMissing;
  for (const [id, { from, until }] of parts) {
    const [comes, goes] = [timeOf(date, from), leaving(entry, until)];
    if (comes !== null && goes !== null && comes >= goes) problems[`times ${id}`] = words.timesWrong;
  }
  if (pairs.some(({ judge, athlete }) => judge === athlete)) problems.pairs = words.pairOfOne;
  return problems;
}

function amountWrong(kind: GoalKind, amount: number | null): boolean {
  if (kind === 'open') return false;
  const [least, most] = amounts[kind];
  return !between(amount, least, most) || (kind !== 'metres' && !whole(amount));
}

function between(value: number | null, least: number, most: number): boolean {
  return value !== null && value >= least && value <= most;
}

function whole(value: number | null): boolean {
  return value !== null && Number.isInteger(value);
}
