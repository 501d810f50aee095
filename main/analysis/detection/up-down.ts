import { type Computed, computed, failed } from '../result.ts';

/** Where a drill's difficulty stands. A higher level is easier: the margin is larger. */
export type UpDownState = {
  readonly level: number;
  /** Right answers in a row at this level. */
  readonly streak: number;
  readonly direction: 'none' | 'up' | 'down';
  /** Levels at which the direction turned. */
  readonly reversals: readonly number[];
};

export type UpDownRule = {
  /** Right answers in a row before the level goes down (made harder): 1, 2, 3 or 4 as a rule. */
  readonly downAfter: number;
  readonly step: number;
  readonly lowest: number;
  readonly highest: number;
};

export function startUpDown(level: number): UpDownState {
  return { level, streak: 0, direction: 'none', reversals: [] };
}

/** Share of right answers at which the n-down-1-up rule settles: p with p^n = 1/2 (Levitt 1971, table I). */
export function upDownTarget(downAfter: number): number {
  return 0.5 ** (1 / downAfter);
}

/**
 * State after one more answer under the transformed up-down rule "n right in a row: harder; one wrong: easier" (Levitt
 * 1971, Journal of the Acoustical Society of America 49:467-477). The level stays within the rule's bounds.
 */
export function nextUpDown(state: UpDownState, right: boolean, rule: UpDownRule): UpDownState {
  const streak = right ? state.streak + 1 : 0;
  if (right && streak < rule.downAfter) return { ...state, streak };
  const direction = right ? 'down' : 'up';
  const moved = state.level + (right ? -rule.step : rule.step);
  const turned = state.direction !== 'none' && state.direction !== direction;
  return {
    level: Math.min(rule.highest, Math.max(rule.lowest, moved)),
    streak: 0,
    direction,
    reversals: turned ? [...state.reversals, state.level] : state.reversals,
  };
}

/**
 * Level at which the rule has settled: the mean of the last even number of reversals, peaks and valleys equally often,
 * the first two left out (Levitt 1971). Error: `too-few-data` below four reversals.
 */
export function upDownEstimate(state: UpDownState): Computed<number> {
  if (state.reversals.length < 4) return failed('too-few-data', 'The level must have turned at least four times.');
  const settled = state.reversals.slice(2 + (state.reversals.length % 2));
  return computed(settled.reduce((sum, level) => sum + level, 0) / settled.length);
}
