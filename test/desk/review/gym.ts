import type { AthleteModel, JudgeModel } from '../../../main/analysis/simulator/models.ts';
import { EXACT_JUDGE } from '../../../main/analysis/simulator/models.ts';
import { simulateSet } from '../../../main/analysis/simulator/simulate-set.ts';
import type { SetEvent } from '../../../shared-types/log/events.ts';
import type { SetSetup } from '../../../shared-types/log/setup.ts';
import { athlete, judge, setupOf, somebody } from '../fixtures.ts';
import { openTestDesk } from '../open-test-desk.ts';

export const second = somebody(3, 'Wanda Fen');
export const strict = somebody(4, 'Olga Brandt', { athlete: false });

export const DAY_MS = 86_400_000;
/** A Monday. */
export const firstDay = Date.UTC(2026, 5, 1, 17);

/** An athlete without noise in anything but what a test asks for. */
export function athleteModel(changes: Partial<AthleteModel> = {}): AthleteModel {
  return {
    pace: { cycle: 2.2, fade: 0.15, fastStart: 0, noise: 0.06, autocorrelation: 0.2, rhythm: { share: 0, period: 3 } },
    faults: [faultModel('depth', 0.05), faultModel('line', 0.03)],
    breaks: null,
    start: { mean: 1.5, deviation: 0.2 },
    pause: { chance: 0, seconds: { mean: 1, deviation: 0.1 } },
    metresPerJump: { mean: 0, deviation: 0 },
    ...changes,
  };
}

export function faultModel(fault: string, rate: number, changes: { fatigue?: number; hurry?: number } = {}) {
  return { fault, rate, fatigue: 0, hurry: 0, attempt: 0.9, reset: { mean: 1.2, deviation: 0.4 }, ...changes };
}

export function setId(number: number): string {
  return `00000000-0000-4000-8000-${(0x2000_0000 + number).toString(16).padStart(12, '0')}`;
}

export interface GymSet {
  readonly setup: SetSetup;
  readonly events: readonly SetEvent[];
}

/** A simulated set on day `number` unless `at` says otherwise: 60 throws, the same every time. */
export function simulated(
  number: number,
  model: AthleteModel,
  changes: Partial<SetSetup> & { judgeModel?: JudgeModel; at?: number; seed?: number } = {},
): GymSet {
  const { judgeModel = EXACT_JUDGE, at = firstDay + number * DAY_MS, seed = number + 1, ...own } = changes;
  const setup = setupOf({ id: setId(number), goal: { kind: 'reps', reps: 60 }, createdAt: at - 60_000, ...own });
  const { events } = simulateSet({
    set: setup.id,
    pad: `pad-${number}`,
    wallClock: at,
    athlete: model,
    judge: judgeModel,
    goal: setup.goal,
    usualAttempts: 60,
    markEvery: null,
    metresBack: 0,
    seed,
  });
  return { setup, events };
}

/** A desk that holds these sets, summed. */
export async function deskWith(sets: readonly GymSet[]) {
  const opened = await openTestDesk({ people: false });
  for (const person of [athlete, judge, second, strict]) await opened.calls.people.save(person);
  for (const { setup, events } of sets) {
    await opened.calls.sets.create(setup);
    for (let from = 0; from < events.length; from += 500) {
      await opened.calls.sets.append({ events: events.slice(from, from + 500) });
    }
  }
  await opened.desk.settle();
  return opened;
}

/** Every number in an answer. */
export function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(numbersIn);
}
