import { type EventRef, refKey } from '../log/events.ts';
import { FAULTS, type FaultCode } from '../motion/specification.ts';
import type { Drill } from './drill.ts';
import type { DrillEvent, DrillEventKind, DrillEventOf, ShownMargins } from './events.ts';
import type { DrillCall, DrillClash, DrillClashKind, DrillState, DrillTrial } from './state.ts';

/**
 * Reads the log of a drill: the one function from events to what was shown, called and true. Total: any list of well-formed
 * events gives a state; what cannot follow is told under `clashes`. Rules: once by `(pad, seq)`; in the order of `at`, and
 * within a pad in that of `seq`; a withdrawn call counts for nothing; the first call of a rep stands; nothing counts after the end.
 */
export function foldDrill(drill: Drill, log: readonly DrillEvent[]): DrillState {
  const clashes: DrillClash[] = [];
  const events = inOrder(drill, log, clashes);
  const withdrawn = withdrawnCalls(events, clashes);
  const reader = new Reader(drill, withdrawn, clashes);
  for (const event of events) reader.read(event);
  return reader.state();
}

/** Codes whose margin lies below the sheet's tolerance, in the sheet's order. */
export function brokenFaults(drill: Pick<Drill, 'movement' | 'numbers'>, margins: ShownMargins): FaultCode[] {
  return FAULTS[drill.movement].filter((code) => {
    const margin = margins[code];
    return margin !== null && margin !== undefined && margin < -(drill.numbers.tolerance[code] ?? 0);
  });
}

function inOrder(drill: Drill, log: readonly DrillEvent[], clashes: DrillClash[]): DrillEvent[] {
  const byKey = new Map<string, DrillEvent>();
  for (const event of log) {
    if (event.drill !== drill.id) {
      clashes.push(clash('wrong-drill', event, 'it belongs to another drill'));
      continue;
    }
    const kept = byKey.get(refKey(event));
    if (kept === undefined) byKey.set(refKey(event), event);
    else if (kept !== event && canonical(kept) !== canonical(event)) {
      clashes.push(clash('changed-event', event, 'an event with this pad and number is already there, and differs'));
    }
  }
  // A clock that stepped back must not turn a pad's own order round: each event is read no earlier than its predecessor.
  const latest = new Map<string, number>();
  return [...byKey.values()]
    .sort((one, other) => one.seq - other.seq || (one.pad < other.pad ? -1 : 1))
    .map((event) => {
      const at = Math.max(event.at, latest.get(event.pad) ?? 0);
      latest.set(event.pad, at);
      return { event, at };
    })
    .sort((one, other) => one.at - other.at || rank(one.event) - rank(other.event) || one.event.seq - other.event.seq)
    .map(({ event }) => event);
}

/** Between pads, what happens in one millisecond is read beginning first and end last. */
function rank(event: DrillEvent): number {
  return event.kind === 'begin' ? 0 : event.kind === 'end' ? 2 : 1;
}

function withdrawnCalls(events: readonly DrillEvent[], clashes: DrillClash[]): ReadonlySet<string> {
  const calls = new Set<string>();
  const withdrawn = new Set<string>();
  for (const event of events) {
    if (event.kind === 'call') calls.add(refKey(event));
    if (event.kind !== 'slip') continue;
    const key = refKey(event.of);
    if (!calls.has(key)) clashes.push(clash('no-such-call', event, 'the call it withdraws is not in the log'));
    else if (withdrawn.has(key)) clashes.push(clash('already-withdrawn', event, 'the call is withdrawn already'));
    else withdrawn.add(key);
  }
  return withdrawn;
}

/** Walks the ordered log once. */
class Reader {
  private begun: DrillEventOf<'begin'> | null = null;
  private ended: DrillEventOf<'end'> | null = null;
  private stream: DrillEventOf<'stream'> | null = null;
  private trials: DrillTrial[] = [];
  private readonly calls: DrillCall[] = [];
  private readonly drill: Drill;
  private readonly withdrawn: ReadonlySet<string>;
  private readonly clashes: DrillClash[];

  constructor(drill: Drill, withdrawn: ReadonlySet<string>, clashes: DrillClash[]) {
    this.drill = drill;
    this.withdrawn = withdrawn;
    this.clashes = clashes;
  }

