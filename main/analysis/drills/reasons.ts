import type { ReasonScore } from '../../../shared-types/contract/drills/scores.ts';
import { share } from './detection-score.ts';
import type { JudgedTrial } from './outcomes.ts';

/** Whether the reasons named were the right ones, over the faulty reps that were called a no-rep. */
export function reasonScore(trials: readonly JudgedTrial[]): ReasonScore {
  const told = trials.filter((one) => one.reasonRight !== null);
  const right = told.filter((one) => one.reasonRight).length;
  const confusions = new Map<string, { truth: string; named: string; count: number }>();
  for (const { trial, call, reasonRight } of told) {
    if (reasonRight !== false) continue;
    const truth = trial.broken[0] ?? '';
    for (const named of call?.faults ?? []) {
      if (trial.broken.some((code) => code === named)) continue;
      const known = confusions.get(`${truth} ${named}`);
      if (known === undefined) confusions.set(`${truth} ${named}`, { truth, named, count: 1 });
      else known.count += 1;
    }
  }
  return {
    right,
    of: told.length,
    unexplained: trials.filter((one) => one.outcome === 'hit' && one.reasonRight === null).length,
    rate: share(right, told.length),
    confusions: [...confusions.values()].sort((a, b) => b.count - a.count || (a.truth < b.truth ? -1 : 1)),
  };
}
