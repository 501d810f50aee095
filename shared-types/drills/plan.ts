import { BUILDS } from '../motion/body.ts';
import { mixSeed, random } from '../motion/random.ts';
import { type FaultCode, type Margins, type RepSpecification, specify } from '../motion/specification.ts';
import type { StreamSpecification } from '../motion/stream.ts';
import type { Drill, Place, TaskOf } from './drill.ts';
import type { DrillEventOf } from './events.ts';
import { type LineMemory, lineNext } from './line.ts';
import { toleranceOf } from './range.ts';
import { singleMargins } from './single.ts';
import { standShowing } from './stand.ts';
import type { DrillState } from './state.ts';
import { streamPlan } from './stream.ts';

/** What a drill does next. */
export type DrillStep =
  | { readonly kind: 'rep'; readonly trial: number; readonly specification: RepSpecification; readonly place: Place }
  | { readonly kind: 'stream'; readonly specification: StreamSpecification; readonly place: Place }
  /** The rep that was shown last has no call yet; in a stream, that it runs. */
  | { readonly kind: 'wait' }
  /** All is done: write an `end` with this reason. */
  | { readonly kind: 'end'; readonly why: Exclude<DrillEventOf<'end'>['why'], 'stopped'> }
  | { readonly kind: 'ended' };

/**
 * What comes next, from the drill and its log alone: the same drill with the same calls goes the same way, on any screen and
 * without asking the desk. Takes a few milliseconds in an adapting drill, less with a `memory` kept from step to step.
 */
export function nextStep(drill: Drill, state: DrillState, memory: LineMemory = {}): DrillStep {
  if (state.phase === 'ended') return { kind: 'ended' };
  const { task } = drill;
  if (task.kind === 'stream') {
    return state.stream === null
      ? { kind: 'stream', specification: streamOf(drill, task), place: task.place }
      : { kind: 'wait' };
  }
  const last = state.trials.at(-1);
  if (last !== undefined && last.call === null && !last.spoilt) return { kind: 'wait' };
  // A spoilt rep is made up for: its place in the plan comes again.
  const done = state.trials.filter((trial) => !trial.spoilt);
  const trial = state.trials.length;
  const rep = (margins: Margins, place: Place, repSeed = mixSeed(drill.seed, 1_000 + trial)): DrillStep => ({
    kind: 'rep',
    trial,
    specification: repOf(drill, margins, repSeed),
    place,
  });
  switch (task.kind) {
    case 'single':
      if (done.length >= task.reps) return { kind: 'end', why: 'all-shown' };
      return rep(singleMargins(drill, task, done.length), task.place);
    case 'line': {
      const next = lineNext(drill, task, done, memory);
      if ('why' in next) return { kind: 'end', why: next.why };
      return rep({ [task.fault]: next.margin - toleranceOf(drill, task.fault) }, task.place);
    }
    case 'place': {
      if (done.length >= 2 * task.reps) return { kind: 'end', why: 'all-shown' };
      const { margin, pair, place } = standShowing(drill, task, done.length);
      return rep({ [task.fault]: margin - toleranceOf(drill, task.fault) }, place, mixSeed(drill.seed, 100_000 + pair));
    }
  }
}

/** How far a drill has come: reps that count so far, and how many it will show at most. */
export function progressOf(drill: Drill, state: DrillState): { readonly done: number; readonly of: number } {
  const { task } = drill;
  const done = state.trials.filter((trial) => !trial.spoilt && (trial.call !== null || task.kind === 'stream')).length;
  const of = task.kind === 'line' ? task.mostTrials : task.kind === 'place' ? 2 * task.reps : task.reps;
  return { done, of };
}

function bodyFor(drill: Drill, seed: number): RepSpecification['athlete'] {
  if (drill.athlete !== null) return drill.athlete;
  const draw = random(mixSeed(seed, 5));
  const stature = Math.round(100 * draw.between(1.58, 1.9)) / 100;
  return { stature, build: BUILDS[Math.floor(draw.uniform() * BUILDS.length)] ?? 'medium' };
}

function repOf(drill: Drill, margins: Margins, seed: number): RepSpecification {
  return specify({
    movement: drill.movement,
    athlete: bodyFor(drill, seed),
    sheet: drill.numbers,
    cadence: drill.cadence,
    margins,
    fatigue: 0,
    variation: drill.variation,
    seed,
    styleSeed: seed,
    first: true,
  });
}

function streamOf(drill: Drill, task: TaskOf<'stream'>): StreamSpecification {
  return {
    movement: drill.movement,
    athlete: bodyFor(drill, drill.seed),
    sheet: drill.numbers,
    cadence: drill.cadence,
    reps: task.reps,
    fatigue: task.fatigue,
    variation: drill.variation,
    seed: drill.seed,
    plan: streamPlan(drill, task),
  };
}

/** The one fault that a drill is about; null where several may come. */
export function soleFault(drill: Pick<Drill, 'task'>): FaultCode | null {
  const { task } = drill;
  if (task.kind === 'line' || task.kind === 'place') return task.fault;
  return task.faults.length === 1 ? (task.faults[0] ?? null) : null;
}
