import type { Body } from './body.ts';
import type { BallPose, FootPosture, Pair, Pose, Posture, Reach, Side } from './pose.ts';
import { signOf } from './pose.ts';
import { poseOf } from './skeleton.ts';
import { type Path, pathAt, step, type Track } from './smooth.ts';
import {
  acrossTo,
  add,
  along,
  type Frame,
  frameOf,
  inFrame,
  length,
  scale,
  subtract,
  unit,
  type Vec3,
} from './vector.ts';

/** Metres per second squared, as the design fixes it. */
export const GRAVITY = 9.81;

/** What one foot does in one stretch of time: stands, steps along a path of the world, or swings with the pelvis. */
export type FootSpan =
  | { readonly kind: 'planted'; readonly from: number; readonly to: number; readonly at: Vec3 }
  | { readonly kind: 'step'; readonly from: number; readonly to: number; readonly path: Path }
  | { readonly kind: 'swing'; readonly from: number; readonly to: number; readonly path: Path };

export interface FootLine {
  readonly spans: readonly FootSpan[];
  readonly turn: Track;
  readonly lift: Track;
  readonly toes: Track;
}

export type Goal =
  | {
      readonly kind: 'point';
      readonly wrist: Vec3;
      readonly fingers: Vec3;
      readonly elbow: readonly [out: number, up: number, ahead: number];
    }
  /**
   * The hand stays on the ball; from `ghostFrom` on it follows where `hold` would have carried the ball instead, and
   * until the time of `waits` it waits where the ball will be.
   */
  | {
      readonly kind: 'ball';
      readonly hold: Path;
      readonly ghostFrom: number;
      readonly waits?: { readonly until: number; readonly at: Vec3 };
    };

/** The hand goes to a goal between `from` and `arrive`, stays until `leave`, is free again at `to`. */
export interface ReachSpan {
  readonly from: number;
  readonly arrive: number;
  readonly leave: number;
  readonly to: number;
  readonly goal: Goal;
}

export interface ArmLine {
  readonly raise: Track;
  readonly spread: Track;
  readonly bend: Track;
  readonly reaches: readonly ReachSpan[];
}

export type BallSpan =
  /** In the hands: the centre relative to the base of the neck, along the world's axes. */
  | { readonly kind: 'held'; readonly from: number; readonly to: number; readonly path: Path }
  | {
      readonly kind: 'flying';
      readonly from: number;
      readonly to: number;
      readonly start: Vec3;
      readonly velocity: Vec3;
    }
  | { readonly kind: 'resting'; readonly from: number; readonly to: number; readonly at: Vec3 };

/** Time in the air: the centre of mass leaves `start` with `velocity` and follows gravity. */
export interface Flight {
  readonly from: number;
  readonly to: number;
  readonly start: Vec3;
  readonly velocity: Vec3;
}

export const MOMENTS = [
  'start',
  'drop',
  'pick-up',
  'ready',
  'descent',
  'bottom',
  'release',
  'apex',
  'wall-contact',
  'catch',
  'floor-bounce',
  'hands-down',
  'feet-back',
  'chest-down',
  'chest-up',
  'feet-in',
  'hands-up',
  'crouch',
  'take-off',
  'landing',
  'box-landing',
  'tallest',
  'box-take-off',
  'turn',
  'end',
] as const;
export type MomentName = (typeof MOMENTS)[number];
export interface Moment {
  readonly name: MomentName;
  readonly t: number;
}

/** Everything that moves in one rep, as smooth curves over its seconds. */
export interface Choreography {
  readonly body: Body;
  readonly duration: number;
  readonly pelvis: Path;
  readonly pelvisTurn: Track;
  readonly pelvisPitch: Track;
  readonly pelvisRoll: Track;
  readonly chestTurn: Track;
  readonly chestPitch: Track;
  readonly chestRoll: Track;
  readonly headTurn: Track;
  readonly headPitch: Track;
  readonly feet: Pair<FootLine>;
  readonly arms: Pair<ArmLine>;
  readonly ball: readonly BallSpan[];
  readonly ballRadius: number;
  readonly flights: readonly Flight[];
  readonly moments: readonly Moment[];
}

/** Base of the neck without solving the limbs: the ball in the hands hangs on it. */
export function neckBaseAt(c: Choreography, t: number, pelvis: Vec3 = pathAt(c.pelvis, t)): Vec3 {
  const hips = frameOf(c.pelvisTurn.at(t), c.pelvisPitch.at(t), c.pelvisRoll.at(t));
  const chest = frameOf(c.chestTurn.at(t), c.chestPitch.at(t), c.chestRoll.at(t));
  return along(along(pelvis, hips.up, c.body.lowerTrunk), chest.up, c.body.upperTrunk);
}

function ballAt(c: Choreography, t: number, neckBase: Vec3): BallPose | null {
  const span = c.ball.find((item) => t < item.to) ?? c.ball[c.ball.length - 1];
  if (span === undefined) return null;
  if (span.kind === 'held') return { centre: add(neckBase, pathAt(span.path, t)), state: 'held' };
  if (span.kind === 'resting') return { centre: span.at, state: 'resting' };
  return { centre: ballistic(span.start, span.velocity, t - span.from), state: 'flying' };
}

