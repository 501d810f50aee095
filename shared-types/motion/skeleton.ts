import { type Body, MASSES } from './body.ts';
import {
  type ArmPoints,
  type ArmPosture,
  type BallPose,
  type FootPosture,
  type LegPoints,
  type Pose,
  type Posture,
  type Side,
  signOf,
} from './pose.ts';
import {
  acrossTo,
  add,
  along,
  angleBetween,
  cross,
  distance,
  type Frame,
  frameOf,
  inFrame,
  mix,
  radians,
  scale,
  subtract,
  unit,
  type Vec3,
} from './vector.ts';

/** Share of the full length that a limb may reach; the rest keeps the joint off its dead centre. */
const FULL_REACH = 0.9995;
/** From here on an arm that is asked too far yields gently instead of stopping dead. */
const EASY_REACH = 0.93;
/** A fully bent elbow leaves this share between shoulder and wrist. */
const CLOSEST_REACH = 0.25;
const EASY_WRIST = radians(78);
const FULL_WRIST = radians(89);

/** The pose that a posture gives. Every segment keeps its length whatever is asked. */
export function poseOf(body: Body, posture: Posture, ball: BallPose | null = null): Pose {
  const pelvisFrame = frameOf(posture.pelvisTurn, posture.pelvisPitch, posture.pelvisRoll);
  const chestFrame = frameOf(posture.chestTurn, posture.chestPitch, posture.chestRoll);
  const headFrame = frameOf(posture.headTurn, posture.headPitch, 0);
  const pelvis = posture.pelvis;
  const waist = along(pelvis, pelvisFrame.up, body.lowerTrunk);
  const neckBase = along(waist, chestFrame.up, body.upperTrunk);
  const neckUp = unit(add(scale(chestFrame.up, 0.6), scale(headFrame.up, 0.4)));
  const headBase = along(neckBase, neckUp, body.neck);
  const headTop = along(headBase, headFrame.up, body.head);
  const chest = along(along(waist, chestFrame.up, body.upperTrunk * 0.6), chestFrame.forward, body.flesh.chestDepth);
  const legs = [
    legOf(body, pelvis, pelvisFrame, posture.feet[0], 0),
    legOf(body, pelvis, pelvisFrame, posture.feet[1], 1),
  ] as const;
  const arms = [
    armOf(body, neckBase, chestFrame, posture.arms[0], 0),
    armOf(body, neckBase, chestFrame, posture.arms[1], 1),
  ] as const;
  const pose = { pelvis, waist, neckBase, headBase, headTop, chest, legs, arms };
  return {
    ...pose,
    frames: { pelvis: pelvisFrame, chest: chestFrame, head: headFrame },
    centreOfMass: centreOf(pose),
    ball,
  };
}

function legOf(body: Body, pelvis: Vec3, frame: Frame, foot: FootPosture, side: Side): LegPoints {
  const hip = along(pelvis, frame.left, signOf(side) * body.hipJoint);
  const sole = frameOf(foot.turn, foot.lift, 0);
  const heel = along(foot.forefoot, sole.forward, -body.heelToForefoot);
  const askedAnkle = along(along(foot.forefoot, sole.forward, -body.ankleToForefoot), sole.up, body.ankleHeight);
  const toe = along(foot.forefoot, frameOf(foot.turn, foot.toes, 0).forward, body.toes);

  const bone = body.thigh + body.shank;
  const span = distance(hip, askedAnkle);
  const axis = unit(subtract(askedAnkle, hip), [0, -1, 0]);
  const d = Math.min(span, bone * FULL_REACH);
  const ankle = along(hip, axis, d);
  // The knee bends about the body's cross axis and turns out with the toes, so it tracks over them.
  const side1 = acrossTo(frame.left, axis, [1, 0, 0]);
  const ahead = cross(axis, side1);
  const out = foot.turn - Math.atan2(-frame.left[2], frame.left[0]);
  const towards = add(scale(ahead, Math.cos(out)), scale(side1, Math.sin(out)));
  const down = (body.thigh ** 2 - body.shank ** 2 + d * d) / (2 * d);
  const off = Math.sqrt(Math.max(0, body.thigh ** 2 - down ** 2));
  const knee = along(along(hip, axis, down), towards, off);

  const thigh = unit(subtract(knee, hip));
  const front = acrossTo(towards, thigh, frame.forward);
  return {
    hip,
    knee,
    ankle,
    heel,
    forefoot: foot.forefoot,
    toe,
    hipCrease: along(hip, front, body.flesh.hipCrease),
    kneeTop: [knee[0], knee[1] + body.flesh.kneeTop, knee[2]],
  };
}

/** Shoulder blades rise with the arm: a third of the way beyond level (the usual scapulo-humeral share, from memory). */
function shrugOf(raise: number): number {
  const s = Math.min(1, Math.max(0, (raise - 0.9) / 2.1));
  return 0.42 * s * s * s * (10 - 15 * s + 6 * s * s);
}

