import { hipClosing, kneeFlexion } from '../../../../shared-types/motion/angles.ts';
import type { MomentName } from '../../../../shared-types/motion/choreography.ts';
import {
  distanceToBox,
  handPoints,
  least,
  liftOff,
  soleHeight,
  touchDown,
} from '../../../../shared-types/motion/measure.ts';
import { type Motion, momentOf } from '../../../../shared-types/motion/motion.ts';
import { type ArmPoints, type LegPoints, type Pose, SIDES, type Side } from '../../../../shared-types/motion/pose.ts';
import type { FaultCode, SheetNumbers } from '../../../../shared-types/motion/specification.ts';
import type { Truth } from '../../../../shared-types/motion/truth.ts';
import { mix, type Vec3 } from '../../../../shared-types/motion/vector.ts';

export type MarkLine = readonly [from: Vec3, to: Vec3];

/** A margin as it is drawn into the picture. */
export interface Mark {
  readonly code: FaultCode;
  /** Seconds into the rep at which it was measured. */
  readonly t: number;
  readonly met: boolean;
  /** What is measured against, and from where: thin lines. */
  readonly guides: readonly MarkLine[];
  /** What was measured: thick. */
  readonly spans: readonly MarkLine[];
  /** Where its figure stands. */
  readonly label: Vec3;
}

interface Drawn {
  readonly t: number;
  readonly guides: readonly MarkLine[];
  readonly spans: readonly MarkLine[];
}

const first = <T>(items: readonly T[], value: (item: T) => number): T | undefined =>
  items.toSorted((one, other) => value(one) - value(other))[0];
const level = (at: Vec3, y: number): Vec3 => [at[0], y, at[2]];
const onFloor = (x: number, z: number): Vec3 => [x, 0.012, z];

/**
 * The margin of one fault at the instant and place at which the truth measures it (the same points as shared-types/motion
 * `truth`). Null where the rep gives no occasion for it.
 */
export function markOf(motion: Motion, sheet: SheetNumbers, code: FaultCode, truth: Truth): Mark | null {
  const found = truth[code];
  if (found === undefined || found.margin === null) return null;
  const drawn = draw(motion, sheet, code);
  if (drawn === null) return null;
  const [from, to] = drawn.spans[0] ??
    drawn.guides[0] ?? [
      [0, 1, 0],
      [0, 1, 0],
    ];
  return { code, met: found.met, label: mix(from, to, 0.5), ...drawn };
}

function draw(motion: Motion, sheet: SheetNumbers, code: FaultCode): Drawn | null {
  switch (code) {
    case 'depth':
      return depth(motion);
    case 'line':
    case 'aim':
      return atWall(motion, sheet, code);
    case 'stand':
      return angle(motion, when(motion, 'ready'), when(motion, 'descent'), 6);
    case 'tall':
      return angle(motion, when(motion, 'box-landing'), when(motion, 'box-take-off'), 24);
    case 'bounce':
      return bounce(motion, sheet);
    case 'chest':
      return chest(motion);
    case 'hands':
    case 'over':
      return handsAndToes(motion, sheet, code);
    case 'off':
    case 'on':
      return motion.scene.box !== null && code === 'on' ? onBox(motion) : together(motion, code);
    case 'creep':
    case 'start':
      return alongLane(motion, sheet, code);
    case 'touch':
      return touch(motion);
  }
}

function when(motion: Motion, name: MomentName): number {
  return momentOf(motion, name) ?? 0;
}

function depth(motion: Motion): Drawn {
  const above = (leg: LegPoints): number => leg.hipCrease[1] - leg.kneeTop[1];
  const worst = (pose: Pose): number => Math.max(...pose.legs.map(above));
  const { t } = least((time) => worst(motion.at(time)), when(motion, 'descent'), when(motion, 'release'), 24);
  const leg = first(motion.at(t).legs, (one) => -above(one)) ?? motion.at(t).legs[0];
  const { hipCrease: crease, kneeTop: knee } = leg;
  const [back, front] = [crease[2] - 0.3, knee[2] + 0.2];
  return {
    t,
    guides: [
      [
        [knee[0], knee[1], back],
        [knee[0], knee[1], front],
      ],
      [
        [crease[0], crease[1], back],
        [crease[0], crease[1], crease[2] + 0.12],
      ],
    ],
    spans: [[crease, [crease[0], knee[1], crease[2]]]],
  };
}

