import { marginRange, type Range } from '../motion/rep.ts';
import { type FaultCode, type MarginUnit, specify, unitOf } from '../motion/specification.ts';
import type { Drill } from './drill.ts';

/** Sizes of faults in a drill, least and most, by unit; our own choice. */
const SIZES: Readonly<Record<'gross' | 'usual' | 'fine', Readonly<Record<MarginUnit, readonly [number, number]>>>> = {
  gross: { cm: [7, 18], ms: [90, 190], degrees: [18, 45] },
  usual: { cm: [1.5, 14], ms: [25, 160], degrees: [5, 35] },
  fine: { cm: [0.5, 6], ms: [8, 60], degrees: [2, 14] },
};

export type FaultSize = keyof typeof SIZES;

export function faultSizes(size: FaultSize): Readonly<Record<MarginUnit, [number, number]>> {
  const { cm, ms, degrees } = SIZES[size];
  return { cm: [...cm], ms: [...ms], degrees: [...degrees] };
}

export function toleranceOf(drill: Pick<Drill, 'numbers'>, code: FaultCode): number {
  return drill.numbers.tolerance[code] ?? 0;
}

/** The margins of a fault that the figure can show in this drill, counted from the sheet's tolerance: below 0 a no-rep. */
export function shownRange(drill: Pick<Drill, 'movement' | 'numbers' | 'athlete'>, code: FaultCode): Range {
  const athlete = drill.athlete ?? { stature: 1.75, build: 'medium' as const };
  const { low, high } = marginRange(specify({ movement: drill.movement, sheet: drill.numbers, athlete }), code);
  const tolerance = toleranceOf(drill, code);
  return { low: low + tolerance, high: high + tolerance };
}

/** The part of the range around the line in which a judge's eye is tried: as far as usual faults go, either way. */
export function triedRange(drill: Pick<Drill, 'movement' | 'numbers' | 'athlete'>, code: FaultCode): Range {
  const { low, high } = shownRange(drill, code);
  const [, most] = SIZES.usual[unitOf(drill.movement, code)];
  return { low: Math.max(low, -1.25 * most), high: Math.min(high, 1.25 * most) };
}
