import type { z } from 'zod';
import type { reaction } from '../../../shared-types/contract/drills/scores.ts';
import { sampleQuantile } from '../distributions/sample-quantile.ts';
import type { JudgedTrial } from './outcomes.ts';

/** Quartiles of the reaction times, milliseconds. */
export function reactionScore(trials: readonly JudgedTrial[]): z.infer<typeof reaction> {
  const times = trials.flatMap((one) => one.reaction ?? []);
  const at = (probability: number) => sampleQuantile(times, probability) ?? null;
  return { calls: times.length, medianMs: at(0.5), lowMs: at(0.25), highMs: at(0.75) };
}
