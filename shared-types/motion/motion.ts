import type { Body } from './body.ts';
import { type Choreography, type Moment, type MomentName, poseAt } from './choreography.ts';
import type { Scene } from './movement.ts';
import type { ArmPoints, LegPoints, Pose } from './pose.ts';
import type { RepSpecification } from './specification.ts';
import type { Frame, Vec3 } from './vector.ts';

/** One rep as something that can be looked at, at any instant. */
export interface Motion {
  readonly specification: RepSpecification;
  readonly body: Body;
  readonly scene: Scene;
  /** Seconds. */
  readonly duration: number;
  /** Ordered in time; a name may come more than once. */
  readonly moments: readonly Moment[];
  /** When the body is in free flight, seconds. */
  readonly flights: readonly { readonly from: number; readonly to: number }[];
  /** Pose `t` seconds after the rep's start, clamped to the rep, in the rep's own axes. */
  at(t: number): Pose;
}

export function motionOf(specification: RepSpecification, choreography: Choreography, scene: Scene): Motion {
  return {
    specification,
    body: choreography.body,
    scene,
    duration: choreography.duration,
    moments: choreography.moments,
    flights: choreography.flights.map(({ from, to }) => ({ from, to })),
    at: (t) => poseAt(choreography, t),
  };
}

/** First time of a moment, seconds, or null where the rep has none. */
export function momentOf(motion: Pick<Motion, 'moments'>, name: MomentName): number | null {
  return motion.moments.find((moment) => moment.name === name)?.t ?? null;
}

/** Where a rep lies in a stream: half turns about the vertical, then a shift. Metres. */
export interface Placement {
  readonly turned: boolean;
  readonly shift: Vec3;
}

/** The same pose at another place. */
export function placed(pose: Pose, placement: Placement): Pose {
  const [sx, sy, sz] = placement.shift;
  const k = placement.turned ? -1 : 1;
  const point = (p: Vec3): Vec3 => [k * p[0] + sx, p[1] + sy, k * p[2] + sz];
  const direction = (d: Vec3): Vec3 => [k * d[0], d[1], k * d[2]];
  const frame = (f: Frame): Frame => ({ left: direction(f.left), up: direction(f.up), forward: direction(f.forward) });
  const leg = (l: LegPoints): LegPoints => ({
    hip: point(l.hip),
    knee: point(l.knee),
    ankle: point(l.ankle),
    heel: point(l.heel),
    forefoot: point(l.forefoot),
    toe: point(l.toe),
    hipCrease: point(l.hipCrease),
    kneeTop: point(l.kneeTop),
  });
  const arm = (a: ArmPoints): ArmPoints => ({
    shoulder: point(a.shoulder),
    elbow: point(a.elbow),
    wrist: point(a.wrist),
    fingertip: point(a.fingertip),
  });
  return {
    pelvis: point(pose.pelvis),
    waist: point(pose.waist),
    neckBase: point(pose.neckBase),
    headBase: point(pose.headBase),
    headTop: point(pose.headTop),
    chest: point(pose.chest),
    legs: [leg(pose.legs[0]), leg(pose.legs[1])],
    arms: [arm(pose.arms[0]), arm(pose.arms[1])],
    frames: { pelvis: frame(pose.frames.pelvis), chest: frame(pose.frames.chest), head: frame(pose.frames.head) },
    centreOfMass: point(pose.centreOfMass),
    ball: pose.ball === null ? null : { ...pose.ball, centre: point(pose.ball.centre) },
  };
}
