import { mixSeed, random } from '../motion/random.ts';
import type { Drill, Place, TaskOf } from './drill.ts';
import { triedRange } from './range.ts';
import { shuffled } from './single.ts';

export interface Showing {
  /** Counted from the tolerance. */
  readonly margin: number;
  /** Which of the reps: the same number is the same rep, seen from both places. */
  readonly pair: number;
  readonly place: Place;
}

/**
 * Showing `index` of a drill on places. Half the reps are good; margins lie closest about the line (`aboutTheLine`). Each half of the drill shows every rep once,
 * in an order of its own, half of them from the poor place first: neither practice nor tiredness favours a place.
 */
export function standShowing(drill: Drill, task: TaskOf<'place'>, index: number): Showing {
  const draw = random(mixSeed(drill.seed, 12));
  const pairs = Array.from({ length: task.reps }, (_, pair) => pair);
  const poorFirst = new Set(shuffled(pairs, draw).slice(0, Math.ceil(task.reps / 2)));
  const order = [...shuffled(pairs, draw), ...shuffled(pairs, draw)];
  const pair = order[index] ?? 0;
  const secondHalf = index >= task.reps;
  return {
    margin: aboutTheLine(triedRange(drill, task.fault), pair, task.reps),
    pair,
    place: poorFirst.has(pair) === secondHalf ? task.advised : task.poor,
  };
}

/** Margin `index` of `count`: good and faulty in turn, the nearer to the line the closer together. @internal for the proof */
export function aboutTheLine({ low, high }: { low: number; high: number }, index: number, count: number): number {
  const side = index % 2 === 0 ? low : high;
  return side * ((Math.floor(index / 2) + 0.5) / Math.ceil(count / 2)) ** 1.5;
}
