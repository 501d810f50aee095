import type { Drill } from '../../../../shared-types/drills/drill.ts';
import { toleranceOf } from '../../../../shared-types/drills/range.ts';
import { type FaultCode, unitOf } from '../../../../shared-types/motion/specification.ts';
import type { Truth } from '../../../../shared-types/motion/truth.ts';

/** A replay that stops at what is to be seen: seconds in the rep, but for `speed` (1 is the rep's own) and `hold`. */
export interface Replay {
  readonly from: number;
  readonly at: number;
  readonly to: number;
  readonly speed: number;
  /** How long it stands at `at`, seconds. */
  readonly hold: number;
}

/** Around the moment of a mark: enough before it to see it coming. */
export function replayAround(at: number, duration: number, speed: number): Replay {
  return { from: Math.max(0, at - 0.9), at, to: Math.min(duration, at + 0.45), speed, hold: 1.6 };
}

/** Where a replay that loops stands after `elapsed` seconds. */
export function replayTime({ from, at, to, speed, hold }: Replay, elapsed: number): number {
  const before = (at - from) / speed;
  const after = (to - at) / speed;
  const rest = 0.5;
  const inLoop = elapsed % (before + hold + after + rest);
  if (inLoop < before) return from + inLoop * speed;
  if (inLoop < before + hold) return at;
  return Math.min(to, at + (inLoop - before - hold) * speed);
}

/** Sizes that an eye takes for about the same, by unit: for choosing which margin was nearest to its line. */
const alike = { cm: 4, ms: 60, degrees: 10 } as const;

/**
 * The fault worth showing after a call: the worst of those broken; else one that was called and was not there; else the
 * one nearest to its line. Null where nothing was measured.
 */
export function tellingFault(
  drill: Pick<Drill, 'movement' | 'numbers'>,
  truth: Truth,
  named: readonly string[],
): FaultCode | null {
  const measured = (Object.entries(truth) as [FaultCode, NonNullable<Truth[FaultCode]>][]).flatMap(([code, found]) =>
    found.margin === null
      ? []
      : [
          {
            code,
            met: found.met,
            size: (found.margin + toleranceOf(drill, code)) / alike[unitOf(drill.movement, code)],
          },
        ],
  );
  const nearest = measured.toSorted((one, other) => one.size - other.size);
  const broken = nearest.filter((item) => !item.met);
  return (broken[0] ?? nearest.find((item) => named.includes(item.code)) ?? nearest[0])?.code ?? null;
}
