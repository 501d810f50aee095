import type { Body } from './body.ts';
import type { FootPosture, Pair, Pose, Posture, Side } from './pose.ts';
import { SIDES, signOf } from './pose.ts';
import { poseOf } from './skeleton.ts';
import { along, clamp, frameOf, inFrame, radians, type Vec3 } from './vector.ts';

/** Habits of one athlete, drawn once from the style seed and kept through a stream. */
export interface Stance {
  /** Half the distance between the forefeet, m. */
  readonly halfWidth: number;
  /** Toes turned out, radians. */
  readonly toesOut: number;
}

/** Both feet flat on the ground, mid-foot at `z`, on a surface of height `y`. */
export function flatFeet(body: Body, stance: Stance, z = 0, y = 0): Pair<FootPosture> {
  const foot = (side: Side): FootPosture => ({
    forefoot: [signOf(side) * stance.halfWidth, y, z + 0.22 * body.footLength * Math.cos(stance.toesOut)],
    turn: signOf(side) * stance.toesOut,
    lift: 0,
    toes: 0,
  });
  return [foot(0), foot(1)];
}

/** Ball in front of the breastbone, as it is carried: its centre relative to the base of the neck. */
export function ballAtChest(body: Body, ballRadius: number, chestPitch: number): Vec3 {
  const chest = frameOf(0, chestPitch, 0);
  return inFrame(chest, 0, -0.17 * body.upperTrunk, body.flesh.chestDepth + ballRadius + 0.01);
}

export interface Load {
  readonly mass: number;
  /** Relative to the base of the neck. */
  readonly place: Vec3;
}

/** A key pose of the trunk over planted feet. Angles in radians. */
export interface TrunkPose {
  readonly pelvis: Vec3;
  readonly pelvisPitch: number;
  readonly chestPitch: number;
}

/** A pose between two, by a share of the way. */
export function between(a: TrunkPose, b: TrunkPose, share: number): TrunkPose {
  const blend = (x: number, y: number): number => x + (y - x) * share;
  return {
    pelvis: [blend(a.pelvis[0], b.pelvis[0]), blend(a.pelvis[1], b.pelvis[1]), blend(a.pelvis[2], b.pelvis[2])],
    pelvisPitch: blend(a.pelvisPitch, b.pelvisPitch),
    chestPitch: blend(a.chestPitch, b.chestPitch),
  };
}

export interface ArmAngles {
  readonly raise: number;
  readonly spread: number;
  readonly bend: number;
}

export function postureOf(trunk: TrunkPose, feet: Pair<FootPosture>, arms: ArmAngles): Posture {
  return {
    pelvis: trunk.pelvis,
    pelvisTurn: 0,
    pelvisPitch: trunk.pelvisPitch,
    pelvisRoll: 0,
    chestTurn: 0,
    chestPitch: trunk.chestPitch,
    chestRoll: 0,
    headTurn: 0,
    headPitch: 0,
    feet,
    arms: [
      { ...arms, reach: null },
      { ...arms, reach: null },
    ],
  };
}

/** How far ahead the common centre of body and load lies, m. */
function centreAhead(body: Body, pose: Pose, load: Load | null): number {
  if (load === null) return pose.centreOfMass[2];
  const ball = pose.neckBase[2] + load.place[2];
  return (pose.centreOfMass[2] * body.mass + ball * load.mass) / (body.mass + load.mass);
}

/** Share of the trunk's lean that the pelvis takes; the back bends for the rest. */
export const PELVIS_SHARE = 0.42;

/** Arms that hold something in front of the chest, near enough for balance. */
export const CARRYING: ArmAngles = { raise: radians(35), spread: radians(15), bend: radians(105) };
export const HANGING: ArmAngles = { raise: radians(4), spread: radians(9), bend: radians(14) };

/**
 * Standing over the feet with a given knee flexion: the pelvis goes where the legs reach, and forward or back until the
 * centre of mass stands over `over`.
 * @param kneeFlexion radians
 * @param over metres ahead of the mid-foot
 */
