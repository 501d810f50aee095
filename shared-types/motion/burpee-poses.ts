import type { Body } from './body.ts';
import type { FootPosture, Pair } from './pose.ts';
import { ankleOf, flatFeet, HANGING, PELVIS_SHARE, type Stance, squat, stand, type TrunkPose } from './stance.ts';
import { clamp, degrees, radians, type Vec3 } from './vector.ts';

/** Heel lifted in the plank and on the floor; the toes stay bent under. */
export const PLANK_LIFT = radians(70);

/** Where the hands lie flat, metres: fingertips ahead, wrists behind and a little higher. */
export interface HandsDown {
  readonly fingertipsZ: number;
  readonly wristZ: number;
  readonly wristHeight: number;
  readonly halfWidth: number;
  readonly fingers: Vec3;
}

export function handsAt(body: Body, fingertipsZ: number, surface = 0): HandsDown {
  const slope = radians(12);
  const height = surface + 0.009 * body.stature + body.hand * Math.sin(slope);
  return {
    fingertipsZ,
    wristZ: fingertipsZ - body.hand * Math.cos(slope),
    wristHeight: height,
    halfWidth: 0.168 * body.stature,
    fingers: [0, -Math.sin(slope), Math.cos(slope)],
  };
}

/** Feet with their foremost toe tips at `toeZ` on the floor, heels lifted by `lift`. */
export function feetAt(body: Body, stance: Stance, toeZ: number, lift = 0): Pair<FootPosture> {
  const feet = flatFeet(body, stance, toeZ - 0.5 * body.footLength * Math.cos(stance.toesOut));
  return [
    { ...feet[0], lift },
    { ...feet[1], lift },
  ];
}

/** Pelvis that carries the base of the neck at a given place. */
function under(body: Body, neck: readonly [y: number, z: number], pelvisPitch: number, chestPitch: number): TrunkPose {
  return {
    pelvis: [
      0,
      neck[0] - body.upperTrunk * Math.cos(chestPitch) - body.lowerTrunk * Math.cos(pelvisPitch),
      neck[1] - body.upperTrunk * Math.sin(chestPitch) - body.lowerTrunk * Math.sin(pelvisPitch),
    ],
    pelvisPitch,
    chestPitch,
  };
}

/**
 * Bent down over hands on the floor, feet at `toeZ`: the trunk lies level, hips above knees. The pelvis rolls under
 * where the legs would otherwise be too short.
 */
export function bentOver(body: Body, hands: HandsDown, feet: Pair<FootPosture>, toeZ: number): TrunkPose {
  const arm = body.upperArm + body.forearm;
  const ahead = (hands.fingertipsZ - toeZ) / body.stature;
  // Far ahead of the feet the arms slant; close to them the shoulders stand over the wrists.
  const slant = clamp(0.02 + 0.55 * (ahead - 0.1), -0.06, 0.2) * body.stature;
  const reach = 0.93 * arm;
  const neck: readonly [number, number] = [
    hands.wristHeight + Math.sqrt(Math.max(0.02, reach * reach - slant * slant)),
    hands.wristZ - slant,
  ];
  const ankle = ankleOf(body, feet[0]);
  let best = under(body, neck, radians(40), radians(95));
  let least = Number.POSITIVE_INFINITY;
  for (let pitch = 22; pitch <= 96; pitch += 2) {
    for (let round = 20; round <= 76; round += 7) {
      const trunk = under(body, neck, radians(pitch), radians(pitch + round));
      const cost = strain(body, trunk, ankle, pitch) + (Math.max(0, round - 40) / 30) ** 2 + (round / 300) ** 2;
      if (cost < least) {
        least = cost;
        best = trunk;
      }
    }
  }
  return best;
}

/** How far a bent leg is from comfortable: hips and knees closed too far, or a leg too short. */
function strain(body: Body, trunk: TrunkPose, ankle: Vec3, pelvisPitch: number): number {
  const down = trunk.pelvis[1] - ankle[1];
  const ahead = ankle[2] - trunk.pelvis[2];
  const span = Math.hypot(down, ahead);
  const knee = 180 - degrees(Math.acos(clamp(1 - (span * span) / (2 * body.thigh * body.shank), -1, 1)));
  const thigh = degrees(Math.atan2(ahead, down)) + knee / 2;
  const over = (x: number, most: number, scale: number): number => (Math.max(0, x - most) / scale) ** 2;
  return over(thigh + pelvisPitch, 106, 4) + over(knee, 122, 6) + over(14 - knee, 0, 4) + (knee / 400) ** 2;
}