function armOf(body: Body, neckBase: Vec3, frame: Frame, arm: ArmPosture, side: Side): ArmPoints {
  const sign = signOf(side);
  const shrug = shrugOf(arm.raise);
  const shoulder = add(
    neckBase,
    inFrame(frame, sign * Math.cos(shrug) * body.shoulderHalf, Math.sin(shrug) * body.shoulderHalf, 0),
  );
  const cr = Math.cos(arm.raise);
  const sr = Math.sin(arm.raise);
  const cs = Math.cos(arm.spread);
  const upperDirection = inFrame(frame, sign * Math.sin(arm.spread), -cs * cr, cs * sr);
  const swing = inFrame(frame, 0, sr, cr);
  const rightward = unit(cross(upperDirection, swing));
  // The forearm folds a little inwards, as a relaxed arm does.
  const fold = unit(along(swing, rightward, sign * 0.3));
  const foreDirection = add(scale(upperDirection, Math.cos(arm.bend)), scale(fold, Math.sin(arm.bend)));
  const freeElbow = along(shoulder, upperDirection, body.upperArm);
  const freeWrist = along(freeElbow, foreDirection, body.forearm);
  if (arm.reach === null || arm.reach.weight <= 0) {
    return { shoulder, elbow: freeElbow, wrist: freeWrist, fingertip: along(freeWrist, foreDirection, body.hand) };
  }
  const w = arm.reach.weight;
  const bone = body.upperArm + body.forearm;
  // The goal is brought within reach first: then every blend with the free arm is within reach too.
  const asked = distance(shoulder, arm.reach.wrist);
  const goal = along(shoulder, unit(subtract(arm.reach.wrist, shoulder)), softReach(asked, bone));
  const blend = mix(freeWrist, goal, w);
  const axis = unit(subtract(blend, shoulder));
  const d = Math.max(distance(shoulder, blend), CLOSEST_REACH * bone);
  const wrist = along(shoulder, axis, d);
  const freeAxis = unit(subtract(freeWrist, shoulder));
  const freePole = acrossTo(subtract(freeElbow, shoulder), freeAxis, fold);
  const pole = acrossTo(mix(freePole, arm.reach.elbow, w), axis, fold);
  const down = (body.upperArm ** 2 - body.forearm ** 2 + d * d) / (2 * d);
  const off = Math.sqrt(Math.max(0, body.upperArm ** 2 - down ** 2));
  const elbow = along(along(shoulder, axis, down), pole, off);
  const foreArm = unit(subtract(wrist, elbow), foreDirection);
  const fingers = foldWrist(foreArm, unit(mix(foreArm, arm.reach.fingers, w), foreArm));
  return { shoulder, elbow, wrist, fingertip: along(wrist, fingers, body.hand) };
}

/** The hand's direction, held within what a wrist bends; it yields gently from `EASY_WRIST` on. */
function foldWrist(foreArm: Vec3, fingers: Vec3): Vec3 {
  const angle = radians(angleBetween(foreArm, fingers));
  if (angle <= EASY_WRIST) return fingers;
  const room = FULL_WRIST - EASY_WRIST;
  const held = EASY_WRIST + room * Math.tanh((angle - EASY_WRIST) / room);
  const side = acrossTo(fingers, foreArm, [0, 1, 0]);
  return add(scale(foreArm, Math.cos(held)), scale(side, Math.sin(held)));
}

/** Identity up to `EASY_REACH` of the arm, then a smooth approach to its full length. */
function softReach(asked: number, bone: number): number {
  const easy = EASY_REACH * bone;
  if (asked <= easy) return asked;
  const room = FULL_REACH * bone - easy;
  return easy + room * Math.tanh((asked - easy) / room);
}

type Points = Pick<Pose, 'pelvis' | 'neckBase' | 'headBase' | 'headTop' | 'legs' | 'arms'>;

function centreOf(pose: Points): Vec3 {
  let x = 0;
  let y = 0;
  let z = 0;
  const weigh = (share: number, from: Vec3, to: Vec3, centre: number): void => {
    x += share * (from[0] + (to[0] - from[0]) * centre);
    y += share * (from[1] + (to[1] - from[1]) * centre);
    z += share * (from[2] + (to[2] - from[2]) * centre);
  };
  const m = MASSES;
  weigh(m.trunk.share, pose.pelvis, pose.neckBase, m.trunk.centre);
  weigh(m.headAndNeck.share, pose.headBase, pose.headTop, 0.5);
  for (const leg of pose.legs) {
    weigh(m.thigh.share, leg.hip, leg.knee, m.thigh.centre);
    weigh(m.shank.share, leg.knee, leg.ankle, m.shank.centre);
    weigh(m.foot.share, leg.heel, leg.toe, m.foot.centre);
  }
  for (const arm of pose.arms) {
    weigh(m.upperArm.share, arm.shoulder, arm.elbow, m.upperArm.centre);
    weigh(m.forearm.share, arm.elbow, arm.wrist, m.forearm.centre);
    weigh(m.hand.share, arm.wrist, arm.fingertip, m.hand.centre);
  }
  return [x, y, z];
}
