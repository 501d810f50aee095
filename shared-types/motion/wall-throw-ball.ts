import {
  type ArmLine,
  type BallSpan,
  ballistic,
  type Choreography,
  GRAVITY,
  neckBaseAt,
  neckRate,
  type ReachSpan,
} from './choreography.ts';
import type { Pickup } from './pick-up.ts';
import { type PathKey, path } from './smooth.ts';
import { ballAtChest } from './stance.ts';
import { add, along, clamp, scale, subtract, type Vec3 } from './vector.ts';

/** When and where the ball leaves, hits and comes back: seconds and metres in the rep's axes. */
export interface Throw {
  readonly ready: number;
  readonly descent: number;
  readonly bottom: number;
  readonly release: number;
  readonly contact: number;
  readonly caught: number;
  readonly drive: number;
  readonly releaseHeight: number;
  readonly contactHeight: number;
  readonly catchHeight: number;
  readonly aim: number;
  readonly wallZ: number;
}

/** Largest share of its speed at the wall that the ball brings back (common practice, no source). */
const LIVELINESS = 0.75;

/**
 * Adds the ball and the hands on it. The ball meets the wall at the top of its flight, loses its sideways speed there,
 * and comes back to the hands.
 */
export function throwBall(bare: Choreography, plan: Throw, pickup: Pickup | null): Choreography {
  const { body, ballRadius: r, duration } = bare;
  const neck = (t: number): Vec3 => neckBaseAt(bare, t);
  const carried = (t: number): Vec3 => ballAtChest(body, r, bare.chestPitch.at(t));

  const releaseNeck = neck(plan.release);
  // Far enough ahead of the neck to pass the face.
  const clear = r + 0.092 * body.stature;
  const start: Vec3 = [plan.aim * 0.12, plan.releaseHeight, releaseNeck[2] + clear];
  const hang = plan.contact - plan.release;
  const velocity: Vec3 = [(plan.aim - start[0]) / hang, GRAVITY * hang, (plan.wallZ - r - start[2]) / hang];
  const contact = ballistic(start, velocity, hang);
  const fall = plan.caught - plan.contact;
  // A dead ball comes off the wall slower than it came: where that is too slow for the hands' usual place, they reach out.
  const slowest = contact[2] - LIVELINESS * velocity[2] * fall;
  const caughtAt: Vec3 = [
    plan.aim * 0.93,
    plan.catchHeight,
    Math.max(neck(plan.caught)[2] + 0.235 * body.stature, slowest),
  ];
  const back: Vec3 = [(caughtAt[0] - contact[0]) / fall, 0, (caughtAt[2] - contact[2]) / fall];
  const arriving: Vec3 = [back[0], -GRAVITY * fall, back[2]];

  const held = (t: number): PathKey => ({ t, p: carried(t) });
  const lead: PathKey[] =
    pickup === null
      ? [held(0)]
      : [
          {
            t: pickup.take,
            p: subtract(pickup.place, neck(pickup.take)),
            v: scale(neckRate(bare, pickup.take), -1),
            a: [0, 0, 0],
          },
          held(pickup.ready),
        ];
  const down = plan.bottom - plan.descent;
  const off = subtract(start, releaseNeck);
  const leaving = subtract(velocity, neckRate(bare, plan.release));
  const gather = Math.max(plan.bottom + 0.4 * plan.drive, plan.release - 0.36);
  const hold = path([
    ...lead,
    ...[0, 0.25, 0.5, 0.75, 1].map((share) => held(plan.descent + share * down)),
    held((plan.bottom + gather) / 2),
    held(gather),
    { t: plan.release - 0.15, p: [start[0] * 0.5, Math.min(0.05 * body.stature, 0.3 * off[1] - 0.05), clear] },
    { t: plan.release, p: off, v: leaving, a: [0, -GRAVITY, 0] },
    // The hands follow through where the ball would have been, and stop.
    { t: plan.release + 0.11, p: along(off, leaving, 0.11 * 0.36), v: [0, 0, 0], a: [0, 0, 0] },
  ]);
  // The arms give until the ball's speed is gone, then carry it to the chest.
  const lowest = add(carried(duration), [0, -0.05, 0.02]);
  const met = subtract(caughtAt, neck(plan.caught));
  const give = clamp((met[1] - lowest[1]) / (0.42 * GRAVITY * fall), 0.13, 0.3);
  const returned = path([
    {
      t: plan.caught,
      p: met,
      v: subtract(arriving, neckRate(bare, plan.caught)),
      a: [0, -GRAVITY, 0],
    },
    { t: plan.caught + give, p: lowest, v: [0, 0, 0] },
    held(duration),
  ]);
  const prelude: BallSpan[] =
    pickup === null ? [] : [{ kind: 'held', from: 0, to: pickup.drop, path: path([held(0)]) }, ...pickup.spans];
  const ball: BallSpan[] = [
    ...prelude,
    { kind: 'held', from: pickup?.take ?? 0, to: plan.release, path: hold },
    { kind: 'flying', from: plan.release, to: plan.contact, start, velocity },
    { kind: 'flying', from: plan.contact, to: plan.caught, start: contact, velocity: back },
    { kind: 'held', from: plan.caught, to: duration, path: returned },
  ];

  const opening: ReachSpan[] =
    pickup === null
      ? []
      : [
          {
            from: -2,
            arrive: -1,
            leave: pickup.drop,
            to: pickup.drop + 0.25,
            goal: { kind: 'ball', hold: path([held(0)]), ghostFrom: pickup.drop },
          },
        ];
  const grip =
    pickup === null
      ? { from: -2, arrive: -1 }
      : { from: Math.max(pickup.drop + 0.26, pickup.take - 0.45), arrive: pickup.take };
  const reaches: ReachSpan[] = [
    ...opening,
    {
      ...grip,
      leave: plan.release + 0.07,
      to: plan.release + 0.34,
      goal: {
        kind: 'ball',
        hold,
        ghostFrom: plan.release,
        ...(pickup === null ? {} : { waits: { until: pickup.take, at: pickup.place } }),
      },
    },
    {
      from: Math.max(plan.release + 0.35, plan.caught - 0.3),
      arrive: plan.caught,
      leave: duration + 1,
      to: duration + 2,
      goal: { kind: 'ball', hold: returned, ghostFrom: duration + 1 },
    },
  ];
  const arm = (line: ArmLine): ArmLine => ({ ...line, reaches });
  return { ...bare, ball, arms: [arm(bare.arms[0]), arm(bare.arms[1])] };
}