/** Hips high over the hands while both feet are off the floor. */
export function piked(body: Body, hands: HandsDown, straight: number): TrunkPose {
  const arm = body.upperArm + body.forearm;
  return under(body, [hands.wristHeight + straight * arm, hands.wristZ], radians(31), radians(106));
}

/** Plank on hands and toes; `bent` 0 with straight arms, 1 the chest at the floor. */
export function plank(body: Body, hands: HandsDown, straight: number): { trunk: TrunkPose; forefootZ: number } {
  const arm = body.upperArm + body.forearm;
  const neckHeight = hands.wristHeight + straight * arm;
  const neckZ = hands.wristZ + 0.058 * body.stature;
  const leg = 0.97 * (body.thigh + body.shank);
  const trunk = body.lowerTrunk + body.upperTrunk;
  const ankleUp = body.ankleToForefoot * Math.sin(PLANK_LIFT) + body.ankleHeight * Math.cos(PLANK_LIFT);
  const slope = Math.acos(clamp((neckHeight - ankleUp) / (trunk + leg), 0, 0.9));
  const pose = under(body, [neckHeight, neckZ], slope, slope);
  const ankleZ = pose.pelvis[2] - leg * Math.sin(slope);
  const forefootZ = ankleZ + body.ankleToForefoot * Math.cos(PLANK_LIFT) - body.ankleHeight * Math.sin(PLANK_LIFT);
  return { trunk: pose, forefootZ };
}

/** Lying on the floor with the feet where the plank has them; the breastbone `clearance` metres off the floor. */
export function prone(body: Body, feet: Pair<FootPosture>, clearance: number): TrunkPose {
  const ankle = ankleOf(body, feet[0]);
  const pelvisHeight = body.flesh.pelvisDepth + 0.012 * body.stature + 0.45 * Math.max(0, clearance);
  const neckHeight = body.flesh.chestDepth + clearance;
  const leg = 0.988 * (body.thigh + body.shank);
  const dx = ankle[0] - body.hipJoint;
  const z = ankle[2] + Math.sqrt(leg * leg - (pelvisHeight - ankle[1]) ** 2 - dx * dx);
  const pitch = Math.acos(clamp((neckHeight - pelvisHeight) / (body.lowerTrunk + body.upperTrunk), -0.6, 0.6));
  return { pelvis: [0, pelvisHeight, z], pelvisPitch: pitch, chestPitch: pitch };
}

/** Gathered for the jump: heels a little up, arms behind. */
export function gathered(body: Body, feet: Pair<FootPosture>, midFoot: number, hipHeight: number): TrunkPose {
  return squat(
    body,
    feet,
    hipHeight,
    radians(21),
    midFoot + 0.018 * body.stature,
    { raise: radians(-35), spread: radians(12), bend: radians(20) },
    null,
  );
}

/** The pelvis on straight-ish legs that lean `lean` radians ahead of (or behind) the ankles. */
export function leaning(
  body: Body,
  feet: Pair<FootPosture>,
  lean: number,
  kneeFlexion: number,
  chestPitch: number,
): TrunkPose {
  const ankle = ankleOf(body, feet[0]);
  const d = Math.sqrt(body.thigh ** 2 + body.shank ** 2 + 2 * body.thigh * body.shank * Math.cos(kneeFlexion));
  const dx = ankle[0] - body.hipJoint;
  const flat = Math.sqrt(d * d - dx * dx);
  return {
    pelvis: [0, ankle[1] + flat * Math.cos(lean), ankle[2] + flat * Math.sin(lean)],
    pelvisPitch: PELVIS_SHARE * chestPitch,
    chestPitch,
  };
}

/** Standing easily over flat feet with the mid-foot at `midFoot`. */
export function upright(body: Body, stance: Stance, midFoot: number, surface = 0): TrunkPose {
  const feet = flatFeet(body, stance, midFoot, surface);
  return stand(body, feet, radians(7), radians(4), midFoot + 0.006 * body.stature, HANGING, null);
}
