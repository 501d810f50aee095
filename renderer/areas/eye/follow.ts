import type { Scene as Around } from '../../../shared-types/motion/movement.ts';
import type { Pose } from '../../../shared-types/motion/pose.ts';
import type { MovementName } from '../../../shared-types/motion/specification.ts';
import type { Vec3 } from '../../../shared-types/motion/vector.ts';

/** What the judge's eyes are led to, and whether they have come to rest. */
export interface Follow {
  readonly focus: Vec3;
  readonly settled: boolean;
}

/** How quickly a judge walks along with an athlete who travels: time constant in seconds. */
const LAG = 0.35;
/** Where a thrower stands, metres from the origin. */
const THROWER = 0.15;

/**
 * The judge stands still at a wall or a box; along a lane they walk beside the athlete.
 * @param gap seconds since the frame before; null jumps there at once
 */
export function followed(
  before: Follow | null,
  subject: { readonly movement: MovementName; readonly around: Around },
  pose: Pose,
  middle: number,
  gap: number | null,
): Follow {
  if (subject.movement === 'wall-throw') return { focus: [0, middle, THROWER], settled: true };
  if (subject.around.box !== null) return { focus: [0, middle, subject.around.box.z], settled: true };
  const wanted = pose.pelvis[2];
  if (before === null || gap === null) return { focus: [0, middle, wanted], settled: true };
  const from = before.focus[2];
  const z = wanted + (from - wanted) * Math.exp(-Math.min(gap, 1) / LAG);
  const near = Math.abs(z - wanted) < 0.002;
  return { focus: [0, middle, near ? wanted : z], settled: near };
}
