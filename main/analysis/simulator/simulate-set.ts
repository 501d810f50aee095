import type { SetEvent } from '../../../shared-types/log/events.ts';
import type { Goal } from '../../../shared-types/log/setup.ts';
import { type RandomGenerator, seededGenerator } from '../random/generator.ts';
import { type CycleAt, cleanCycleStream, spreadLogNormal, spreadNormal } from './clean-cycles.ts';
import { Judge } from './judge.ts';
import type { AthleteModel, FaultModel, JudgeModel } from './models.ts';
import { SetLog } from './set-log.ts';

/** What to simulate. The same plan always gives the same set. */
export type SetPlan = {
  readonly set: string;
  readonly pad: string;
  /** Milliseconds since 1970 UTC at go. */
  readonly wallClock: number;
  readonly athlete: AthleteModel;
  readonly judge: JudgeModel;
  readonly goal: Goal;
  /** Attempts after which fatigue is complete, and after which an open set ends. */
  readonly usualAttempts: number;
  /** Metres between marks on the lane; null for none. */
  readonly markEvery: number | null;
  /** Metres taken back for a no-rep. */
  readonly metresBack: number;
  readonly seed: number;
};

/** One attempt as it truly was. Seconds. */
export type TrueAttempt = {
  readonly fault: string | null;
  /** As the calls stand in the end. */
  readonly counted: boolean;
  /** What a clean rep would have taken here. */
  readonly cleanCycle: number;
  /** The same without its noise: what was to be expected. */
  readonly pace: number;
  /**
   * Cost of a no-rep: its own time up to the expected cycle there, and the rest of it with the idle time that came of it,
   * without breaks. Idle time after the last attempt of a set is nobody's: nothing came after.
   */
  readonly repeat: number;
  readonly disruption: number;
};

/** Seconds truly lost in the set. */
export type SetTruth = {
  readonly attempts: readonly TrueAttempt[];
  readonly total: number;
  readonly repeat: number;
  readonly disruption: number;
  readonly breaks: number;
  readonly metres: number;
};

export type SimulatedSet = { readonly events: readonly SetEvent[]; readonly truth: SetTruth };

/** No simulated set goes on for longer than this many attempts. */
const MOST_ATTEMPTS = 5_000;

