import type { Body } from './body.ts';
import { type BallSpan, ballistic, GRAVITY, handOnBall, type Moment } from './choreography.ts';
import { type FootPosture, type Pair, SIDES } from './pose.ts';
import { poseOf } from './skeleton.ts';
import { CARRYING, postureOf, squat, type TrunkPose } from './stance.ts';
import { distance, frameOf, type Vec3 } from './vector.ts';

/** A ball let fall and taken up again before the throw. */
export interface Pickup {
  readonly drop: number;
  readonly take: number;
  /** The athlete stands with the ball again. */
  readonly ready: number;
  /** Centre of the ball when the hands take it. */
  readonly place: Vec3;
  readonly spans: readonly BallSpan[];
  readonly moments: readonly Moment[];
  readonly bent: TrunkPose;
}

/** A medicine ball is dead: it comes back with less than half its speed (from memory). */
const LIVELINESS = 0.42;

/** Where the hands are when they let go, and how the athlete stands. */
export interface PickupStart {
  readonly body: Body;
  readonly feet: Pair<FootPosture>;
  readonly standing: TrunkPose;
  readonly ball: Vec3;
  readonly ballRadius: number;
}

/**
 * The ball falls from the hands and bounces. It is taken at the top of a bounce, `height` metres off the floor
 * (measured under the ball), or picked up at rest where `height` is 0.
 * @param linger seconds the ball lies still before it is taken
 */
export function pickUp(start: PickupStart, height: number, linger: number): Pickup {
  const { ball, ballRadius: r, body } = start;
  const drop = 0.12;
  const fall = ball[1] - r;
  // The first bounce whose top the ball can reach while it stays as dead as such a ball is.
  let bounce = 1;
  let e = LIVELINESS;
  if (height > 0) {
    e = Math.sqrt(height / fall);
    while (e < 0.34 && bounce < 4) {
      bounce += 1;
      e = (height / fall) ** (1 / (2 * bounce));
    }
  }
  const spans: BallSpan[] = [];
  const moments: Moment[] = [{ name: 'drop', t: drop }];
  const drift = 0.12;
  let t = drop;
  let at: Vec3 = ball;
  let up = 0;
  let place: Vec3 | null = null;
  const fly = (seconds: number, ahead: number): void => {
    const velocity: Vec3 = [0, up, ahead];
    spans.push({ kind: 'flying', from: t, to: t + seconds, start: at, velocity });
    at = ballistic(at, velocity, seconds);
    t += seconds;
  };
  fly(Math.sqrt((2 * fall) / GRAVITY), drift);
  let speed = Math.sqrt(2 * GRAVITY * fall);
  for (let n = 1; n < 9; n += 1) {
    moments.push({ name: 'floor-bounce', t });
    at = [at[0], r, at[2]];
    speed *= e;
    up = speed;
    if (height > 0 && n === bounce) {
      fly(speed / GRAVITY, drift * e);
      place = at;
      break;
    }
    // Hops too small to see end the bouncing.
    if (height <= 0 && speed < 0.22) break;
    fly((2 * speed) / GRAVITY, drift * e ** n);
  }
  if (place === null) {
    place = [at[0], r, at[2]];
    spans.push({ kind: 'resting', from: t, to: t + linger, at: place });
    t += linger;
  }
  const take = t;
  const bent = bendTo(start, place);
  const ready = take + 0.75 + 0.35 * (1 - place[1] / (0.7 * body.stature));
  moments.push({ name: 'pick-up', t: take });
  return { drop, take, ready, place, spans, moments, bent };
}

/** The shallowest bend from which both hands lie on the ball. */
function bendTo(start: PickupStart, ball: Vec3): TrunkPose {
  const { body, feet, standing } = start;
  const bend = (share: number): TrunkPose => {
    const height = standing.pelvis[1] + share * (0.25 * body.stature - standing.pelvis[1]);
    const over = 0.03 * body.stature;
    return squat(body, feet, height, 0.2 + 0.32 * share, over, { ...CARRYING, raise: 0.9, bend: 0.3 }, null);
  };
  const short = (trunk: TrunkPose): boolean => {
    const pose = poseOf(body, postureOf(trunk, feet, CARRYING));
    const chest = frameOf(0, trunk.chestPitch, 0);
    return SIDES.some((side) => {
      const hand = handOnBall(body, start.ballRadius, side, ball, chest);
      return distance(pose.arms[side].shoulder, hand.wrist) > 0.88 * (body.upperArm + body.forearm);
    });
  };
  let low = 0;
  let high = 1;
  for (let i = 0; i < 12; i += 1) {
    const middle = (low + high) / 2;
    if (short(bend(middle))) low = middle;
    else high = middle;
  }
  return bend(high);
}
