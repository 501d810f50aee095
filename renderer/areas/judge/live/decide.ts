import { type EventRef, refKey, type SetEvent } from '../../../../shared-types/log/events.ts';
import { counts, goalReached, tally } from '../../../../shared-types/log/fold.ts';
import type { Goal } from '../../../../shared-types/log/setup.ts';
import type { SetState } from '../../../../shared-types/log/state.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import type { Draft } from './draft.ts';
import { toExplain } from './to-explain.ts';
import { lastSlip, type OwnPads, slipTargets } from './undo.ts';

/** What the judge means by one press. */
export type Intent =
  | { readonly kind: 'count' }
  | { readonly kind: 'caution' }
  | { readonly kind: 'no-rep'; readonly faults: readonly string[] }
  | { readonly kind: 'explain'; readonly fault: string }
  | { readonly kind: 'last-was-no-rep' }
  | { readonly kind: 'slip' }
  | { readonly kind: 'put-back' }
  | { readonly kind: 'break' }
  | { readonly kind: 'mark'; readonly metres: number }
  | { readonly kind: 'finish' }
  | { readonly kind: 'abandon'; readonly reason: string };

/** What the screen knows when the press comes. */
export interface Moment {
  readonly goal: Goal;
  readonly sheet: Pick<StandardSheet, 'faults'>;
  readonly state: SetState;
  readonly log: readonly SetEvent[];
  readonly own: OwnPads;
}

/** Why a press did nothing; told in words, never silently. */
export type Nothing =
  | 'not-running'
  | 'time-is-up'
  | 'no-slip-left'
  | 'nothing-to-put-back'
  | 'no-counted-rep'
  | 'nothing-to-explain'
  | 'mark-goes-back';

export type Outcome =
  | { readonly kind: 'counted'; readonly count: number }
  | { readonly kind: 'caution'; readonly count: number }
  | { readonly kind: 'no-rep' }
  | { readonly kind: 'explained' }
  | { readonly kind: 'reversed' }
  | { readonly kind: 'withdrawn' }
  | { readonly kind: 'put-back' }
  | { readonly kind: 'break'; readonly running: boolean }
  | { readonly kind: 'mark'; readonly metres: number }
  | { readonly kind: 'finished' }
  | { readonly kind: 'abandoned' }
  | { readonly kind: 'nothing'; readonly why: Nothing };

/** The events that a press adds to the log, in order, and what the judge hears and sees of it. */
export interface Decision {
  readonly drafts: readonly Draft[];
  readonly outcome: Outcome;
  /** The set ended with this press: the goal is reached, or time was up. */
  readonly ended: boolean;
}

function nothing(why: Nothing): Decision {
  return { drafts: [], outcome: { kind: 'nothing', why }, ended: false };
}

/** `at` milliseconds since go, of the press itself; whole and not negative whatever the clock said. */
export function decide(intent: Intent, at: number, moment: Moment): Decision {
  const time = wholeTime(at);
  if (intent.kind === 'slip') return slip(time, moment);
  if (intent.kind === 'put-back') return putBack(time, moment);
  if (intent.kind === 'last-was-no-rep') return reverseLast(time, moment);
  if (intent.kind === 'explain') return explain(intent.fault, time, moment);
  if (moment.state.phase !== 'running') return nothing('not-running');
  if (moment.goal.kind === 'clock' && time >= moment.goal.milliseconds && intent.kind !== 'abandon') {
    return {
      drafts: [{ kind: 'finish', at: moment.goal.milliseconds }],
      outcome: { kind: 'nothing', why: 'time-is-up' },
      ended: true,
    };
  }
  return running(intent, time, moment);
}

/** The finish of a set against the clock, at exactly its goal; null while time is left or where nothing runs. */
export function finishByClock(clock: number, moment: Pick<Moment, 'goal' | 'state'>): Draft | null {
  const { goal, state } = moment;
  if (goal.kind !== 'clock' || state.phase !== 'running' || clock < goal.milliseconds) return null;
  return { kind: 'finish', at: goal.milliseconds };
}

function wholeTime(at: number): number {
  return Number.isFinite(at) ? Math.max(0, Math.round(at)) : 0;
}

type Running = Exclude<Intent, { kind: 'slip' | 'put-back' | 'last-was-no-rep' | 'explain' }>;