function atWall(motion: Motion, sheet: SheetNumbers, code: 'line' | 'aim'): Drawn | null {
  const t = when(motion, 'wall-contact');
  const ball = motion.at(t).ball?.centre;
  const z = motion.scene.wallZ;
  if (ball === undefined || z === null) return null;
  if (code === 'line') {
    return {
      t,
      guides: [
        [
          [ball[0] - 0.5, sheet.lineHeight, ball[2]],
          [ball[0] + 0.5, sheet.lineHeight, ball[2]],
        ],
      ],
      spans: [[ball, level(ball, sheet.lineHeight)]],
    };
  }
  const edge = ((ball[0] < 0 ? -1 : 1) * sheet.targetWidth) / 2;
  return {
    t,
    guides: [
      [
        [edge, sheet.lineHeight - 0.5, ball[2]],
        [edge, sheet.lineHeight + 0.7, ball[2]],
      ],
    ],
    spans: [[ball, [edge, ball[1], ball[2]]]],
  };
}

/** Trunk, thigh and shank of the side that is bent most. */
function angle(motion: Motion, from: number, to: number, samples: number): Drawn {
  const bend = (pose: Pose, side: Side): number => Math.max(kneeFlexion(pose, side), hipClosing(pose, side));
  const most = (pose: Pose): number => Math.max(...SIDES.map((side) => bend(pose, side)));
  const { t } = least((time) => most(motion.at(time)), from, to, samples);
  const pose = motion.at(t);
  const side = bend(pose, 0) >= bend(pose, 1) ? 0 : 1;
  const leg = pose.legs[side];
  const { up } = pose.frames.pelvis;
  const top: Vec3 = [leg.hip[0] + 0.5 * up[0], leg.hip[1] + 0.5 * up[1], leg.hip[2] + 0.5 * up[2]];
  const upright: Vec3 = [leg.ankle[0], leg.ankle[1] + 1.3, leg.ankle[2]];
  return {
    t,
    guides: [[leg.ankle, upright]],
    spans: [
      [leg.hip, top],
      [leg.hip, leg.knee],
      [leg.knee, leg.ankle],
    ],
  };
}

function bounce(motion: Motion, sheet: SheetNumbers): Drawn | null {
  const t = momentOf(motion, 'pick-up');
  const ball = t === null ? undefined : motion.at(t).ball?.centre;
  if (t === null || ball === undefined) return null;
  const under = ball[1] - sheet.ballRadius;
  return {
    t,
    guides: [
      [
        [ball[0] - 0.4, 0.005, ball[2]],
        [ball[0] + 0.4, 0.005, ball[2]],
      ],
    ],
    spans: [[level(ball, 0), level(ball, under)]],
  };
}

function chest(motion: Motion): Drawn {
  const { t } = least((time) => motion.at(time).chest[1], when(motion, 'hands-down'), when(motion, 'feet-in'), 20);
  const at = motion.at(t).chest;
  return {
    t,
    guides: [
      [
        [at[0], 0.005, at[2] - 0.5],
        [at[0], 0.005, at[2] + 0.5],
      ],
    ],
    spans: [[level(at, 0), at]],
  };
}

function handsAndToes(motion: Motion, sheet: SheetNumbers, code: 'hands' | 'over'): Drawn {
  const t = when(motion, code === 'hands' ? 'hands-down' : 'feet-in');
  const down = motion.at(when(motion, 'hands-down'));
  const tip = first(down.arms, (arm: ArmPoints) => -arm.fingertip[2])?.fingertip ?? [0, 0, 0];
  const toe = first(motion.at(t).legs, (leg) => -leg.toe[2])?.toe ?? [0, 0, 0];
  const x = tip[0];
  const across = (z: number): MarkLine => [onFloor(-0.45, z), onFloor(0.45, z)];
  if (code === 'over')
    return { t, guides: [across(tip[2])], spans: [[onFloor(toe[0], toe[2]), onFloor(toe[0], tip[2])]] };
  const allowed = toe[2] + sheet.handsAllowance / 100;
  return { t, guides: [across(toe[2]), across(allowed)], spans: [[onFloor(x, allowed), onFloor(x, tip[2])]] };
}

