import type { Body } from './body.ts';
import { leaning } from './burpee-poses.ts';
import { type FootPosture, type Pair, type Side, signOf } from './pose.ts';
import { poseOf } from './skeleton.ts';
import { ankleOf, HANGING, postureOf, stand, type TrunkPose } from './stance.ts';
import { clamp, distance, radians, type Vec3 } from './vector.ts';

/** Standing on the box with hips and knees bent by `closing` degrees (5 and less is tall). */
export function standingBent(body: Body, feet: Pair<FootPosture>, midFoot: number, closing: number): TrunkPose {
  const knees = clamp(closing * 1.05, 5, 95);
  const pitch = clamp((closing - knees / 2) / 0.83, 1, 60);
  return stand(body, feet, radians(knees), radians(pitch), midFoot + 0.02 * body.stature, HANGING, null);
}

/** Leaving the ground with hips bent by `closing` degrees. */
export function leavingBent(body: Body, feet: Pair<FootPosture>, lean: number, closing: number): TrunkPose {
  const knees = clamp(closing * 0.95, 37, 85);
  const pitch = clamp((closing - knees / 2 + lean) / 0.83, 4, 70);
  return leaning(body, feet, radians(lean), radians(knees), radians(pitch));
}

/** The hand that comes near the box: wrist and fingers, world. */
export interface HandPlace {
  readonly side: Side;
  readonly wrist: Vec3;
  readonly fingers: Vec3;
}

/**
 * Where the hand goes so that its fingertips lie `overlap` metres inside the box's far edge, `height` metres above it.
 */
export function handNearBox(
  body: Body,
  box: { readonly height: number; readonly halfDepth: number; readonly halfWidth: number },
  side: Side,
  overlap: number,
  height: number,
): HandPlace {
  const slope = radians(24);
  const fingers: Vec3 = [0, -Math.sin(slope), Math.cos(slope)];
  const x = signOf(side) * Math.min(0.14 * body.stature, box.halfWidth - 0.14);
  const tip: Vec3 = [x, box.height + height, box.halfDepth - overlap];
  return {
    side,
    fingers,
    wrist: [tip[0], tip[1] - fingers[1] * body.hand, tip[2] - fingers[2] * body.hand],
  };
}

/** The shallowest stoop over the feet, `aside` metres to the left of their middle, from which a hand reaches its place. */
export function stoopTo(body: Body, feet: Pair<FootPosture>, hand: HandPlace, aside: number): TrunkPose {
  const ankle = ankleOf(body, feet[0]);
  const stoop = (share: number): TrunkPose => {
    const height = ankle[1] + (0.33 - 0.06 * share) * body.stature;
    const shin = radians(24 + 8 * share);
    const kneeHeight = ankle[1] + body.shank * Math.cos(shin);
    const back = Math.sqrt(Math.max(0, body.thigh ** 2 - (height - kneeHeight) ** 2));
    return {
      pelvis: [aside, height, ankle[2] + body.shank * Math.sin(shin) - back],
      pelvisPitch: radians(22 + 10 * share),
      chestPitch: radians(44 + 67 * share),
    };
  };
  let low = 0;
  let high = 1;
  for (let i = 0; i < 10; i += 1) {
    const middle = (low + high) / 2;
    const shoulder = poseOf(body, postureOf(stoop(middle), feet, HANGING)).arms[hand.side].shoulder;
    if (distance(shoulder, hand.wrist) > 0.88 * (body.upperArm + body.forearm)) low = middle;
    else high = middle;
  }
  return stoop(high);
}
