import { count } from './bounds.ts';
import { type PlanOptions, solveWithCuts } from './solve-with-cuts.ts';
import type { Solver } from './solver.ts';
import type { Task } from './task.ts';

/**
 * Why there is no plan, in words: the model is solved again, first with judges missing at a price, then with starts left out at a
 * higher one. What it then lacks is what is short; the solver has proven that less would not do.
 */
export function whatIsShort(solver: Solver, task: Task, options: PlanOptions): string[] {
  for (const elastic of ['judges', 'judges-and-entries'] as const) {
    const { solved } = solveWithCuts(solver, task, { anyLoads: true, elastic }, options, 0);
    if (solved.status !== 'solved') continue;
    const short = [...solved.values].flatMap(([name, value]) =>
      name.startsWith('s') && value > 0.5 ? [{ heat: Number(name.slice(1)) + 1, judges: Math.round(value) }] : [],
    );
    const out = task.entries.filter((_entry, index) => (solved.values.get(`u${index}`) ?? 0) > 0.5);
    const total = short.reduce((sum, { judges }) => sum + judges, 0);
    return [
      ...short
        .toSorted((one, other) => one.heat - other.heat)
        .map((item) => `${count(item.judges, 'judge')} short in heat ${item.heat}.`),
      ...out.map(({ athlete, station }) => `No heat is left for ${options.nameOf(athlete)} at ${station}.`),
      ...(total === 0 ? [] : [`In all at least ${count(total, 'judge')} short in ${count(task.heats, 'heat')}.`]),
    ];
  }
  return [`No plan was found in ${count(task.heats, 'heat')}, nor what is short.`];
}
