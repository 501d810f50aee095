import type { SetPoint, SpanPoint } from '../../../shared-types/contract/review/figures.ts';
import { type ChartPoint, laneyChart, type ProportionChart } from '../../analysis/charts/p-chart.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { rateOf } from './estimates.ts';
import { type ReviewLedger, sum } from './selection.ts';
import { costedSets } from './totals.ts';

/** More points than this no chart can tell apart; the trend knows all sets. */
const MOST_POINTS = 1_000;
const MOST_SPANS = 130;
const DAY_MS = 86_400_000;

/** The p'-chart of the groups that hold attempts, and each group's own point (null for one without). */
export function chartOf(groups: readonly { noReps: number; attempts: number }[]): {
  readonly chart: ProportionChart | null;
  readonly points: readonly (ChartPoint | null)[];
} {
  const used = groups.filter((group) => group.attempts > 0);
  const chart = laneyChart(
    used.map((group) => group.noReps),
    used.map((group) => group.attempts),
  );
  if (!chart.ok) return { chart: null, points: groups.map(() => null) };
  let place = 0;
  const points = groups.map((group) => {
    if (group.attempts === 0) return null;
    place += 1;
    return chart.value.points[place - 1] ?? null;
  });
  return { chart: chart.value, points };
}

/** The latest sets as points of a chart, oldest first; limits and trend are of all sets. */
export function setPoints(
  { reports }: Pick<ReviewLedger, 'reports'>,
  sets: readonly ReviewSet[],
  points: readonly (ChartPoint | null)[],
): SetPoint[] {
  const from = Math.max(0, sets.length - MOST_POINTS);
  const shown = sets.slice(from);
  const ids = reports.setIds(shown.map((set) => set.n));
  return shown.flatMap((set, index): SetPoint[] => {
    const id = ids.get(set.n);
    if (id === undefined) return [];
    const point = points[from + index] ?? null;
    const { startMs, workMs, noRepMs, breakMs, costS } = set;
    const split = startMs !== null && workMs !== null && noRepMs !== null && breakMs !== null;
    return [
      {
        id,
        at: set.at,
        athlete: set.athlete,
        judge: set.judge,
        sheet: set.sheet,
        loadKg: set.loadKg,
        heightM: set.heightM,
        before: set.before,
        attempts: set.attempts,
        counted: set.counted,
        noReps: set.noReps,
        unexplained: set.unexplained,
        breaks: set.breaks,
        rate: rateOf(set.noReps, set.attempts),
        ...limitsOf(point),
        clockMs: set.clockMs,
        ledger: split ? { startMs, workMs, noRepMs, breakMs } : null,
        costS: costS === null ? null : { value: costS, low: set.costLowS ?? costS, high: set.costHighS ?? costS },
        per100S: costS === null || set.counted === 0 ? null : (100 * costS) / set.counted,
        cleanS: set.cleanMs === null ? null : set.cleanMs / 1_000,
      },
    ];
  });
}

function limitsOf(point: ChartPoint | null): Pick<SetPoint, 'limits' | 'outside'> {
  return point === null
    ? { limits: null, outside: false }
    : { limits: { low: point.lower, high: point.upper }, outside: point.outside };
}

type Span = 'day' | 'week' | 'month' | 'quarter';
const spans: readonly Span[] = ['day', 'week', 'month', 'quarter'];

/** Sets together by a span of the calendar (UTC, weeks from Monday): the shortest that gives at most 130 points. */
export function spanPoints(sets: readonly ReviewSet[]): { span: Span; points: SpanPoint[] } {
  const first = sets[0]?.at ?? 0;
  const last = sets.at(-1)?.at ?? 0;
  const span = spans.find((item) => last < later(startOf(first, item), item, MOST_SPANS)) ?? 'quarter';
  const groups: { from: number; sets: ReviewSet[] }[] = [];
  for (const set of sets) {
    const from = startOf(set.at, span);
    const current = groups.at(-1);
    if (current?.from === from) current.sets.push(set);
    else groups.push({ from, sets: [set] });
  }
  const counts = groups.map((group) => ({
    noReps: sum(group.sets, (set) => set.noReps),
    attempts: sum(group.sets, (set) => set.attempts),
  }));
  const { points } = chartOf(counts);
  return {
    span,
    points: groups.map((group, index) => {
      const { noReps, attempts } = counts[index] ?? { noReps: 0, attempts: 0 };
      const costed = costedSets(group.sets);
      const counted = sum(costed, (set) => set.counted);
      return {
        from: group.from,
        to: later(group.from, span, 1),
        sets: group.sets.length,
        attempts,
        counted: sum(group.sets, (set) => set.counted),
        noReps,
        rate: rateOf(noReps, attempts),
        ...limitsOf(points[index] ?? null),
        per100S: counted === 0 ? null : (100 * sum(costed, (set) => set.costS)) / counted,
      };
    }),
  };
}

/** The beginning of the span that holds the moment. */
function startOf(at: number, span: Span): number {
  const date = new Date(at);
  const day = Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), date.getUTCDate());
  switch (span) {
    case 'day':
      return day;
    case 'week':
      return day - ((date.getUTCDay() + 6) % 7) * DAY_MS;
    case 'month':
      return Date.UTC(date.getUTCFullYear(), date.getUTCMonth());
    case 'quarter':
      return Date.UTC(date.getUTCFullYear(), 3 * Math.floor(date.getUTCMonth() / 3));
  }
}

function later(start: number, span: Span, by: number): number {
  if (span === 'day') return start + by * DAY_MS;
  if (span === 'week') return start + by * 7 * DAY_MS;
  const date = new Date(start);
  return Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + by * (span === 'month' ? 1 : 3));
}
