import type { ReviewTotals, Trend, Why } from '../../../../shared-types/contract/review/figures.ts';

/** What the first sentence of a view can say of its no-reps. */
export type Answer =
  | { readonly kind: 'fewer' | 'more'; readonly from: number; readonly to: number; readonly pValue: number }
  | { readonly kind: 'unclear'; readonly rate: number; readonly stillNeeded: number | null }
  | { readonly kind: 'no-trend'; readonly rate: number; readonly why: Why }
  /** Not one no-rep; `high` is the upper bound of the rate. */
  | { readonly kind: 'clean'; readonly attempts: number; readonly high: number }
  | { readonly kind: 'only-no-reps'; readonly attempts: number }
  | { readonly kind: 'no-attempt' };

/** The answer to "are no-reps getting rarer", as far as the sets can tell. */
export function answerOf(totals: Pick<ReviewTotals, 'attempts' | 'noReps' | 'rate'>, trend: Trend): Answer {
  const { attempts, noReps, rate } = totals;
  if (attempts === 0 || rate === null) return { kind: 'no-attempt' };
  if (noReps === 0) return { kind: 'clean', attempts, high: rate.high };
  if (noReps === attempts) return { kind: 'only-no-reps', attempts };
  const { verdict, fitted } = trend;
  if (verdict.kind === 'too-few') return { kind: 'no-trend', rate: rate.value, why: verdict.why };
  if (verdict.kind === 'unclear' || fitted === null) {
    return {
      kind: 'unclear',
      rate: rate.value,
      stillNeeded: verdict.kind === 'unclear' ? verdict.stillNeeded : null,
    };
  }
  return { kind: verdict.kind, from: fitted.from.value, to: fitted.to.value, pValue: fitted.pValue };
}
