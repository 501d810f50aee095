import type { Scene as Around } from '../../../shared-types/motion/movement.ts';
import type { FaultCode, MovementName } from '../../../shared-types/motion/specification.ts';
import type { Vec3 } from '../../../shared-types/motion/vector.ts';

/** Where the judge stands: about the athlete, on the floor. */
export interface Viewpoint {
  /** Degrees about the athlete: 0 ahead of the face, 90 at the athlete's left, 180 or -180 behind, -90 at the right. */
  readonly bearing: number;
  /** Metres from the middle of the athlete, along the floor. */
  readonly distance: number;
  /** Metres from the floor to the judge's eyes. */
  readonly height: number;
}

/**
 * How near and how low a judge may get, metres.
 * @internal exported for the tests, which try to get past it
 */
export const LIMITS = { distance: [1.6, 6], height: [0.35, 2.1] } as const;

const held = (value: number, [low, high]: readonly [number, number]): number => Math.min(high, Math.max(low, value));

/** The same place with its values in their limits, the bearing from -180 to 180. */
export function tidy({ bearing, distance, height }: Viewpoint): Viewpoint {
  return {
    bearing: ((((bearing + 180) % 360) + 360) % 360) - 180,
    distance: held(distance, LIMITS.distance),
    height: held(height, LIMITS.height),
  };
}

export function moved(from: Viewpoint, by: Partial<Viewpoint>): Viewpoint {
  return tidy({
    bearing: from.bearing + (by.bearing ?? 0),
    distance: from.distance + (by.distance ?? 0),
    height: from.height + (by.height ?? 0),
  });
}

/** Nobody stands in the wall: eyes keep this far from it, metres. */
const FROM_WALL = 0.3;

export interface Eyes {
  readonly at: Vec3;
  readonly towards: Vec3;
}

/**
 * Eyes and what they look at, in the world, metres.
 * @param focus middle of what is looked at
 */
export function eyesOf(view: Viewpoint, focus: Vec3, around: Pick<Around, 'wallZ'>): Eyes {
  const angle = (view.bearing * Math.PI) / 180;
  let x = focus[0] + Math.sin(angle) * view.distance;
  let z = focus[2] + Math.cos(angle) * view.distance;
  const limit = around.wallZ === null ? Number.POSITIVE_INFINITY : around.wallZ - FROM_WALL;
  if (z > limit) {
    // Along the wall instead, at the same distance, on the side where the judge is.
    const ahead = limit - focus[2];
    const side = Math.sin(angle) === 0 ? 1 : Math.sign(Math.sin(angle));
    x = focus[0] + side * Math.sqrt(Math.max(1, view.distance ** 2 - ahead ** 2));
    z = limit;
  }
  return { at: [x, view.height, z], towards: focus };
}

/** The place between two, for a walk from one to the other; the bearing goes the short way round. */
export function betweenPlaces(from: Viewpoint, to: Viewpoint, share: number): Viewpoint {
  const turn = ((((to.bearing - from.bearing) % 360) + 540) % 360) - 180;
  const part = (one: number, other: number): number => one + (other - one) * share;
  return tidy({
    bearing: from.bearing + turn * share,
    distance: part(from.distance, to.distance),
    height: part(from.height, to.height),
  });
}

/** What of the athlete is kept in the middle of the picture, and how much is seen around it. */
export interface Framing {
  /** Metres above the floor. */
  readonly middle: number;
  /** Degrees from top to bottom. */
  readonly field: number;
}

const whole: Readonly<Record<MovementName, Framing>> = {
  'wall-throw': { middle: 1.5, field: 70 },
  'jump-burpee': { middle: 0.75, field: 56 },
  'box-jump-over': { middle: 1.2, field: 58 },
};

/** The whole movement; nearer where only one fault of the body can come, so that a centimetre is worth looking for. */
export function framingOf(movement: MovementName, fault: FaultCode | null, lineHeight: number): Framing {
  if (movement === 'wall-throw') {
    if (fault === 'depth' || fault === 'stand') return { middle: 0.95, field: 46 };
    if (fault === 'line' || fault === 'aim') return { middle: (lineHeight + 0.9) / 2, field: 62 };
    const higher = Math.max(0, lineHeight - 3);
    return { middle: 1.5 + higher / 2, field: 70 + 8 * higher };
  }
  return whole[movement];
}

/** A narrow canvas keeps the width of the scene, not its height: nothing of the figure is cut off. */
export function verticalField(field: number, aspect: number): number {
  const narrowest = 0.85;
  if (aspect >= narrowest) return field;
  const half = Math.tan(((field / 2) * Math.PI) / 180) * (narrowest / aspect);
  return Math.min(95, (2 * Math.atan(half) * 180) / Math.PI);
}
