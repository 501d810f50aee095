import type { Place } from '../../../../shared-types/drills/drill.ts';
import type { DrillEventOf } from '../../../../shared-types/drills/events.ts';
import { nextStep } from '../../../../shared-types/drills/plan.ts';
import { type ShownRep, type ShownStream, showRep, showStream } from '../../../../shared-types/drills/show.ts';
import type { EventRef, Verdict } from '../../../../shared-types/log/events.ts';
import { type Observable, settable } from '../../../link/observable.ts';
import type { DrillLog } from './drill-log.ts';

export interface RunCall {
  readonly verdict: Verdict;
  readonly faults: readonly string[];
  /** Milliseconds since the rep, or the stream, began. */
  readonly afterMs: number;
  readonly ref: EventRef;
}

/** What is going on. Time stamps are those of the page's monotonic clock, milliseconds. */
export type Phase =
  | { readonly kind: 'ready' }
  | { readonly kind: 'rep'; readonly shown: ShownRep; readonly startAt: number; readonly call: RunCall | null }
  | { readonly kind: 'feedback'; readonly shown: ShownRep; readonly call: RunCall }
  | { readonly kind: 'making' }
  | {
      readonly kind: 'stream';
      readonly shown: ShownStream;
      readonly startAt: number;
      readonly calls: readonly RunCall[];
    }
  | { readonly kind: 'paused'; readonly why: Spoilt }
  | { readonly kind: 'done' };

type Spoilt = DrillEventOf<'spoil'>['why'];

/**
 * Milliseconds: how long the athlete stands before a rep and before a stream; how long a call can be withdrawn before the
 * truth or the next rep comes; how long calls of a stream's last rep are waited for after its end; for how long a drawing may
 * stand still before it has hidden something.
 * @internal exported for the tests, which move the clock by it
 */
export const PACE = { leadRep: 900, leadStream: 3_000, noted: 800, lastCalls: 2_500, stuck: 600 } as const;

/**
 * A drill as it runs on this page: what is shown when, which calls count, what the log gets. It reads no clock: `tick` and
 * every deed are told the time.
 */
export class DrillRun {
  readonly phase: Observable<Phase>;
  readonly log: DrillLog;
  private readonly current = settable<Phase>({ kind: 'ready' });
  private logged = false;
  private hiddenSince: number | null = null;

  constructor(log: DrillLog) {
    this.log = log;
    this.phase = this.current;
    if (log.state.get().phase === 'ended') this.current.set({ kind: 'done' });
  }

  private get drill() {
    return this.log.drill;
  }

  begin(now: number, wallClock: number): void {
    if (this.current.get().kind !== 'ready') return;
    const state = this.log.state.get();
    if (state.phase === 'ready') this.log.put({ kind: 'begin', wallClock: Math.round(wallClock) });
    else if (this.takeUp()) return;
    this.next(now);
  }

  /** After a page was loaded anew: what was under way cannot go on. @returns true where the drill is over */
  private takeUp(): boolean {
    const state = this.log.state.get();
    if (state.stream !== null) {
      this.finish('stopped');
      return true;
    }
    const last = state.trials.at(-1);
    if (last !== undefined && last.call === null && !last.spoilt) this.spoil(last.trial, 0, last.endMs, 'asked');
    return false;
  }

  /** Shows what comes next; a stream is made first, which `make` does. */
  next(now: number): void {
    const step = nextStep(this.drill, this.log.state.get());
    switch (step.kind) {
      case 'rep': {
        const shown = showRep(this.drill, step.trial, step.specification, step.place);
        this.logged = false;
        this.current.set({ kind: 'rep', shown, startAt: now + PACE.leadRep, call: null });
        return;
      }
      case 'stream':
        this.current.set({ kind: 'making' });
        return;
      case 'end':
        this.finish(step.why);
        return;
      case 'wait':
      case 'ended':
        this.current.set({ kind: 'done' });
    }
  }

  /** Makes the stream that is due: some milliseconds a rep, so the screen says so first. `clock` is read when it is made. */
  make(clock: () => number): void {
    const step = nextStep(this.drill, this.log.state.get());
    if (this.current.get().kind !== 'making' || step.kind !== 'stream') return;
    const shown = showStream(this.drill, step.specification, step.place);
    this.logged = false;
    this.current.set({ kind: 'stream', shown, startAt: clock() + PACE.leadStream, calls: [] });
  }

  tick(now: number): void {
    const phase = this.current.get();
    if (phase.kind === 'rep') this.tickRep(phase, now);
    if (phase.kind !== 'stream' || now < phase.startAt) return;
    if (!this.logged) {
      this.logged = true;
      this.log.put(phase.shown.body);
    }
    if (now >= phase.startAt + 1_000 * phase.shown.stream.duration + PACE.lastCalls) this.finish('all-shown');
  }

