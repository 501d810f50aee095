import { type EventOf, type EventRef, refKey, type SetEvent, type Verdict } from './events.ts';
import { orderEvents } from './order.ts';
import type { Goal } from './setup.ts';
import type { Appeal, Attempt, Break, CallChange, Clash, ClashKind, Counts, Mark, Phase, SetState } from './state.ts';

/**
 * Reads a log: the one function from events to the state of a set. Total: any list of well-formed events gives a state;
 * what cannot follow is listed under `clashes` and has no effect. The rules it keeps are numbered in README.md.
 */
export function foldSet(setId: string, log: readonly SetEvent[]): SetState {
  const { events, byKey, conflicts } = orderEvents(log.filter((event) => event.set === setId));
  const clashes: Clash[] = [];
  for (const event of log) {
    if (event.set !== setId) clashes.push(clash('wrong-set', event, 'it belongs to another set'));
  }
  for (const { refused } of conflicts) {
    clashes.push(clash('changed-event', refused, 'an event with this pad and number is already there, and differs'));
  }
  const { withdrawn, slips } = readSlips(events, byKey, clashes);
  const reader = new Reader(withdrawn, byKey, clashes);
  for (const event of events) reader.read(event);
  return reader.state(events, slips);
}

/** Rule 7: which events stand withdrawn at the end of the log. A slip of a slip restores. */
function readSlips(events: readonly SetEvent[], byKey: ReadonlyMap<string, SetEvent>, clashes: Clash[]) {
  const accepted: EventOf<'slip'>[] = [];
  let withdrawn = new Set<string>();
  const seen = new Set<string>();
  for (const event of events) {
    seen.add(refKey(event));
    if (event.kind !== 'slip') continue;
    const key = refKey(event.of);
    const target = byKey.get(key);
    if (target === undefined || !seen.has(key)) {
      clashes.push(clash('no-such-event', event, 'what it withdraws is not in the log'));
    } else if (target.kind === 'go') {
      clashes.push(clash('wrong-target', event, 'a go cannot be withdrawn; abandon the set instead'));
    } else if (withdrawn.has(key)) {
      clashes.push(clash('already-withdrawn', event, 'what it withdraws is withdrawn already'));
    } else {
      accepted.push(event);
      if (target.kind === 'slip') withdrawn = withdrawnBy(accepted);
      else withdrawn.add(key);
    }
  }
  const standing = accepted.filter((slip) => !withdrawn.has(refKey(slip)));
  return { withdrawn, slips: standing.filter((slip) => byKey.get(refKey(slip.of))?.kind !== 'slip').length };
}

/** From the last slip back: one that a later slip withdrew withdraws nothing. */
function withdrawnBy(slips: readonly EventOf<'slip'>[]): Set<string> {
  const withdrawn = new Set<string>();
  for (const slip of slips.toReversed()) {
    if (!withdrawn.has(refKey(slip))) withdrawn.add(refKey(slip.of));
  }
  return withdrawn;
}

interface OpenAttempt {
  readonly event: EventOf<'call'>;
  readonly withdrawn: boolean;
  readonly changes: CallChange[];
  verdict: Verdict;
  faults: readonly string[];
}

/** Walks the ordered log once; holds what is known so far. */
class Reader {
  private phase: Phase = 'ready';
  private go: EventOf<'go'> | null = null;
  private end: EventOf<'finish'> | EventOf<'abandon'> | null = null;
  private readonly attempts = new Map<string, OpenAttempt>();
  private readonly breaks: Break[] = [];
  private readonly marks: Mark[] = [];
  private readonly appeals = new Map<string, Appeal>();
  private signOff: EventOf<'sign-off'> | null = null;
  private reversals = 0;
  private readonly withdrawn: ReadonlySet<string>;
  private readonly byKey: ReadonlyMap<string, SetEvent>;
  private readonly clashes: Clash[];

  constructor(withdrawn: ReadonlySet<string>, byKey: ReadonlyMap<string, SetEvent>, clashes: Clash[]) {
    this.withdrawn = withdrawn;
    this.byKey = byKey;
    this.clashes = clashes;
  }

  read(event: SetEvent): void {
    if (event.kind === 'slip') return;
    const withdrawn = this.withdrawn.has(refKey(event));
    // A withdrawn call is still listed, and a withdrawn word on a call too; of the rest nothing is left to read.
    if (withdrawn && event.kind !== 'call' && event.kind !== 'reverse' && event.kind !== 'explain') return;
    if (event.kind === 'go') {
      this.readGo(event);
    } else if (this.phase === 'ready') {
      this.note('not-started', event, 'the set has not begun');
    } else if (event.kind === 'explain' || event.kind === 'reverse') {
      this.readChange(event, withdrawn);
    } else if (event.kind === 'appeal') {
      this.readAppeal(event);
    } else if (event.kind === 'sign-off') {
      this.signOff = event;
    } else if (this.phase !== 'running') {
      this.note('after-end', event, 'the set has ended');
    } else {
      this.readRunning(event, withdrawn);
    }
  }

  private readGo(event: EventOf<'go'>): void {
    if (this.go !== null) return this.note('already-started', event, 'the set has already begun');
    this.go = event;
    this.phase = 'running';
  }

