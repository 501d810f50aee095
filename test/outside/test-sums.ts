import type { Computed } from '../../main/analysis/result.ts';

/** The value of a computation that must succeed. */
export function valueFrom<T>(result: Computed<T>): T {
  if (!result.ok) throw new Error(`${result.error.kind}: ${result.error.message}`);
  return result.value;
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

export function standardDeviation(values: readonly number[]): number {
  const centre = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1));
}

export function correlation(x: readonly number[], y: readonly number[]): number {
  const [centreX, centreY] = [mean(x), mean(y)];
  const products = x.reduce((sum, value, i) => sum + (value - centreX) * ((y[i] ?? 0) - centreY), 0);
  return products / (x.length - 1) / standardDeviation(x) / standardDeviation(y);
}

/** Columns of a Bradley-Terry model: +1 for the home team, -1 for the away team, none for the team set to 0. */
export function teamsOf(
  home: readonly string[],
  away: readonly string[],
  zero: string,
): { teams: string[]; predictors: number[][] } {
  const teams = [...new Set(home)].filter((team) => team !== zero).sort();
  const predictors = teams.map((team) => home.map((name, i) => Number(name === team) - Number(away[i] === team)));
  return { teams, predictors };
}

/** Whether a result holds NaN anywhere: numbers, lists, typed arrays and nested objects. */
export function holdsNaN(value: unknown): boolean {
  if (typeof value === 'number') return Number.isNaN(value);
  if (value instanceof Float64Array) return value.some(Number.isNaN);
  if (value === null || typeof value !== 'object') return false;
  return Object.values(value).some(holdsNaN);
}

/** The kind of error of a computation that must fail. */
export function errorKind(result: Computed<unknown>): string {
  if (result.ok) throw new Error('This was to fail, and gave a value.');
  if (result.error.message.length < 10) throw new Error('The error says too little.');
  return result.error.kind;
}