  private tickRep(phase: Extract<Phase, { kind: 'rep' }>, now: number): void {
    if (now < phase.startAt) return;
    this.logRep(phase);
    if (phase.call === null) return;
    const noted = phase.startAt + phase.call.afterMs + PACE.noted;
    if (this.drill.task.kind !== 'single') {
      if (now >= noted) this.next(now);
      return;
    }
    const ended = phase.startAt + phase.shown.body.durationMs;
    if (now >= Math.max(noted, ended)) {
      this.current.set({ kind: 'feedback', shown: phase.shown, call: phase.call });
    }
  }

  private logRep(phase: Extract<Phase, { kind: 'rep' }>): void {
    if (this.logged) return;
    this.logged = true;
    this.log.put(phase.shown.body);
  }

  /**
   * The judge calls. @returns false where nothing can be called
   * @param place where the judge stood, when not at the place given
   */
  call(verdict: Verdict, faults: readonly string[], timeStamp: number, place: Place | null): boolean {
    const phase = this.current.get();
    if (phase.kind !== 'rep' && phase.kind !== 'stream') return false;
    if (timeStamp < phase.startAt || (phase.kind === 'rep' && phase.call !== null)) return false;
    this.tick(timeStamp);
    const afterMs = Math.round(timeStamp - phase.startAt);
    const trial = phase.kind === 'rep' ? phase.shown.body.trial : null;
    const { pad, seq } = this.log.put({ kind: 'call', trial, afterMs, verdict, faults: [...faults], place });
    const call: RunCall = { verdict, faults, afterMs, ref: { pad, seq } };
    if (phase.kind === 'rep') this.current.set({ ...phase, call });
    else this.current.set({ ...phase, calls: [...phase.calls, call] });
    return true;
  }

  /** Withdraws the last call while its truth has not been shown. @returns false where there is none */
  slip(): boolean {
    const phase = this.current.get();
    if (phase.kind === 'rep' && phase.call !== null) {
      this.log.put({ kind: 'slip', of: phase.call.ref });
      this.current.set({ ...phase, call: null });
      return true;
    }
    const last = phase.kind === 'stream' ? phase.calls.at(-1) : undefined;
    if (phase.kind !== 'stream' || last === undefined) return false;
    this.log.put({ kind: 'slip', of: last.ref });
    this.current.set({ ...phase, calls: phase.calls.slice(0, -1) });
    return true;
  }

  /** A frame came this many milliseconds after the one before. */
  frame(gap: number, now: number): void {
    if (gap < PACE.stuck || this.hiddenSince !== null) return;
    this.lost(now - gap, now, 'stuck');
  }

  /** The page went out of sight, or came back. */
  visible(seen: boolean, now: number): void {
    if (!seen) {
      this.hiddenSince ??= now;
      return;
    }
    const since = this.hiddenSince;
    this.hiddenSince = null;
    if (since !== null) this.lost(since, now, 'hidden');
  }

  /** The judge wants a break: a rep that runs is shown again. */
  pause(now: number): void {
    const phase = this.current.get();
    if (phase.kind !== 'rep' || phase.call !== null) return;
    if (now >= phase.startAt) {
      this.logRep(phase);
      this.spoil(phase.shown.body.trial, 0, Math.round(now - phase.startAt), 'asked');
    }
    this.current.set({ kind: 'paused', why: 'asked' });
  }

  resume(now: number): void {
    if (this.current.get().kind === 'paused') this.next(now);
  }

  stop(): void {
    this.finish('stopped');
  }

  /** Something between two time stamps was not seen: a rep that ran then is shown again, a stream's are left out. */
  private lost(from: number, to: number, why: Exclude<Spoilt, 'asked'>): void {
    const phase = this.current.get();
    if (phase.kind === 'rep' && phase.call === null) {
      const end = phase.startAt + phase.shown.body.durationMs;
      if (to <= phase.startAt) {
        if (why === 'hidden') this.current.set({ kind: 'paused', why });
        return;
      }
      if (from >= end) return;
      this.logRep(phase);
      this.spoil(phase.shown.body.trial, span(from, phase.startAt), span(to, phase.startAt), why);
      this.current.set({ kind: 'paused', why });
    }
    if (phase.kind !== 'stream' || to <= phase.startAt) return;
    this.tick(Math.min(to, phase.startAt + 1));
    this.spoil(null, span(from, phase.startAt), span(to, phase.startAt), why);
  }

  private spoil(trial: number | null, fromMs: number, toMs: number, why: Spoilt): void {
    this.log.put({ kind: 'spoil', trial, fromMs, toMs, why });
  }

  private finish(why: DrillEventOf<'end'>['why']): void {
    const state = this.log.state.get();
    if (state.phase === 'running') this.log.put({ kind: 'end', why });
    this.current.set({ kind: 'done' });
  }
}

const span = (timeStamp: number, startAt: number): number => Math.max(0, Math.round(timeStamp - startAt));
