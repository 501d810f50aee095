import type { Frame, Vec3 } from './vector.ts';

/** The left limb first, as everywhere in this folder. */
export type Pair<T> = readonly [left: T, right: T];
export const SIDES = [0, 1] as const;
export type Side = (typeof SIDES)[number];
/** +1 for the left side, -1 for the right: the sign of x in the athlete's own axes. */
export const signOf = (side: Side): 1 | -1 => (side === 0 ? 1 : -1);

/** Points of one leg, metres. Heel, forefoot (balls of the toes) and toe lie on the sole. */
export interface LegPoints {
  readonly hip: Vec3;
  readonly knee: Vec3;
  readonly ankle: Vec3;
  readonly heel: Vec3;
  readonly forefoot: Vec3;
  readonly toe: Vec3;
  /** Fold between thigh and trunk, on the skin. */
  readonly hipCrease: Vec3;
  /** Highest point of the knee, on the skin. */
  readonly kneeTop: Vec3;
}

/** Points of one arm, metres. */
export interface ArmPoints {
  readonly shoulder: Vec3;
  readonly elbow: Vec3;
  readonly wrist: Vec3;
  readonly fingertip: Vec3;
}

export type BallState = 'held' | 'flying' | 'resting';

export interface BallPose {
  readonly centre: Vec3;
  readonly state: BallState;
}

/** The whole figure at one instant, in the world's axes. */
export interface Pose {
  /** Middle between the hip joints. */
  readonly pelvis: Vec3;
  readonly waist: Vec3;
  /** Middle between the shoulders at rest; the neck begins here. */
  readonly neckBase: Vec3;
  readonly headBase: Vec3;
  readonly headTop: Vec3;
  /** Foremost point of the breastbone, on the skin. */
  readonly chest: Vec3;
  readonly legs: Pair<LegPoints>;
  readonly arms: Pair<ArmPoints>;
  readonly frames: { readonly pelvis: Frame; readonly chest: Frame; readonly head: Frame };
  /** Centre of mass of the body without the ball. */
  readonly centreOfMass: Vec3;
  readonly ball: BallPose | null;
}

/** Where a foot is: the balls of the toes in the world, and three angles in radians. */
export interface FootPosture {
  forefoot: Vec3;
  /** Which way the toes point, about the vertical, positive to the left; absolute. */
  turn: number;
  /** Heel lifted above the balls of the toes. */
  lift: number;
  /** Toes bent down from the level. */
  toes: number;
}

/** A free arm by its angles (radians); `reach` pulls the wrist from there to a point of the world. */
export interface ArmPosture {
  /** 0 hangs, a quarter turn points ahead, a half turn up. */
  raise: number;
  /** Away from the body's middle plane. */
  spread: number;
  /** Elbow flexion. */
  bend: number;
  reach: Reach | null;
}

export interface Reach {
  /** 0 free, 1 the wrist is at `wrist`. */
  weight: number;
  wrist: Vec3;
  /** Unit vector from wrist to fingertips. */
  fingers: Vec3;
  /** Unit vector the elbow points to. */
  elbow: Vec3;
}

/** What the movement decides; the skeleton makes a pose of it. Angles in radians, absolute in the world. */
export interface Posture {
  pelvis: Vec3;
  pelvisTurn: number;
  pelvisPitch: number;
  pelvisRoll: number;
  chestTurn: number;
  chestPitch: number;
  chestRoll: number;
  headTurn: number;
  headPitch: number;
  feet: Pair<FootPosture>;
  arms: Pair<ArmPosture>;
}
