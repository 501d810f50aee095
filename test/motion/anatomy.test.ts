import { describe, expect, test } from 'vitest';
import { makeRep } from '../../shared-types/motion/rep.ts';
import { MOVEMENTS, type MovementName } from '../../shared-types/motion/specification.ts';
import { distance, mix } from '../../shared-types/motion/vector.ts';
import { angles, type Bound, boxIntrusion, floorClearance, points, segments, times } from './examine.ts';
import { COUNT, specimen } from './specimens.ts';

/**
 * Ranges of motion, degrees. Hip 125 / abduction 45, plantar flexion 50, toe extension 80, elbow 160, shoulder extension
 * 60: The Merck Manual, "Normal Values for Range of Motion of Joints" (2013). Hip extension 30, knee 150, neck 55 back
 * and 70 to 90 forward, shoulder elevation 180: Kurz's table of normal ranges and passive-range teaching tables. Ankle
 * dorsiflexion under load 38: the weight-bearing lunge's usual 30 to 38. Back 80 forward, 30 back and 45 twist: AAOS
 * (1965), from memory. Wrist 90, as passively on a propped hand: from memory. Hip adduction 30: AAOS, from memory.
 */
const RANGES: Readonly<Record<string, Bound>> = {
  hipFlexion: { low: -30, high: 125 },
  hipAbduction: { low: -30, high: 45 },
  kneeFlexion: { low: 0, high: 150 },
  ankleDorsiflexion: { low: -50, high: 38 },
  toeExtension: { low: -5, high: 80 },
  elbowFlexion: { low: 0, high: 160 },
  shoulderElevation: { low: 0, high: 180 },
  wristBend: { low: 0, high: 90 },
  back: { low: -30, high: 80 },
  neck: { low: -55, high: 70 },
  twist: { low: 0, high: 45 },
};
/** Degrees over the hip's and ankle's range that a trunk of two rigid pieces and a rigid foot may need for a moment. */
const ROUNDING = 3;
/** Metres of flesh that a floor or box edge may press in. */
const PRESS = 0.005;

interface Worst {
  segment: number;
  angle: Record<string, number>;
  floor: Record<string, number>;
  box: number;
  wall: number;
  headBall: number;
}

function examine(movement: MovementName, count: number, faulty: number): Worst {
  const worst: Worst = { segment: 0, angle: {}, floor: {}, box: 0, wall: -1, headBall: 1 };
  for (let seed = 0; seed < count; seed += 1) {
    const motion = makeRep(specimen(movement, seed, faulty));
    const first = segments(motion.at(0));
    for (const t of times(motion, 0.03)) {
      const pose = motion.at(t);
      for (const [name, size] of Object.entries(segments(pose))) {
        worst.segment = Math.max(worst.segment, Math.abs(size - (first[name] ?? 0)));
      }
      for (const [name, value] of angles(pose)) {
        const range = RANGES[name];
        if (range === undefined) continue;
        worst.angle[name] = Math.max(worst.angle[name] ?? 0, range.low - value, value - range.high);
      }
      for (const [name, value] of floorClearance(motion.body, pose)) {
        worst.floor[name] = Math.max(worst.floor[name] ?? 0, -value);
      }
      worst.box = Math.max(worst.box, boxIntrusion(motion, pose)[1]);
      const { wallZ } = motion.scene;
      if (wallZ !== null) {
        for (const [name, p] of Object.entries(points(pose))) {
          worst.wall = Math.max(
            worst.wall,
            p[2] - wallZ + (name === 'ball' ? motion.specification.sheet.ballRadius : 0),
          );
        }
      }
      if (pose.ball !== null) {
        const skull = mix(pose.headBase, pose.headTop, 0.5);
        const room = distance(skull, pose.ball.centre) - motion.specification.sheet.ballRadius - motion.body.flesh.head;
        worst.headBall = Math.min(worst.headBall, room);
      }
    }
  }
  return worst;
}

describe.each(MOVEMENTS)('%s', (movement) => {
  const clean = examine(movement, Math.ceil(COUNT / 4), 0);
  const faulty = examine(movement, COUNT, 0.5);

  test('every segment keeps its length to a millionth of a metre', () => {
    expect(Math.max(clean.segment, faulty.segment)).toBeLessThan(1e-6);
  });

  test('joints stay inside published ranges in clean reps', () => {
    for (const [name, over] of Object.entries(clean.angle)) expect(over, name).toBeLessThan(ROUNDING);
  });

  test('joints stay inside published ranges with any faults together', () => {
    for (const [name, over] of Object.entries(faulty.angle)) expect(over, name).toBeLessThan(ROUNDING);
  });

  test('no limb goes through the floor', () => {
    for (const found of [clean.floor, faulty.floor]) {
      for (const [name, under] of Object.entries(found)) expect(under, name).toBeLessThan(PRESS);
    }
  });

  test('no limb goes into the box or the wall', () => {
    expect(Math.max(clean.box, faulty.box)).toBeLessThan(PRESS);
    expect(Math.max(clean.wall, faulty.wall)).toBeLessThan(1e-6);
  });

  test('the ball passes the face', () => {
    expect(Math.min(clean.headBall, faulty.headBall)).toBeGreaterThan(0.01);
  });
});
