import { type Choreography, type Flight, GRAVITY, poseAt, poseWith } from './choreography.ts';
import { pathAt } from './smooth.ts';
import { add, distance, mix, scale, subtract, type Vec3 } from './vector.ts';

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
  const h = 2e-4 * direction;
  const p0 = pathAt(c.pelvis, t);
  const p1 = poseAt(c, t + h).pelvis;
  const p2 = poseAt(c, t + 2 * h).pelvis;
  const p3 = poseAt(c, t + 3 * h).pelvis;
  const combine = (a: number, b: number, d: number, e: number, by: number): Vec3 =>
    scale(add(add(scale(p0, a), scale(p1, b)), add(scale(p2, d), scale(p3, e))), 1 / by);
  return [combine(-11, 18, -9, 2, 6 * h), combine(2, -5, 4, -1, h * h)];
}