  read(event: DrillEvent): void {
    if (event.kind === 'slip') return;
    if (event.kind === 'begin') {
      if (this.begun !== null) return this.note('already-begun', event, 'the drill has already begun');
      this.begun = event;
    } else if (this.begun === null) {
      this.note('not-begun', event, 'the drill has not begun');
    } else if (this.ended !== null) {
      this.note('after-end', event, 'the drill has ended');
    } else {
      this.readRunning(event);
    }
  }

  private readRunning(event: Exclude<DrillEvent, { kind: 'begin' | 'slip' }>): void {
    const live = this.drill.task.kind === 'stream';
    switch (event.kind) {
      case 'rep':
        if (live) return this.note('wrong-kind', event, 'a live stream has no single reps');
        if (event.trial !== this.trials.length) return this.note('shown-already', event, 'it is not the next rep');
        this.trials.push(this.trialOf(event));
        return;
      case 'stream':
        if (!live) return this.note('wrong-kind', event, 'this drill has no stream');
        if (this.stream !== null) return this.note('shown-already', event, 'the stream has already begun');
        this.stream = event;
        this.trials = event.reps.map((rep, trial) => ({
          ...this.trialOf({ ...rep, trial, place: event.place }),
          startMs: rep.startMs,
          endMs: rep.endMs,
        }));
        return;
      case 'call':
        if (!this.withdrawn.has(refKey(event))) this.readCall(event, live);
        return;
      case 'spoil':
        this.readSpoil(event, live);
        return;
      case 'end':
        this.ended = event;
    }
  }

  private trialOf(shown: {
    readonly trial: number;
    readonly place: DrillTrial['place'];
    readonly margins: ShownMargins;
    readonly dueMs: number;
    readonly seenMs: number;
    readonly durationMs?: number;
    readonly specification?: DrillTrial['specification'];
  }): DrillTrial {
    return {
      trial: shown.trial,
      place: shown.place,
      margins: shown.margins,
      broken: brokenFaults(this.drill, shown.margins),
      startMs: 0,
      endMs: shown.durationMs ?? 0,
      dueMs: shown.dueMs,
      seenMs: shown.seenMs,
      call: null,
      spoilt: false,
      specification: shown.specification ?? null,
    };
  }

  private readCall(event: DrillEventOf<'call'>, live: boolean): void {
    const { afterMs, verdict, faults, place } = event;
    const call: DrillCall = { ref: refOf(event), afterMs, verdict, faults, place };
    if (live) {
      if (this.stream === null) return this.note('no-such-rep', event, 'no rep has been shown yet');
      this.calls.push(call);
      return;
    }
    const trial = event.trial === null ? undefined : this.trials[event.trial];
    if (trial === undefined) return this.note('no-such-rep', event, 'no such rep has been shown');
    if (trial.call !== null) return this.note('called-already', event, 'the rep has its call');
    this.trials[trial.trial] = { ...trial, call };
  }

  private readSpoil(event: DrillEventOf<'spoil'>, live: boolean): void {
    if (live) {
      this.trials = this.trials.map((trial) =>
        trial.startMs < event.toMs && event.fromMs < trial.endMs ? { ...trial, spoilt: true } : trial,
      );
      return;
    }
    const trial = event.trial === null ? undefined : this.trials[event.trial];
    if (trial === undefined) return this.note('no-such-rep', event, 'no such rep has been shown');
    this.trials[trial.trial] = { ...trial, spoilt: true };
  }

  private note(kind: DrillClashKind, event: DrillEvent, why: string): void {
    this.clashes.push(clash(kind, event, why));
  }

  state(): DrillState {
    return {
      phase: this.ended !== null ? 'ended' : this.begun !== null ? 'running' : 'ready',
      startedAt: this.begun?.wallClock ?? null,
      endedBecause: this.ended?.why ?? null,
      trials: this.trials,
      calls: this.calls.toSorted((one, other) => one.afterMs - other.afterMs),
      stream: this.stream,
      slips: this.withdrawn.size,
      clashes: this.clashes,
    };
  }
}

function refOf(event: { readonly pad: string; readonly seq: number }): EventRef {
  return { pad: event.pad, seq: event.seq };
}

function clash(kind: DrillClashKind, event: DrillEvent & { readonly kind: DrillEventKind }, why: string): DrillClash {
  return { kind, event: refOf(event), eventKind: event.kind, message: `The ${event.kind} has no effect: ${why}.` };
}

function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
