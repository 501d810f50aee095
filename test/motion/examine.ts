import { bothSides, spineAngles } from '../../shared-types/motion/angles.ts';
import type { Body } from '../../shared-types/motion/body.ts';
import type { Motion } from '../../shared-types/motion/motion.ts';
import type { Pose } from '../../shared-types/motion/pose.ts';
import { distance, mix, type Vec3 } from '../../shared-types/motion/vector.ts';

/** Every segment of a pose with its length, m. */
export function segments(pose: Pose): Record<string, number> {
  const found: Record<string, number> = {
    lowerTrunk: distance(pose.pelvis, pose.waist),
    upperTrunk: distance(pose.waist, pose.neckBase),
    neck: distance(pose.neckBase, pose.headBase),
    head: distance(pose.headBase, pose.headTop),
  };
  for (const [side, leg] of pose.legs.entries()) {
    found[`hip${side}`] = distance(pose.pelvis, leg.hip);
    found[`thigh${side}`] = distance(leg.hip, leg.knee);
    found[`shank${side}`] = distance(leg.knee, leg.ankle);
    found[`ankleHeel${side}`] = distance(leg.ankle, leg.heel);
    found[`ankleForefoot${side}`] = distance(leg.ankle, leg.forefoot);
    found[`sole${side}`] = distance(leg.heel, leg.forefoot);
    found[`toes${side}`] = distance(leg.forefoot, leg.toe);
  }
  for (const [side, arm] of pose.arms.entries()) {
    found[`shoulder${side}`] = distance(pose.neckBase, arm.shoulder);
    found[`upperArm${side}`] = distance(arm.shoulder, arm.elbow);
    found[`forearm${side}`] = distance(arm.elbow, arm.wrist);
    found[`hand${side}`] = distance(arm.wrist, arm.fingertip);
  }
  return found;
}

/** Every named point of a pose. */
export function points(pose: Pose): Record<string, Vec3> {
  const found: Record<string, Vec3> = {
    pelvis: pose.pelvis,
    waist: pose.waist,
    neckBase: pose.neckBase,
    headBase: pose.headBase,
    headTop: pose.headTop,
    chest: pose.chest,
  };
  for (const [side, leg] of pose.legs.entries()) {
    for (const [name, p] of Object.entries(leg)) found[`${name}${side}`] = p as Vec3;
  }
  for (const [side, arm] of pose.arms.entries()) {
    for (const [name, p] of Object.entries(arm)) found[`${name}${side}`] = p as Vec3;
  }
  if (pose.ball !== null) found.ball = pose.ball.centre;
  return found;
}

export interface Bound {
  readonly low: number;
  readonly high: number;
}

/** Each joint angle of a pose, degrees, both sides under one name. */
export function angles(pose: Pose): (readonly [name: string, value: number])[] {
  const spine = spineAngles(pose);
  const found: (readonly [string, number])[] = [
    ['back', spine.back],
    ['neck', spine.neck],
    ['twist', spine.twist],
  ];
  for (const side of bothSides(pose)) {
    for (const [name, value] of Object.entries(side)) found.push([name, value as number]);
  }
  return found;
}

/** Least height over the floor of each part's flesh, m: negative where it goes through. */
export function floorClearance(body: Body, pose: Pose): (readonly [name: string, value: number])[] {
  const f = body.flesh;
  const found: (readonly [string, number])[] = [
    ['chest', pose.chest[1]],
    ['pelvis', pose.pelvis[1] - f.pelvisDepth],
    ['head', mix(pose.headBase, pose.headTop, 0.5)[1] - f.head],
  ];
  for (const leg of pose.legs) {
    found.push(['knee', leg.knee[1] - f.knee], ['hip', leg.hip[1] - f.thigh], ['ankle', leg.ankle[1] - f.ankle]);
    found.push(['heel', leg.heel[1]], ['forefoot', leg.forefoot[1]], ['toe', leg.toe[1]]);
  }
  for (const arm of pose.arms) {
    found.push(['elbow', arm.elbow[1] - f.elbow], ['wrist', arm.wrist[1] - f.wrist], ['fingertip', arm.fingertip[1]]);
    found.push(['shoulder', arm.shoulder[1] - f.upperArm]);
  }
  return found;
}

/** Deepest intrusion of a limb into the box, m; 0 when clear. */
export function boxIntrusion(motion: Motion, pose: Pose): readonly [name: string, value: number] {
  const box = motion.scene.box;
  if (box === null) return ['none', 0];
  let worst: readonly [string, number] = ['none', 0];
  const look = (name: string, p: Vec3): void => {
    const depth = Math.min(box.height - p[1], box.halfDepth - Math.abs(p[2] - box.z), box.halfWidth - Math.abs(p[0]));
    if (depth > worst[1]) worst = [name, depth];
  };
  const line = (name: string, a: Vec3, b: Vec3): void => {
    for (let k = 0; k <= 4; k += 1) look(name, mix(a, b, k / 4));
  };
  for (const leg of pose.legs) {
    line('thigh', leg.hip, leg.knee);
    line('shank', leg.knee, leg.ankle);
    line('sole', leg.heel, leg.forefoot);
    line('toes', leg.forefoot, leg.toe);
  }
  for (const arm of pose.arms) {
    line('upperArm', arm.shoulder, arm.elbow);
    line('forearm', arm.elbow, arm.wrist);
    line('hand', arm.wrist, arm.fingertip);
  }
  look('head', pose.headTop);
  look('chest', pose.chest);
  return worst;
}

/** Times at which a rep is looked at: even steps, and close around every moment. */
export function times(motion: Motion, pace: number): number[] {
  const found: number[] = [];
  for (let t = 0; t <= motion.duration; t += pace) found.push(t);
  for (const { t } of motion.moments) found.push(Math.max(0, t - 1e-3), t, Math.min(motion.duration, t + 1e-3));
  return found.sort((a, b) => a - b);
}
