/** A point or direction in the world, metres: x to the athlete's left, y up, z ahead (see README). */
export type Vec3 = readonly [number, number, number];

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const subtract = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
/** a + b * k */
export const along = (a: Vec3, b: Vec3, k: number): Vec3 => [a[0] + b[0] * k, a[1] + b[1] * k, a[2] + b[2] * k];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
export const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
export const mix = (a: Vec3, b: Vec3, w: number): Vec3 => [
  a[0] + (b[0] - a[0]) * w,
  a[1] + (b[1] - a[1]) * w,
  a[2] + (b[2] - a[2]) * w,
];

/** Unit vector; `fallback` stands in where the length is zero. */
export function unit(a: Vec3, fallback: Vec3 = [0, 1, 0]): Vec3 {
  const size = Math.hypot(a[0], a[1], a[2]);
  return size > 1e-12 ? [a[0] / size, a[1] / size, a[2] / size] : fallback;
}

/** The part of `a` at right angles to the unit vector `axis`, made a unit vector. */
export function acrossTo(a: Vec3, axis: Vec3, fallback: Vec3): Vec3 {
  return unit(along(a, axis, -dot(a, axis)), fallback);
}

/** Angle between two unit vectors, degrees. */
export const angleBetween = (a: Vec3, b: Vec3): number => (Math.atan2(length(cross(a, b)), dot(a, b)) * 180) / Math.PI;

export interface Frame {
  readonly left: Vec3;
  readonly up: Vec3;
  readonly forward: Vec3;
}

/**
 * Axes of a body part, angles in radians. `turn` about the vertical (positive to the left), then `pitch` (positive
 * leans forward), then `roll` (positive leans to the left).
 */
export function frameOf(turn: number, pitch: number, roll: number): Frame {
  const st = Math.sin(turn);
  const ct = Math.cos(turn);
  const sp = Math.sin(pitch);
  const cp = Math.cos(pitch);
  const left: Vec3 = [ct, 0, -st];
  const forward: Vec3 = [st * cp, -sp, ct * cp];
  const up: Vec3 = [st * sp, cp, ct * sp];
  if (roll === 0) return { left, up, forward };
  const sr = Math.sin(roll);
  const cr = Math.cos(roll);
  return {
    left: along(scale(left, cr), up, -sr),
    up: along(scale(up, cr), left, sr),
    forward,
  };
}

/** A point given in a frame's own axes, as a vector in the world. */
export function inFrame(frame: Frame, left: number, up: number, forward: number): Vec3 {
  return [
    frame.left[0] * left + frame.up[0] * up + frame.forward[0] * forward,
    frame.left[1] * left + frame.up[1] * up + frame.forward[1] * forward,
    frame.left[2] * left + frame.up[2] * up + frame.forward[2] * forward,
  ];
}

export const radians = (degrees: number): number => (degrees * Math.PI) / 180;
export const degrees = (angle: number): number => (angle * 180) / Math.PI;
export const clamp = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x));