/** Place after `s` seconds of free flight. */
export function ballistic(start: Vec3, velocity: Vec3, s: number): Vec3 {
  return [start[0] + velocity[0] * s, start[1] + velocity[1] * s - (GRAVITY * s * s) / 2, start[2] + velocity[2] * s];
}

/** Where a palm lies on a ball, and what the arm does for it: under and behind the ball, fingers up and ahead. */
export function handOnBall(body: Body, radius: number, side: Side, ball: Vec3, chest: Frame): Omit<Reach, 'weight'> {
  const level = frameOf(Math.atan2(-chest.left[2], chest.left[0]), 0, 0);
  const sign = signOf(side);
  const palm = unit(inFrame(level, sign * 0.74, -0.48, -0.47));
  const fingers = acrossTo(inFrame(level, sign * -0.1, 0.62, 0.78), palm, level.up);
  const touch = along(ball, palm, radius + body.flesh.hand);
  return {
    wrist: along(touch, fingers, -0.45 * body.hand),
    fingers,
    elbow: unit(inFrame(chest, sign * 0.62, -0.72, 0.3)),
  };
}

function reachAt(
  c: Choreography,
  side: Side,
  t: number,
  neckBase: Vec3,
  ball: BallPose | null,
  chest: Frame,
): Reach | null {
  for (const span of c.arms[side].reaches) {
    if (t < span.from || t > span.to) continue;
    const weight = Math.min(step(t, span.from, span.arrive), 1 - step(t, span.leave, span.to));
    if (weight <= 0) return null;
    if (span.goal.kind === 'point') {
      const [out, up, ahead] = span.goal.elbow;
      return {
        weight,
        wrist: span.goal.wrist,
        fingers: span.goal.fingers,
        elbow: unit(inFrame(chest, signOf(side) * out, up, ahead)),
      };
    }
    const { waits, hold, ghostFrom } = span.goal;
    const centre =
      waits !== undefined && t < waits.until ? waits.at : t > ghostFrom ? add(neckBase, pathAt(hold, t)) : ball?.centre;
    return centre === undefined ? null : { weight, ...handOnBall(c.body, c.ballRadius, side, centre, chest) };
  }
  return null;
}

function footAt(line: FootLine, t: number, pelvis: Vec3): FootPosture {
  const span = line.spans.find((item) => t <= item.to) ?? line.spans[line.spans.length - 1];
  const place: Vec3 =
    span === undefined
      ? pelvis
      : span.kind === 'planted'
        ? span.at
        : span.kind === 'step'
          ? pathAt(span.path, t)
          : add(pelvis, pathAt(span.path, t));
  return { forefoot: place, turn: line.turn.at(t), lift: line.lift.at(t), toes: line.toes.at(t) };
}

/** Pose at `t` with the pelvis at a given place. */
export function poseWith(c: Choreography, t: number, pelvis: Vec3): Pose {
  const neckBase = neckBaseAt(c, t, pelvis);
  const chest = frameOf(c.chestTurn.at(t), c.chestPitch.at(t), c.chestRoll.at(t));
  const ball = ballAt(c, t, neckBase);
  const arm = (side: Side): Posture['arms'][0] => ({
    raise: c.arms[side].raise.at(t),
    spread: c.arms[side].spread.at(t),
    bend: c.arms[side].bend.at(t),
    reach: reachAt(c, side, t, neckBase, ball, chest),
  });
  const posture: Posture = {
    pelvis,
    pelvisTurn: c.pelvisTurn.at(t),
    pelvisPitch: c.pelvisPitch.at(t),
    pelvisRoll: c.pelvisRoll.at(t),
    chestTurn: c.chestTurn.at(t),
    chestPitch: c.chestPitch.at(t),
    chestRoll: c.chestRoll.at(t),
    headTurn: c.headTurn.at(t),
    headPitch: c.headPitch.at(t),
    feet: [footAt(c.feet[0], t, pelvis), footAt(c.feet[1], t, pelvis)],
    arms: [arm(0), arm(1)],
  };
  return poseOf(c.body, posture, ball);
}

/** Pose at `t`, seconds since the rep's start. In the air the pelvis is where gravity puts the centre of mass. */
export function poseAt(c: Choreography, t: number): Pose {
  const time = Math.min(c.duration, Math.max(0, t));
  let pelvis: Vec3 = pathAt(c.pelvis, time);
  const flight = c.flights.find((item) => time > item.from && time < item.to);
  if (flight === undefined) return poseWith(c, time, pelvis);
  const centre = ballistic(flight.start, flight.velocity, time - flight.from);
  let pose = poseWith(c, time, pelvis);
  for (let i = 0; i < 8; i += 1) {
    const error = subtract(centre, pose.centreOfMass);
    if (length(error) < 1e-9) break;
    pelvis = add(pelvis, error);
    pose = poseWith(c, time, pelvis);
  }
  return pose;
}

/** Velocity of the neck's base, for a ball that leaves or meets the hands. */
export function neckRate(c: Choreography, t: number): Vec3 {
  const h = 1e-4;
  return scale(subtract(neckBaseAt(c, t + h), neckBaseAt(c, t - h)), 1 / (2 * h));
}