export function stand(
  body: Body,
  feet: Pair<FootPosture>,
  kneeFlexion: number,
  chestPitch: number,
  over: number,
  arms: ArmAngles,
  loadAt: ((chestPitch: number) => Load) | null,
): TrunkPose {
  const d = Math.sqrt(body.thigh ** 2 + body.shank ** 2 + 2 * body.thigh * body.shank * Math.cos(kneeFlexion));
  const pelvisPitch = PELVIS_SHARE * chestPitch;
  let z = over;
  let trunk: TrunkPose = { pelvis: [0, body.stature / 2, z], pelvisPitch, chestPitch };
  for (let i = 0; i < 7; i += 1) {
    const height = Math.min(...SIDES.map((side) => heightOver(body, feet[side], side, z, d)));
    trunk = { pelvis: [0, height, z], pelvisPitch, chestPitch };
    const pose = poseOf(body, postureOf(trunk, feet, arms));
    z += 1.1 * (over - centreAhead(body, pose, loadAt?.(chestPitch) ?? null));
  }
  return trunk;
}

/** Height of the pelvis at which a hip stands `d` from its ankle. */
function heightOver(body: Body, foot: FootPosture, side: Side, z: number, d: number): number {
  const ankle = ankleOf(body, foot);
  const dx = signOf(side) * body.hipJoint - ankle[0];
  const dz = z - ankle[2];
  return ankle[1] + Math.sqrt(Math.max(0.01, d * d - dx * dx - dz * dz));
}

export function ankleOf(body: Body, foot: FootPosture): Vec3 {
  const sole = frameOf(foot.turn, foot.lift, 0);
  return along(along(foot.forefoot, sole.forward, -body.ankleToForefoot), sole.up, body.ankleHeight);
}

/**
 * A squat with the hips at `hipHeight`: shins leaning `shin` radians over the toes, the trunk leaning until the centre
 * of mass stands over `over`. Where the lean would leave 8 to 50 degrees, the shins give way instead.
 */
export function squat(
  body: Body,
  feet: Pair<FootPosture>,
  hipHeight: number,
  shin: number,
  over: number,
  arms: ArmAngles,
  loadAt: ((chestPitch: number) => Load) | null,
): TrunkPose {
  const pitchFor = (lean: number): number => {
    let pitch = radians(30);
    for (let i = 0; i < 5; i += 1) {
      const pose = poseOf(body, postureOf(squatWith(body, feet, hipHeight, lean, pitch), feet, arms));
      const error = over - centreAhead(body, pose, loadAt?.(pitch) ?? null);
      // A radian of lean carries the trunk's centre about a fifth of stature ahead.
      pitch = clamp(pitch + error / (0.2 * body.stature), radians(-10), radians(80));
    }
    return pitch;
  };
  const usual = pitchFor(shin);
  const bound = usual > MOST_LEAN ? MOST_LEAN : usual < LEAST_LEAN ? LEAST_LEAN : null;
  if (bound === null) return squatWith(body, feet, hipHeight, shin, usual);
  let low = bound === MOST_LEAN ? shin : 0;
  let high = bound === MOST_LEAN ? MOST_SHIN : shin;
  for (let i = 0; i < 9; i += 1) {
    const middle = (low + high) / 2;
    if (pitchFor(middle) > bound) low = middle;
    else high = middle;
  }
  const lean = (low + high) / 2;
  return squatWith(body, feet, hipHeight, lean, pitchFor(lean));
}

/** Bounds of the trunk's lean in a balanced squat, and of the shins' when they must help, radians. */
const MOST_LEAN = radians(48);
const LEAST_LEAN = radians(8);
const MOST_SHIN = radians(34);

function squatWith(
  body: Body,
  feet: Pair<FootPosture>,
  hipHeight: number,
  shin: number,
  chestPitch: number,
): TrunkPose {
  const foot = feet[0];
  const ankle = ankleOf(body, foot);
  const kneeHeight = ankle[1] + body.shank * Math.cos(shin);
  const kneeOut = ankle[0] + body.shank * Math.sin(shin) * Math.sin(foot.turn);
  const kneeAhead = ankle[2] + body.shank * Math.sin(shin) * Math.cos(foot.turn);
  const back = Math.sqrt(Math.max(0, body.thigh ** 2 - (hipHeight - kneeHeight) ** 2 - (kneeOut - body.hipJoint) ** 2));
  return { pelvis: [0, hipHeight, kneeAhead - back], pelvisPitch: PELVIS_SHARE * chestPitch, chestPitch };
}
