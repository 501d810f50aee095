import type { Body } from './body.ts';
import type { BallPose, FootPosture, Pair, Pose, Posture, Reach, Side } from './pose.ts';
import { signOf } from './pose.ts';
import { poseOf } from './skeleton.ts';
import { type Path, type PathKey, path, pathAt, pathRate, step, type Track } from './smooth.ts';
import {
  acrossTo,
  add,
  along,
  distance,
  type Frame,
  frameOf,
  inFrame,
  length,
  mix,
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
  /** The hand stays on the ball; from `ghostFrom` on it follows where `hold` would have carried the ball instead. */
  | { readonly kind: 'ball'; readonly hold: Path; readonly ghostFrom: number };

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
    const centre = t > span.goal.ghostFrom ? add(neckBase, pathAt(span.goal.hold, t)) : ball?.centre;
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

/**
 * Velocity (m/s) and acceleration (m/s^2) of the pelvis in the air at a flight's two ends: unknown until the legs are
 * known, so they are settled.
 */
export interface Join {
  readonly off: Vec3;
  readonly on: Vec3;
  readonly offBend: Vec3;
  readonly onBend: Vec3;
}

/** A first guess. */
export const ANY_JOIN: Join = {
  off: [0, 2, 1.6],
  on: [0, -2, 1.6],
  offBend: [0, -GRAVITY, 0],
  onBend: [0, -GRAVITY, 0],
};

/**
 * Builds a choreography whose pelvis leaves and meets the ground with the very velocities that free flight gives it.
 * @param times take-off and landing of each flight, seconds
 * @param build makes the choreography for given joins; its `flights` are filled in here
 * @param memory keeps the settled joins, a good guess for a slightly different rep
 */
export function settleFlights(
  times: readonly { readonly from: number; readonly to: number }[],
  build: (joins: readonly Join[]) => Choreography,
  memory: { joins?: readonly Join[] } = {},
): Choreography {
  let joins: readonly Join[] = memory.joins ?? times.map(() => ANY_JOIN);
  let settled = build(joins);
  for (let round = 0; round < 30; round += 1) {
    const flights = times.map((time) => flightOf(settled, time.from, time.to));
    settled = { ...settled, flights };
    const next = flights.map((flight): Join => {
      const [off, offBend] = pelvisMotion(settled, flight.from, 1);
      const [on, onBend] = pelvisMotion(settled, flight.to, -1);
      return { off, on, offBend, onBend };
    });
    const change = Math.max(
      0,
      ...next.map(
        (join, i) => distance(join.off, joins[i]?.off ?? join.off) + distance(join.on, joins[i]?.on ?? join.on),
      ),
    );
    if (change < 1e-4) {
      memory.joins = joins;
      return settled;
    }
    joins = joins.map((join, i) => beyond(join, next[i] ?? join));
    settled = build(joins);
  }
  const flights = times.map((time) => flightOf(settled, time.from, time.to));
  return { ...settled, flights };
}

/**
 * Plain repetition closes about four fifths of the gap each round (the legs' share of the mass); going this much farther
 * closes nearly all of it.
 */
const OVERSHOOT = 1.25;

function beyond(from: Join, to: Join): Join {
  return {
    off: mix(from.off, to.off, OVERSHOOT),
    on: mix(from.on, to.on, OVERSHOOT),
    offBend: to.offBend,
    onBend: to.onBend,
  };
}

function flightOf(c: Choreography, from: number, to: number): Flight {
  const start = poseWith(c, from, pathAt(c.pelvis, from)).centreOfMass;
  const end = poseWith(c, to, pathAt(c.pelvis, to)).centreOfMass;
  const T = to - from;
  return { from, to, start, velocity: add(scale(subtract(end, start), 1 / T), [0, (GRAVITY * T) / 2, 0]) };
}

/** One-sided velocity and acceleration of the pelvis in the air. */
function pelvisMotion(c: Choreography, t: number, direction: 1 | -1): [rate: Vec3, bend: Vec3] {
  const h = 5e-4 * direction;
  const p0 = pathAt(c.pelvis, t);
  const p1 = poseAt(c, t + h).pelvis;
  const p2 = poseAt(c, t + 2 * h).pelvis;
  const p3 = poseAt(c, t + 3 * h).pelvis;
  const combine = (a: number, b: number, d: number, e: number, by: number): Vec3 =>
    scale(add(add(scale(p0, a), scale(p1, b)), add(scale(p2, d), scale(p3, e))), 1 / by);
  return [combine(-11, 18, -9, 2, 6 * h), combine(2, -5, 4, -1, h * h)];
}

/** How long a foot needs to gather the pelvis's speed after lift-off, and to give it up before landing, seconds. */
const GATHER = 0.03;
const GIVE_UP = 0.042;

/** One end of a swing: the foot's place and the pelvis's place and velocity at that instant. */
export interface SwingEnd {
  readonly t: number;
  readonly foot: Vec3;
  readonly pelvis: Vec3;
  readonly rate: Vec3;
  readonly bend: Vec3;
  /** The foot's own velocity in the world, m/s: none on the ground. */
  readonly footRate: Vec3 | null;
}

/** Slowest rise and fall of a foot at the ends of a swing, m/s. */
const CLEAR = 0.7;

/** How sharply a foot lifts off and is set down, m/s^2: the same on both sides, so that the sides can be compared. */
export const SNAP: Vec3 = [0, 20, 0];

/**
 * A foot that leaves the ground and meets it again without a jump in velocity, carried by the pelvis between.
 * @param middle places of the foot relative to the pelvis on the way
 */
export function swing(off: SwingEnd, on: SwingEnd, middle: readonly PathKey[]): FootSpan {
  const p0 = subtract(off.foot, off.pelvis);
  const p1 = subtract(on.foot, on.pelvis);
  // The foot takes up, or gives up, the pelvis's speed; it always leaves and comes in from above.
  const leaving: Vec3 = [off.rate[0], Math.max(off.rate[1], CLEAR), off.rate[2]];
  const coming: Vec3 = [on.rate[0], Math.min(on.rate[1], -CLEAR), on.rate[2]];
  const lift = off.footRate;
  const land = on.footRate;
  return {
    kind: 'swing',
    from: off.t,
    to: on.t,
    path: path([
      {
        t: off.t,
        p: p0,
        v: subtract(lift ?? [0, 0, 0], off.rate),
        a: subtract(lift === null ? SNAP : [0, 0, 0], off.bend),
      },
      { t: off.t + GATHER, p: along(along(p0, leaving, 0.58 * GATHER), off.rate, -GATHER) },
      ...middle,
      { t: on.t - GIVE_UP, p: along(along(p1, coming, -0.58 * GIVE_UP), on.rate, GIVE_UP) },
      {
        t: on.t,
        p: p1,
        v: subtract(land ?? [0, 0, 0], on.rate),
        a: subtract(land === null ? SNAP : [0, 0, 0], on.bend),
      },
    ]),
  };
}

/** A low step over the ground from one place to another. */
export function stepTo(from: number, to: number, start: Vec3, end: Vec3, height: number): FootSpan {
  const top = Math.max(start[1], end[1]) + height;
  return {
    kind: 'step',
    from,
    to,
    path: path([
      { t: from, p: start, v: [0, 0, 0], a: [0, 8, 0] },
      { t: (from + to) / 2, p: [(start[0] + end[0]) / 2, top, (start[2] + end[2]) / 2] },
      { t: to, p: end, v: [0, 0, 0], a: [0, 8, 0] },
    ]),
  };
}

/** Velocity of the neck's base, for a ball that leaves or meets the hands. */
export function neckRate(c: Choreography, t: number): Vec3 {
  const h = 1e-4;
  return scale(subtract(neckBaseAt(c, t + h), neckBaseAt(c, t - h)), 1 / (2 * h));
}

export const pelvisRateAt = (c: { readonly pelvis: Path }, t: number): Vec3 => pathRate(c.pelvis, t);
