import type { FaultPlan } from '../motion/stream.ts';
import type { Drill, TaskOf } from './drill.ts';
import { faultSizes } from './range.ts';
import { openFaults } from './single.ts';

/** How often and how badly the reps of this stream go wrong. */
export function streamPlan(drill: Drill, task: TaskOf<'stream'>): FaultPlan {
  return {
    rate: task.faultShare,
    rateAtEnd: task.faultShareAtEnd,
    codes: openFaults(drill, task.faults),
    second: 0.12,
    nearMisses: 0.15,
    sizes: faultSizes(task.size),
  };
}
