import type { Drill, Task } from '../../shared-types/drills/drill.ts';
import { numbersOf } from '../../shared-types/drills/numbers.ts';
import { advisedPlace, poorPlace } from '../../shared-types/drills/places.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';

/** Tasks as the screens make them, short. */
export const tasks = {
  single: {
    kind: 'single',
    reps: 4,
    faults: [],
    faultShare: 0.5,
    size: 'usual',
    place: advisedPlace('wall-throw', null),
  },
  stream: {
    kind: 'stream',
    reps: 5,
    faults: [],
    faultShare: 0.3,
    faultShareAtEnd: 0.5,
    size: 'gross',
    fatigue: 0.5,
    place: advisedPlace('wall-throw', null),
  },
  line: {
    kind: 'line',
    fault: 'depth',
    leastTrials: 4,
    mostTrials: 8,
    narrow: 1.5,
    place: advisedPlace('wall-throw', 'depth'),
  },
  place: {
    kind: 'place',
    fault: 'depth',
    reps: 2,
    poor: poorPlace('wall-throw', 'depth'),
    advised: advisedPlace('wall-throw', 'depth'),
  },
} satisfies Record<string, Task>;

/** A drill of wall throws with this task. */
export function drillWith(task: Task, seed = 7): Drill {
  return {
    id: '11111111-1111-4111-8111-111111111111',
    judge: '22222222-2222-4222-8222-222222222222',
    sheet: { id: wallThrow.id, version: wallThrow.version },
    movement: 'wall-throw',
    numbers: numbersOf(wallThrow, null),
    task,
    athlete: { stature: 1.75, build: 'medium' },
    cadence: 24,
    variation: 1,
    seed,
    practice: false,
    createdAt: 1_700_000_000_000,
  };
}
