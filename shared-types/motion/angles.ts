import { type Pose, SIDES, type Side, signOf } from './pose.ts';
import { along, angleBetween, cross, degrees, dot, scale, subtract, unit, type Vec3 } from './vector.ts';

/** Joint angles of one side, degrees; 0 is standing at attention, flexion and dorsiflexion positive. */
export interface JointAngles {
  readonly kneeFlexion: number;
  /** Thigh against pelvis, in the plane that the body faces. */
  readonly hipFlexion: number;
  readonly hipAbduction: number;
  readonly ankleDorsiflexion: number;
  /** Toes bent up against the foot. */
  readonly toeExtension: number;
  readonly elbowFlexion: number;
  /** Upper arm ahead of (positive) or behind the trunk, measured where the arm is not far out to the side. */
  readonly shoulderFlexion: number;
  /** Upper arm away from hanging, whatever the direction. */
  readonly shoulderElevation: number;
  /** Hand against forearm, whatever the direction. */
  readonly wristBend: number;
}

/** `v` without its part along the unit vector `axis`, made a unit vector. */
const flattened = (v: Vec3, axis: Vec3): Vec3 => unit(along(v, axis, -dot(v, axis)));
const signed = (from: Vec3, to: Vec3, axis: Vec3): number =>
  degrees(Math.atan2(dot(cross(from, to), axis), dot(from, to)));

/** Bend of one knee, degrees; 0 is straight. */
export function kneeFlexion(pose: Pose, side: Side): number {
  const leg = pose.legs[side];
  return angleBetween(unit(subtract(leg.knee, leg.hip)), unit(subtract(leg.ankle, leg.knee)));
}

/**
 * How far a hip is from open, degrees: the angle between thigh and trunk line (mid-hips to the base of the neck) short of
 * straight, seen from the side. A trunk leant back counts as open.
 */
export function hipClosing(pose: Pose, side: Side): number {
  const axis = pose.frames.pelvis.left;
  const trunk = flattened(subtract(pose.neckBase, pose.pelvis), axis);
  const thigh = flattened(subtract(pose.legs[side].hip, pose.legs[side].knee), axis);
  const angle = signed(thigh, trunk, axis);
  // A thigh drawn up past the trunk is closed beyond half a turn, not open.
  return angle < -90 ? angle + 360 : angle;
}

/** All joint angles of one side. */
function jointAngles(pose: Pose, side: Side): JointAngles {
  const leg = pose.legs[side];
  const arm = pose.arms[side];
  const { pelvis, chest } = pose.frames;
  const thigh = unit(subtract(leg.knee, leg.hip));
  const shin = unit(subtract(leg.knee, leg.ankle));
  const soleForward = unit(subtract(leg.forefoot, leg.heel));
  const footLeft = unit(cross(unit(subtract(leg.ankle, leg.heel)), soleForward));
  const soleUp = cross(soleForward, footLeft);
  const toeForward = unit(subtract(leg.toe, leg.forefoot));
  const upperArm = unit(subtract(arm.elbow, arm.shoulder));
  const foreArm = unit(subtract(arm.wrist, arm.elbow));
  return {
    kneeFlexion: kneeFlexion(pose, side),
    hipFlexion: degrees(Math.atan2(dot(thigh, pelvis.forward), -dot(thigh, pelvis.up))),
    hipAbduction: degrees(Math.asin(Math.max(-1, Math.min(1, signOf(side) * dot(thigh, pelvis.left))))),
    ankleDorsiflexion: degrees(Math.atan2(dot(shin, soleForward), dot(shin, soleUp))),
    toeExtension: -signed(soleForward, toeForward, footLeft),
    elbowFlexion: angleBetween(upperArm, foreArm),
    shoulderFlexion: degrees(Math.atan2(dot(upperArm, chest.forward), -dot(upperArm, chest.up))),
    shoulderElevation: angleBetween(upperArm, scale(chest.up, -1)),
    wristBend: angleBetween(foreArm, unit(subtract(arm.fingertip, arm.wrist))),
  };
}

/**
 * Angles of the back and neck, degrees, flexion positive.
 * @internal exported for the tests of joint ranges
 */
export function spineAngles(pose: Pose): { readonly back: number; readonly neck: number; readonly twist: number } {
  const { pelvis, chest, head } = pose.frames;
  return {
    back: signed(pelvis.up, flattened(chest.up, pelvis.left), pelvis.left),
    neck: signed(chest.up, flattened(head.up, chest.left), chest.left),
    twist: angleBetween(flattened(pelvis.forward, pelvis.up), flattened(chest.forward, pelvis.up)),
  };
}

/** @internal exported for the tests of joint ranges */
export const bothSides = (pose: Pose): readonly [JointAngles, JointAngles] => [
  jointAngles(pose, SIDES[0]),
  jointAngles(pose, SIDES[1]),
];