function running(intent: Running, at: number, moment: Moment): Decision {
  const { state } = moment;
  switch (intent.kind) {
    case 'count':
    case 'caution': {
      const kind = intent.kind === 'count' ? 'counted' : 'caution';
      const call: Draft = { kind: 'call', at, verdict: kind, faults: [] };
      return ending([call], { kind, count: tally(state).counted + 1 }, at, moment);
    }
    case 'no-rep':
      return open({ kind: 'call', at, verdict: 'no-rep', faults: [...intent.faults] }, { kind: 'no-rep' });
    case 'break': {
      const stopped = state.breaks.at(-1)?.end === null;
      return open({ kind: stopped ? 'break-end' : 'break-start', at }, { kind: 'break', running: !stopped });
    }
    case 'mark': {
      if (intent.metres < tally(state).metres) return nothing('mark-goes-back');
      const mark: Draft = { kind: 'mark', at, metres: intent.metres };
      return ending([mark], { kind: 'mark', metres: intent.metres }, at, moment);
    }
    case 'finish':
      return { drafts: [{ kind: 'finish', at }], outcome: { kind: 'finished' }, ended: true };
    case 'abandon':
      return { drafts: [{ kind: 'abandon', at, reason: intent.reason }], outcome: { kind: 'abandoned' }, ended: true };
  }
}

function open(draft: Draft, outcome: Outcome): Decision {
  return { drafts: [draft], outcome, ended: false };
}

/** Adds the finish where the press reaches the goal, at the very time of that press. */
function ending(drafts: readonly Draft[], outcome: Outcome, at: number, { goal, state }: Moment): Decision {
  const counted = goal.kind === 'reps' && outcome.kind !== 'mark' && tally(state).counted + 1 >= goal.reps;
  const reached = goal.kind === 'metres' && outcome.kind === 'mark' && outcome.metres >= goal.metres;
  if (!counted && !reached) return { drafts, outcome, ended: false };
  return { drafts: [...drafts, { kind: 'finish', at }], outcome, ended: true };
}

function explain(code: string, at: number, { state, sheet }: Moment): Decision {
  const target = toExplain(state);
  if (target === null || !sheet.faults.some((fault) => fault.code === code)) return nothing('nothing-to-explain');
  return open({ kind: 'explain', at, of: target.ref, faults: [code] }, { kind: 'explained' });
}

/** Turns the last counted rep into a no-rep; where the set had just ended with it, the finish is withdrawn and it runs on. */
function reverseLast(at: number, moment: Moment): Decision {
  const { state } = moment;
  if (state.phase === 'ready') return nothing('not-running');
  const last = state.attempts.findLast((attempt) => counts(attempt));
  if (last === undefined) return nothing('no-counted-rep');
  const reverse: Draft = { kind: 'reverse', at, of: last.ref, verdict: 'no-rep', faults: [], by: null, reason: '' };
  const runOn = finishToWithdraw(last.ref, moment);
  const drafts: Draft[] = runOn === null ? [reverse] : [reverse, { kind: 'slip', at, of: runOn }];
  return { drafts, outcome: { kind: 'reversed' }, ended: false };
}

/** The finish of a set of reps that no longer has its reps once this call does not count. */
function finishToWithdraw(call: EventRef, { goal, state, log }: Moment): EventRef | null {
  if (goal.kind !== 'reps' || state.phase !== 'finished' || state.endedBy === null) return null;
  const without = state.attempts.filter((attempt) => refKey(attempt.ref) !== refKey(call));
  if (goalReached(goal, { attempts: without, marks: state.marks }, 0)) return null;
  const finish = log.find((event) => state.endedBy !== null && refKey(event) === refKey(state.endedBy));
  return finish === undefined ? null : { pad: finish.pad, seq: finish.seq };
}

function slip(at: number, { log, own, goal, state }: Moment): Decision {
  let targets = slipTargets(log, own);
  // Time that is up stays up: only what was called before can be withdrawn.
  if (goal.kind === 'clock' && targets[0]?.kind === 'finish' && at >= goal.milliseconds) {
    const finish = targets[0];
    targets = slipTargets(
      log.filter((event) => event !== finish),
      own,
    );
  }
  if (state.phase === 'ready' || targets.length === 0) return nothing('no-slip-left');
  const drafts = targets.map((event): Draft => ({ kind: 'slip', at, of: { pad: event.pad, seq: event.seq } }));
  return { drafts, outcome: { kind: 'withdrawn' }, ended: false };
}

function putBack(at: number, { log, own }: Moment): Decision {
  const last = lastSlip(log, own);
  if (last === null) return nothing('nothing-to-put-back');
  return open({ kind: 'slip', at, of: { pad: last.pad, seq: last.seq } }, { kind: 'put-back' });
}
