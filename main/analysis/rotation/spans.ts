import type { Task } from './task.ts';

/** Heats that `stations` stations of one athlete take at least, with a heat of rest between. */
export function fewestHeatsOf(stations: number): number {
  return Math.max(0, 2 * stations - 1);
}

/** The most stations an athlete can do in the heats where they may compete, none right after another. */
export function span(task: Task, athlete: string): number {
  let most = 0;
  for (let heat = task.first; heat < task.heats; heat += 1) {
    if (!task.mayCompete(athlete, heat)) continue;
    most += 1;
    heat += 1;
  }
  return most;
}
