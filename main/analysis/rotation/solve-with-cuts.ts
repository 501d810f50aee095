import { type HallCut, type ModelOptions, rotationModel } from './model.ts';
import { type Duty, placeHeat } from './place-judges.ts';
import type { Solved, Solver } from './solver.ts';
import type { Entry, Task } from './task.ts';

export interface PlanOptions {
  readonly nameOf: (person: string) => string;
  readonly seed: number;
  /** Wall-clock seconds that one model may take. */
  readonly seconds: number;
}

/** Solves the model, adding Hall's condition where the judges on duty cannot be placed, until they can. */
export function solveWithCuts(
  solver: Solver,
  task: Task,
  model: Omit<ModelOptions, 'cuts'>,
  { seconds, seed }: PlanOptions,
  attempt: number,
): { readonly solved: Solved; readonly duties: readonly Duty[] | null } {
  const cuts: HallCut[] = task.athletes
    .filter((athlete) => task.judges.some((judge) => task.banned.has(`${judge} ${athlete}`)))
    .map((athlete) => [athlete]);
  for (;;) {
    const solved = solver.solve(rotationModel(task, { ...model, cuts }), { seconds, seed: seed + attempt });
    if (solved.status !== 'solved' || model.elastic !== undefined) return { solved, duties: null };
    const duties = dutiesOf(task, solved.values);
    const short = duties.map((duty) => placeHeat(duty, task.banned).short).filter((found) => found.length > 0);
    if (short.length === 0) return { solved, duties };
    cuts.push(...short);
  }
}

function dutiesOf(task: Task, values: ReadonlyMap<string, number>): Duty[] {
  return Array.from({ length: task.heats - task.first }, (_, index) => {
    const heat = task.first + index;
    return {
      athletes: entriesIn(task, values, heat).map(({ athlete }) => athlete),
      judges: task.judges.filter((_judge, number) => (values.get(`y${number}_${heat}`) ?? 0) > 0.5),
    };
  });
}

export function entriesIn(task: Task, values: ReadonlyMap<string, number>, heat: number): Entry[] {
  return task.entries.filter((_entry, number) => (values.get(`x${number}_${heat}`) ?? 0) > 0.5);
}
