import type { FootSpan } from './choreography.ts';
import { type PathKey, path } from './smooth.ts';
import { along, subtract, type Vec3 } from './vector.ts';

/** How long a foot needs to gather the pelvis's speed after lift-off, and to give it up before landing, seconds. */
const GATHER = 0.03;
const GIVE_UP = 0.042;

/** One end of a swing: the foot's place and the pelvis's place and velocity at that instant. */
export interface SwingEnd {
  readonly t: number;
  readonly foot: Vec3;
  readonly pelvis: Vec3;
  readonly rate: Vec3;
  readonly bend: Vec3;
  /** The foot's own velocity in the world, m/s: none on the ground. */
  readonly footRate: Vec3 | null;
}

/** Slowest rise and fall of a foot at the ends of a swing, m/s. */
const CLEAR = 0.7;

/** How sharply a foot lifts off and is set down, m/s^2: the same on both sides, so that the sides can be compared. */
export const SNAP: Vec3 = [0, 20, 0];

/**
 * A foot that leaves the ground and meets it again without a jump in velocity, carried by the pelvis between.
 * @param middle places of the foot relative to the pelvis on the way
 */
export function swing(off: SwingEnd, on: SwingEnd, middle: readonly PathKey[]): FootSpan {
  const p0 = subtract(off.foot, off.pelvis);
  const p1 = subtract(on.foot, on.pelvis);
  // The foot takes up, or gives up, the pelvis's speed; it always leaves and comes in from above.
  const leaving: Vec3 = [off.rate[0], Math.max(off.rate[1], CLEAR), off.rate[2]];
  const coming: Vec3 = [on.rate[0], Math.min(on.rate[1], -CLEAR), on.rate[2]];
  const lift = off.footRate;
  const land = on.footRate;
  return {
    kind: 'swing',
    from: off.t,
    to: on.t,
    path: path([
      {
        t: off.t,
        p: p0,
        v: subtract(lift ?? [0, 0, 0], off.rate),
        a: subtract(lift === null ? SNAP : [0, 0, 0], off.bend),
      },
      { t: off.t + GATHER, p: along(along(p0, leaving, 0.58 * GATHER), off.rate, -GATHER) },
      ...middle,
      { t: on.t - GIVE_UP, p: along(along(p1, coming, -0.58 * GIVE_UP), on.rate, GIVE_UP) },
      {
        t: on.t,
        p: p1,
        v: subtract(land ?? [0, 0, 0], on.rate),
        a: subtract(land === null ? SNAP : [0, 0, 0], on.bend),
      },
    ]),
  };
}

/** A low step over the ground from one place to another. */
export function stepTo(from: number, to: number, start: Vec3, end: Vec3, height: number): FootSpan {
  const top = Math.max(start[1], end[1]) + height;
  return {
    kind: 'step',
    from,
    to,
    path: path([
      { t: from, p: start, v: [0, 0, 0], a: [0, 8, 0] },
      { t: (from + to) / 2, p: [(start[0] + end[0]) / 2, top, (start[2] + end[2]) / 2] },
      { t: to, p: end, v: [0, 0, 0], a: [0, 8, 0] },
    ]),
  };
}
