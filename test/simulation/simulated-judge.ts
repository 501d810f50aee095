import type { RandomGenerator } from '../../main/analysis/random/generator.ts';
import { randomNormal } from '../../main/analysis/random/variates.ts';
import type { Drill, Task } from '../../shared-types/drills/drill.ts';
import type { DrillEvent, ShownMargins } from '../../shared-types/drills/events.ts';
import type { Eye } from '../../shared-types/drills/eye.ts';
import { foldDrill } from '../../shared-types/drills/fold.ts';
import { nextStep } from '../../shared-types/drills/plan.ts';
import { toleranceOf } from '../../shared-types/drills/range.ts';
import type { DrillState } from '../../shared-types/drills/state.ts';
import { UNASKED } from '../../shared-types/motion/movement.ts';
import { plannedMargins } from '../../shared-types/motion/rep.ts';
import {
  FAULTS,
  type FaultCode,
  type MovementName,
  type RepSpecification,
  USUAL_NUMBERS,
} from '../../shared-types/motion/specification.ts';
import { streamReps } from '../../shared-types/motion/stream.ts';

/** A judge who sees each fault's margin with noise of their own; a fault without an eye is never seen. */
export interface SimulatedJudge {
  readonly eyes: Partial<Readonly<Record<FaultCode, Eye>>>;
  /** From the poor place of a drill on places. */
  readonly poorEyes?: Partial<Readonly<Record<FaultCode, Eye>>>;
  /** Share of a stream's reps for which the judge forgets to press. */
  readonly forgets?: number;
}

const DRILL = '00000000-0000-4000-8000-00000000d001';

/** A drill on an invented sheet with the usual numbers. */
export function drillOf(movement: MovementName, task: Task, seed: number, change: Partial<Drill> = {}): Drill {
  return {
    id: DRILL,
    judge: '00000000-0000-4000-8000-000000000002',
    sheet: { id: movement, version: 1 },
    movement,
    numbers: { ...USUAL_NUMBERS, tolerance: {} },
    task,
    athlete: null,
    cadence: 24,
    variation: 1,
    seed: seed >>> 0,
    practice: false,
    createdAt: 1_780_000_000_000,
    ...change,
  };
}

/**
 * What the figure would show of a rep, without making its motion: the margins it is made for, which the motion meets within
 * a fifth of a centimetre (that is the motion's own test), here with an error of that size.
 */
function shownMargins(specification: RepSpecification, generator: RandomGenerator): ShownMargins {
  const planned = plannedMargins(specification);
  const shown: ShownMargins = {};
  for (const code of FAULTS[specification.movement]) {
    shown[code] = planned[code] >= UNASKED ? null : planned[code] + 0.1 * (generator.uniform() - 0.5);
  }
  return shown;
}

function callFor(judge: SimulatedJudge, drill: Drill, margins: ShownMargins, poor: boolean, g: RandomGenerator) {
  const eyes = (poor ? judge.poorEyes : undefined) ?? judge.eyes;
  const named: FaultCode[] = [];
  for (const code of FAULTS[drill.movement]) {
    const eye = eyes[code];
    const margin = margins[code];
    if (eye === undefined || margin === null || margin === undefined) continue;
    const seen = margin + toleranceOf(drill, code) + eye.precision * randomNormal(g) < eye.strictness;
    if (g.uniform() < eye.lapse ? !seen : seen) named.push(code);
  }
  return named.length > 0
    ? { verdict: 'no-rep' as const, faults: named as string[] }
    : { verdict: 'counted' as const, faults: [] };
}

/** The whole log of a drill that this judge goes through, to the drill's own end; `seed` decides everything. */
export function playDrill(drill: Drill, judge: SimulatedJudge, g: RandomGenerator): DrillState {
  const log: DrillEvent[] = [];
  const memory = {};
  let seq = 0;
  const put = (body: Record<string, unknown> & { kind: DrillEvent['kind'] }) => {
    seq += 1;
    log.push({ drill: drill.id, pad: 'pad', seq, at: seq * 100, ...body } as DrillEvent);
  };
  put({ kind: 'begin', wallClock: drill.createdAt });
  for (;;) {
    const state = foldDrill(drill, log);
    const step = nextStep(drill, state, memory);
    switch (step.kind) {
      case 'rep': {
        const margins = shownMargins(step.specification, g);
        const { movement: _movement, sheet: _sheet, ...specification } = step.specification;
        const { place, trial } = step;
        put({ kind: 'rep', trial, specification, place, margins, durationMs: 2_700, dueMs: 1_700, seenMs: 1_700 });
        put({
          kind: 'call',
          trial,
          afterMs: 2_200,
          place: null,
          ...callFor(judge, drill, margins, place.name === 'poor', g),
        });
        break;
      }
      case 'stream': {
        const reps = streamReps(step.specification).map((rep, i) => {
          const startMs = Math.round((i * 60_000) / drill.cadence);
          const margins = shownMargins(rep, g);
          return { startMs, endMs: startMs + 2_500, dueMs: startMs + 700, seenMs: startMs + 1_700, margins };
        });
        put({ kind: 'stream', specification: step.specification, place: step.place, reps });
        for (const rep of reps) {
          const call = callFor(judge, drill, rep.margins, false, g);
          if (g.uniform() < (judge.forgets ?? 0)) continue;
          // Faults are called some time after they could be seen, good reps after the last thing to see.
          const from = call.verdict === 'no-rep' && g.uniform() < 0.5 ? rep.dueMs : rep.seenMs;
          const afterMs = Math.max(0, Math.round(from + 400 + 200 * randomNormal(g)));
          put({ kind: 'call', trial: null, afterMs, place: null, ...call });
        }
        put({ kind: 'end', why: 'all-shown' });
        break;
      }
      case 'end':
        put({ kind: 'end', why: step.why });
        break;
      case 'wait':
        throw new Error('a simulated judge keeps nobody waiting');
      case 'ended':
        return state;
    }
  }
}
