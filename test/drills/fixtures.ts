import type { Drill, Task, TaskOf } from '../../shared-types/drills/drill.ts';
import { type DrillEvent, type DrillEventKind, drillEvent } from '../../shared-types/drills/events.ts';
import { numbersOf } from '../../shared-types/drills/numbers.ts';
import { advisedPlace } from '../../shared-types/drills/places.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';
import { judge } from '../desk/fixtures.ts';

export const side = advisedPlace('wall-throw', 'depth');

export const singleTask: TaskOf<'single'> = {
  kind: 'single',
  reps: 12,
  faults: [],
  faultShare: 0.5,
  size: 'usual',
  place: side,
};
export const lineTask: TaskOf<'line'> = {
  kind: 'line',
  fault: 'depth',
  leastTrials: 12,
  mostTrials: 40,
  narrow: 1.5,
  place: side,
};

/** A drill on wall throws by an invented judge. */
export function wallDrill(task: Task = singleTask, change: Partial<Drill> = {}): Drill {
  return {
    id: '00000000-0000-4000-8000-00000000d001',
    judge: judge.id,
    sheet: { id: 'wall-throw', version: 1 },
    movement: 'wall-throw',
    numbers: numbersOf(wallThrow, 3),
    task,
    athlete: { stature: 1.75, build: 'medium' },
    cadence: 24,
    variation: 1,
    seed: 7,
    practice: false,
    createdAt: 1_780_000_000_000,
    ...change,
  };
}

/** Margins of a clean throw. */
export const CLEAN = { depth: 4, line: 10, aim: 15, stand: 8, bounce: null };

/** Writes a log event by event, numbered and a second apart; every event is checked against the schema. */
export class LogWriter {
  readonly events: DrillEvent[] = [];
  private readonly drill: Drill;
  private readonly pad: string;

  constructor(drill: Drill, pad = 'pad-a') {
    this.drill = drill;
    this.pad = pad;
    this.put('begin', { wallClock: drill.createdAt });
  }

  put(kind: DrillEventKind, body: object): DrillEvent {
    const seq = this.events.length + 1;
    const event = drillEvent.parse({ drill: this.drill.id, pad: this.pad, seq, at: 1_000 * seq, kind, ...body });
    this.events.push(event);
    return event;
  }

  rep(trial: number, margins: object = {}, change: object = {}): DrillEvent {
    const specification = {
      athlete: { stature: 1.75, build: 'medium' },
      cadence: 24,
      margins: {},
      fatigue: 0,
      variation: 1,
      seed: trial,
      styleSeed: trial,
      first: true,
    };
    return this.put('rep', {
      trial,
      specification,
      place: side,
      margins: { ...CLEAN, ...margins },
      durationMs: 2_700,
      dueMs: 1_700,
      seenMs: 1_700,
      ...change,
    });
  }

  /** Faults named: a no-rep; null: counted; an empty list: a no-rep without a reason. */
  call(trial: number | null, faults: string[] | null, afterMs = 2_200, change: object = {}): DrillEvent {
    const verdict = faults === null ? 'counted' : 'no-rep';
    return this.put('call', { trial, afterMs, verdict, faults: faults ?? [], place: null, ...change });
  }
}
