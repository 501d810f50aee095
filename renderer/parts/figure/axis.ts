import { scaleLinear, scaleTime } from 'd3-scale';

export interface Tick {
  /** Pixels along the axis. */
  readonly at: number;
  readonly text: string;
}

export interface Axis {
  /** Pixels of a value. */
  readonly place: (value: number) => number;
  readonly ticks: readonly Tick[];
}

/** A pixel range, from the axis's beginning to its end. */
export type Range = readonly [from: number, to: number];

function span(values: readonly number[]): [number, number] {
  const finite = values.filter(Number.isFinite);
  const low = Math.min(...finite);
  const high = Math.max(...finite);
  if (!Number.isFinite(low)) return [0, 1];
  // A single value still needs a width to stand in the middle of.
  return low === high ? [low - 0.5, high + 0.5] : [low, high];
}

/** An axis of numbers; `fromZero` keeps bars and rates honest. */
export function numberAxis(
  values: readonly number[],
  range: Range,
  text: (value: number) => string,
  { fromZero = false, count = 5 }: { fromZero?: boolean; count?: number } = {},
): Axis {
  const domain = span(fromZero ? [0, ...values] : values);
  const scale = scaleLinear(domain, range).nice(count);
  return {
    place: (value) => scale(value),
    ticks: withoutTwins(scale.ticks(count).map((value) => ({ at: scale(value), text: text(value) }))),
  };
}

/** An axis of moments, milliseconds since 1970 UTC. */
export function timeAxis(values: readonly number[], range: Range, text: (value: number) => string): Axis {
  const [low, high] = span(values);
  // A day on either side keeps the outermost marks off the edge, and a single day from filling the axis.
  const margin = Math.max((high - low) * 0.03, 43_200_000);
  const scale = scaleTime([low - margin, high + margin], range);
  // The calendar's steps are uneven: the fewest that still show where in time one is.
  const dates = [3, 5, 8].map((count) => scale.ticks(count)).find((found) => found.length >= 3) ?? scale.ticks(3);
  // A date takes about this many pixels.
  const every = Math.ceil((dates.length * 64) / Math.max(64, Math.abs(range[1] - range[0])));
  const shown = dates.filter((_date, index) => index % every === 0);
  const ticks = shown.map((date) => ({ at: scale(date), text: text(date.getTime()) }));
  return { place: (value) => scale(value), ticks: withoutTwins(ticks) };
}

/** Two ticks that say the same (a day shown twice, values that differ by less than is written) are one. */
function withoutTwins(ticks: readonly Tick[]): readonly Tick[] {
  return ticks.filter((tick, index) => tick.text !== ticks[index - 1]?.text);
}
