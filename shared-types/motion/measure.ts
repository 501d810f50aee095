import type { Box } from './movement.ts';
import type { LegPoints, Pose, Side } from './pose.ts';
import { mix, type Vec3 } from './vector.ts';

/** Least value of `f` on [from, to]: even sampling, then a golden-section search around the best sample. */
export function least(
  f: (t: number) => number,
  from: number,
  to: number,
  samples: number,
): { t: number; value: number } {
  let best = { t: from, value: f(from) };
  const width = (to - from) / samples;
  for (let i = 1; i <= samples; i += 1) {
    const t = from + i * width;
    const value = f(t);
    if (value < best.value) best = { t, value };
  }
  let low = Math.max(from, best.t - width);
  let high = Math.min(to, best.t + width);
  const golden = (Math.sqrt(5) - 1) / 2;
  let a = high - golden * (high - low);
  let b = low + golden * (high - low);
  let fa = f(a);
  let fb = f(b);
  while (high - low > 1e-3) {
    if (fa < fb) {
      high = b;
      b = a;
      fb = fa;
      a = high - golden * (high - low);
      fa = f(a);
    } else {
      low = a;
      a = b;
      fa = fb;
      b = low + golden * (high - low);
      fb = f(b);
    }
  }
  const t = (low + high) / 2;
  const value = f(t);
  return value < best.value ? { t, value } : best;
}

/** Lowest point of a foot's sole, m. */
export const soleHeight = (leg: LegPoints): number => Math.min(leg.heel[1], leg.forefoot[1], leg.toe[1]);

/** A foot this far off its surface has left it, m. */
const OFF_GROUND = 1e-4;

/**
 * The instant at which a foot leaves (`direction` 1) or meets (-1) a surface, searched from `from` towards `to`, seconds.
 * @param clear true while the foot is off the surface at that time
 */
function crossing(clear: (t: number) => boolean, from: number, to: number): number {
  const pace = 0.014 * Math.sign(to - from);
  let t = from;
  while (!clear(t + pace) && Math.abs(t + pace - from) < Math.abs(to - from)) t += pace;
  let on = t;
  let off = t + pace;
  for (let i = 0; i < 13; i += 1) {
    const middle = (on + off) / 2;
    if (clear(middle)) off = middle;
    else on = middle;
  }
  return (on + off) / 2;
}

/** When a foot leaves the surface of height `surface` after `from`, seconds. */
export function liftOff(at: (t: number) => Pose, side: Side, surface: number, from: number, to: number): number {
  return crossing((t) => soleHeight(at(t).legs[side]) > surface + OFF_GROUND, from, to);
}

/** When a foot that stands on the surface at `standing` met it, looking back as far as `since`, seconds. */
export function touchDown(
  at: (t: number) => Pose,
  side: Side,
  surface: number,
  since: number,
  standing: number,
): number {
  return crossing((t) => soleHeight(at(t).legs[side]) > surface + OFF_GROUND, standing, since);
}

/** Distance of a point to the box, m; 0 inside. */
export function distanceToBox(p: Vec3, box: Box): number {
  const dx = Math.max(0, Math.abs(p[0]) - box.halfWidth);
  const dy = Math.max(0, p[1] - box.height);
  const dz = Math.max(0, Math.abs(p[2] - box.z) - box.halfDepth);
  return Math.hypot(dx, dy, dz);
}

/** How far a point lies inside the box's outline seen from above, m; negative outside. */
export const insideOutline = (p: Vec3, box: Box): number =>
  Math.min(box.halfWidth - Math.abs(p[0]), box.halfDepth - Math.abs(p[2] - box.z));

/** Points along a hand, wrist to fingertip. */
export function handPoints(wrist: Vec3, fingertip: Vec3): readonly Vec3[] {
  return [wrist, mix(wrist, fingertip, 0.5), fingertip];
}
