import type { FaultScore } from '../../../../shared-types/contract/drills/scores.ts';
import { useWords } from '../../../parts/words/words.tsx';

/** Strictness and precision of a fault with their limits, in its unit. */
export function useLineText(score: Pick<FaultScore, 'strictness' | 'precision' | 'unit'>): {
  readonly strictness: string;
  readonly precision: string;
} {
  const words = useWords().eye;
  const signed = (value: number): string => words.result.signed(value, words.margins.amount(value, score.unit));
  const text = (bounds: FaultScore['strictness']): string =>
    bounds === null ? words.result.counts.cannotTell : words.result.amount(signed, bounds);
  return { strictness: text(score.strictness), precision: text(score.precision) };
}