/** The later foot's way when the first has left, or when the first has landed. */
function together(motion: Motion, code: 'off' | 'on'): Drawn {
  const takeOff = when(motion, 'take-off');
  const landing = momentOf(motion, 'landing') ?? motion.duration;
  const end = momentOf(motion, 'box-landing') ?? landing;
  const middle = (takeOff + end) / 2;
  const times = SIDES.map((side) =>
    code === 'off'
      ? liftOff(motion.at, side, 0, when(motion, 'crouch'), middle)
      : touchDown(motion.at, side, 0, middle, motion.duration),
  );
  // One foot has changed and the other has not yet: its height then is the picture of the difference in time.
  const later: Side = (times[0] ?? 0) >= (times[1] ?? 0) ? 0 : 1;
  const t = code === 'off' ? Math.max(...times) : Math.min(...times);
  const foot = motion.at(t).legs[code === 'off' ? (later === 0 ? 1 : 0) : later];
  const ball = foot.forefoot;
  return {
    t,
    guides: [
      [
        [ball[0], 0.005, ball[2] - 0.35],
        [ball[0], 0.005, ball[2] + 0.35],
      ],
    ],
    spans: [[level(ball, 0), level(ball, Math.max(0.004, soleHeight(foot)))]],
  };
}

function alongLane(motion: Motion, sheet: SheetNumbers, code: 'creep' | 'start'): Drawn {
  const t = code === 'creep' ? when(motion, 'hands-down') : 0;
  const leg = first(motion.at(t).legs, (one) => -one.toe[2]) ?? motion.at(t).legs[0];
  const side = motion.at(t).legs[0] === leg ? 0 : 1;
  const from = code === 'creep' ? motion.at(0).legs[side].toe[2] : (motion.scene.startLineZ ?? 0);
  const across = (z: number): MarkLine => [onFloor(-0.45, z), onFloor(0.45, z)];
  const guides = code === 'creep' ? [across(from), across(from + sheet.creepAllowance / 100)] : [across(from)];
  return { t, guides, spans: [[onFloor(leg.toe[0], from), onFloor(leg.toe[0], leg.toe[2])]] };
}

function onBox(motion: Motion): Drawn | null {
  const { box } = motion.scene;
  if (box === null) return null;
  const [from, to] = [when(motion, 'box-landing'), when(motion, 'box-take-off')];
  const high = (side: Side) => least((t) => soleHeight(motion.at(t).legs[side]), from, to, 16);
  const worst = first(SIDES, (side) => -high(side).value) ?? 0;
  const { t, value } = high(worst);
  const { forefoot } = motion.at(t).legs[worst];
  return {
    t,
    guides: [
      [
        [forefoot[0], box.height + 0.003, forefoot[2] - 0.35],
        [forefoot[0], box.height + 0.003, forefoot[2] + 0.35],
      ],
    ],
    spans: [[level(forefoot, box.height), level(forefoot, value)]],
  };
}

function touch(motion: Motion): Drawn | null {
  const { box } = motion.scene;
  if (box === null) return null;
  const points = (t: number): readonly Vec3[] =>
    motion.at(t).arms.flatMap((arm) => handPoints(arm.wrist, arm.fingertip));
  const gap = (t: number): number => Math.min(...points(t).map((point) => distanceToBox(point, box)));
  const { t } = least(gap, when(motion, 'crouch'), when(motion, 'turn'), 60);
  const hand = first(points(t), (point) => distanceToBox(point, box));
  if (hand === undefined) return null;
  const onto: Vec3 = [
    Math.min(box.halfWidth, Math.max(-box.halfWidth, hand[0])),
    Math.min(box.height, hand[1]),
    Math.min(box.z + box.halfDepth, Math.max(box.z - box.halfDepth, hand[2])),
  ];
  return { t, guides: [], spans: [[hand, onto]] };
}