  private readRunning(
    event: EventOf<'call' | 'break-start' | 'break-end' | 'mark' | 'finish' | 'abandon'>,
    withdrawn: boolean,
  ): void {
    switch (event.kind) {
      case 'call':
        if (!withdrawn) this.closeBreak(event.at, 'call');
        this.attempts.set(refKey(event), {
          event,
          withdrawn,
          changes: [],
          verdict: event.verdict,
          faults: event.faults,
        });
        return;
      case 'break-start':
        if (this.breaks.at(-1)?.end === null) return this.note('break-open', event, 'a break is already running');
        this.breaks.push({ ref: refOf(event), start: event.at, end: null, closedBy: null });
        return;
      case 'break-end':
        if (!this.closeBreak(event.at, 'judge')) this.note('no-break-open', event, 'no break is running');
        return;
      case 'mark':
        if (event.metres < (this.marks.at(-1)?.metres ?? 0)) {
          return this.note('mark-goes-back', event, 'it lies behind an earlier mark; withdraw that one first');
        }
        this.marks.push({ ref: refOf(event), at: event.at, metres: event.metres });
        return;
      case 'finish':
      case 'abandon':
        this.closeBreak(event.at, 'end');
        this.end = event;
        this.phase = event.kind === 'finish' ? 'finished' : 'abandoned';
    }
  }

  /** Closes the running break, if there is one, not before it began. */
  private closeBreak(at: number, closedBy: 'judge' | 'call' | 'end'): boolean {
    const running = this.breaks.at(-1);
    if (running === undefined || running.end !== null) return false;
    this.breaks[this.breaks.length - 1] = { ...running, end: Math.max(at, running.start), closedBy };
    return true;
  }

  private readChange(event: EventOf<'reverse'> | EventOf<'explain'>, withdrawn: boolean): void {
    const attempt = this.callOf(event, withdrawn);
    if (attempt === null) return;
    if (event.kind === 'explain' && attempt.verdict === 'counted' && !withdrawn) {
      return this.note('wrong-target', event, 'the rep counted; there is no fault to explain');
    }
    attempt.changes.push({ event, withdrawn });
    if (withdrawn) return;
    attempt.faults = event.faults;
    if (event.kind === 'reverse') {
      attempt.verdict = event.verdict;
      this.reversals += 1;
    }
  }

  private readAppeal(event: EventOf<'appeal'>): void {
    if (this.callOf(event, false) === null) return;
    const key = refKey(event.of);
    const earlier = this.appeals.get(key);
    this.appeals.set(key, { event: earlier?.event ?? event, outcome: event.outcome });
  }

  /** The call that a later event speaks of; null, with the clash noted, where there is none that stands. */
  private callOf(event: EventOf<'reverse' | 'explain' | 'appeal'>, quiet: boolean): OpenAttempt | null {
    const target = this.byKey.get(refKey(event.of));
    const attempt = this.attempts.get(refKey(event.of));
    if (attempt !== undefined && (!attempt.withdrawn || quiet)) return attempt;
    if (quiet) return null;
    if (target === undefined) this.note('no-such-event', event, 'the call it speaks of is not in the log');
    else if (target.kind !== 'call') this.note('wrong-target', event, `it speaks of a ${target.kind}, not of a call`);
    else if (attempt === undefined) this.note('no-such-event', event, 'the call it speaks of has no effect itself');
    else this.note('already-withdrawn', event, 'the call it speaks of is withdrawn');
    return null;
  }

  private note(kind: ClashKind, event: SetEvent, why: string): void {
    this.clashes.push(clash(kind, event, why));
  }

  state(events: readonly SetEvent[], slips: number): SetState {
    return {
      phase: this.phase,
      startedAt: this.go?.wallClock ?? null,
      endedAt: this.end?.at ?? null,
      endedBy: this.end === null ? null : refOf(this.end),
      attempts: [...this.attempts.values()].map(asAttempt),
      breaks: this.breaks,
      marks: this.marks,
      appeals: [...this.appeals.values()],
      signOff: this.signOff,
      slips,
      reversals: this.reversals,
      clashes: this.clashes,
      events: events.length,
      lastAt: events.reduce((latest, event) => Math.max(latest, event.at), 0),
    };
  }
}

function asAttempt(open: OpenAttempt): Attempt {
  const { event, withdrawn, changes, verdict, faults } = open;
  return {
    ref: refOf(event),
    at: event.at,
    first: { verdict: event.verdict, faults: event.faults },
    changes,
    verdict,
    faults,
    withdrawn,
  };
}

function refOf(event: SetEvent): EventRef {
  return { pad: event.pad, seq: event.seq };
}

function clash(kind: ClashKind, event: SetEvent, why: string): Clash {
  return { kind, event: refOf(event), eventKind: event.kind, message: `The ${event.kind} has no effect: ${why}.` };
}

/** Whether an attempt counts for the athlete. */
export function counts(attempt: Pick<Attempt, 'verdict' | 'withdrawn'>): boolean {
  return !attempt.withdrawn && attempt.verdict !== 'no-rep';
}

/** The tally of a state. */
export function tally(state: Pick<SetState, 'attempts' | 'marks'>): Counts {
  const standing = state.attempts.filter((attempt) => !attempt.withdrawn);
  const noReps = standing.filter((attempt) => attempt.verdict === 'no-rep');
  return {
    attempts: standing.length,
    counted: standing.length - noReps.length,
    cautions: standing.filter((attempt) => attempt.verdict === 'caution').length,
    noReps: noReps.length,
    unexplained: noReps.filter((attempt) => attempt.faults.length === 0).length,
    metres: state.marks.at(-1)?.metres ?? 0,
  };
}

/** Whether the goal is reached at `clock` milliseconds since go. An open set ends on purpose only. */
export function goalReached(goal: Goal, state: Pick<SetState, 'attempts' | 'marks'>, clock: number): boolean {
  switch (goal.kind) {
    case 'reps':
      return tally(state).counted >= goal.reps;
    case 'metres':
      return tally(state).metres >= goal.metres;
    case 'clock':
      return clock >= goal.milliseconds;
    case 'open':
      return false;
  }
}