/** One set, from go to its end, with its truth. Valid under the log's schemas and rules. */
export function simulateSet(plan: SetPlan): SimulatedSet {
  const { athlete, goal } = plan;
  const generator = seededGenerator(plan.seed);
  const log = new SetLog(plan.set, plan.pad, plan.wallClock);
  const codes = athlete.faults.map((fault) => fault.fault);
  const judge = new Judge(plan.judge, codes, log, generator);
  const nextCycle = cleanCycleStream(athlete.pace, generator);
  const limit = goal.kind === 'clock' ? goal.milliseconds / 1000 : Number.POSITIVE_INFINITY;
  const attempts: TrueAttempt[] = [];
  let now = spreadNormal(athlete.start, generator);
  let fatigue = 0;
  let counted = 0;
  let metres = 0;
  let marked = 0;
  let breaks = 0;
  // Unmarked time since the last call in which nobody tried: resets and pauses.
  let idle = 0;
  let untilBreak = breakAfter(athlete, generator);

  while (attempts.length < MOST_ATTEMPTS) {
    const cycle = nextCycle(fatigue);
    const fault = faultOf(athlete.faults, cycle, Math.min(1, attempts.length / plan.usualAttempts), generator);
    const taken = fault === null ? cycle.seconds : cycle.seconds * fault.attempt;
    const pause = generator.uniform() < athlete.pause.chance ? spreadLogNormal(athlete.pause.seconds, generator) : 0;
    if (now + pause + taken + 0.5 > limit) break;
    idle += pause;
    now += pause + taken;
    const heard = judge.call(now, fault?.fault ?? null);
    const repeat = Math.min(taken, cycle.pace);
    const lost = heard.counts ? { repeat: 0, disruption: 0 } : { repeat, disruption: taken - repeat };
    attempts.push({
      fault: fault?.fault ?? null,
      counted: heard.counts,
      cleanCycle: cycle.seconds,
      pace: cycle.pace,
      ...lost,
    });
    chargeIdle(attempts, idle);
    idle = 0;
    fatigue = Math.min(1, fatigue + 1 / plan.usualAttempts);
    if (heard.counts) {
      counted += 1;
      metres += spreadNormal(athlete.metresPerJump, generator);
    } else {
      metres -= plan.metresBack;
    }
    if (plan.markEvery !== null && Math.floor(metres / plan.markEvery) * plan.markEvery > marked) {
      marked = Math.floor(metres / plan.markEvery) * plan.markEvery;
      log.write(judge.press(now), { kind: 'mark', metres: marked });
    }
    if (isDone(goal, counted, metres, attempts.length, plan.usualAttempts)) break;
    if (heard.disturbed) {
      const reset = spreadLogNormal((fault ?? athlete.faults[0])?.reset ?? { mean: 0, deviation: 0 }, generator);
      idle += reset;
      now += reset;
    }
    untilBreak -= 1;
    if (athlete.breaks !== null && untilBreak <= 0) {
      const seconds = spreadLogNormal(athlete.breaks.seconds, generator);
      if (now + seconds > limit) break;
      judge.breakStart(now);
      now += seconds;
      breaks += seconds;
      judge.breakEnd(now);
      fatigue *= 1 - athlete.breaks.recovery;
      untilBreak = breakAfter(athlete, generator);
    }
  }
  const end = Number.isFinite(limit) ? limit : (log.events.at(-1)?.at ?? 0) / 1000;
  log.write(end, { kind: 'finish' });
  judge.explainAfterwards(end);
  return { events: log.events, truth: truthOf(attempts, breaks, metres) };
}

/** Idle time between two counted reps is the no-reps' between them: the earlier one's, else the one that it led to. */
function chargeIdle(attempts: TrueAttempt[], seconds: number): void {
  if (seconds === 0 || attempts.length < 2) return;
  for (const place of [attempts.length - 2, attempts.length - 1]) {
    const attempt = attempts[place];
    if (attempt === undefined || attempt.counted) continue;
    attempts[place] = { ...attempt, disruption: attempt.disruption + seconds };
    return;
  }
}

function truthOf(attempts: TrueAttempt[], breaks: number, metres: number): SetTruth {
  const repeat = attempts.reduce((sum, attempt) => sum + attempt.repeat, 0);
  const disruption = attempts.reduce((sum, attempt) => sum + attempt.disruption, 0);
  return { attempts, total: repeat + disruption, repeat, disruption, breaks, metres };
}

function breakAfter({ breaks }: AthleteModel, generator: RandomGenerator): number {
  return breaks === null ? Number.POSITIVE_INFINITY : Math.max(1, Math.round(spreadNormal(breaks.every, generator)));
}

/** At most one fault an attempt: each has its own chance, in the order of the list. */
function faultOf(
  faults: readonly FaultModel[],
  cycle: CycleAt,
  progress: number,
  generator: RandomGenerator,
): FaultModel | null {
  const haste = 10 * (1 - cycle.seconds / cycle.pace);
  for (const fault of faults) {
    if (fault.rate <= 0) continue;
    const logOdds = Math.log(fault.rate / (1 - fault.rate)) + fault.fatigue * progress + fault.hurry * haste;
    if (generator.uniform() < 1 / (1 + Math.exp(-logOdds))) return fault;
  }
  return null;
}

function isDone(goal: Goal, counted: number, metres: number, attempts: number, usual: number): boolean {
  switch (goal.kind) {
    case 'reps':
      return counted >= goal.reps;
    case 'metres':
      return metres >= goal.metres;
    case 'clock':
      return false;
    case 'open':
      return attempts >= usual;
  }
}
