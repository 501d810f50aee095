import { describe, expect, test } from 'vitest';
import { GRAVITY } from '../../shared-types/motion/choreography.ts';
import { soleHeight } from '../../shared-types/motion/measure.ts';
import { type Motion, momentOf } from '../../shared-types/motion/motion.ts';
import { type Pose, SIDES, type Side } from '../../shared-types/motion/pose.ts';
import { makeRep } from '../../shared-types/motion/rep.ts';
import { MOVEMENTS } from '../../shared-types/motion/specification.ts';
import { add, distance, length, scale, subtract, type Vec3 } from '../../shared-types/motion/vector.ts';
import { points } from './examine.ts';
import { COUNT, specimen } from './specimens.ts';

const FEW = Math.ceil(COUNT / 5);

/** Second difference of a moving point, m/s^2. */
function acceleration(place: (t: number) => Vec3, t: number, h: number): Vec3 {
  return scale(add(subtract(place(t + h), scale(place(t), 2)), place(t - h)), 1 / (h * h));
}

/** Height of what a foot can stand on at this place: the box where it is over the box, else the floor. */
function support(motion: Motion, pose: Pose, side: Side): number {
  const box = motion.scene.box;
  const foot = pose.legs[side].forefoot;
  const over = box !== null && Math.abs(foot[2] - box.z) <= box.halfDepth && Math.abs(foot[0]) <= box.halfWidth;
  return over ? box.height : 0;
}

const onGround = (motion: Motion, pose: Pose, side: Side): boolean =>
  pose.legs[side].forefoot[1] - support(motion, pose, side) < 5e-5;

describe.each(MOVEMENTS)('%s', (movement) => {
  const motions = Array.from({ length: COUNT }, (_, seed) => makeRep(specimen(movement, seed)));

  test('a foot on the ground does not slide', () => {
    let worst = 0;
    for (const motion of motions) {
      for (const side of SIDES) {
        let stood: Vec3 | null = null;
        for (let t = 0; t <= motion.duration; t += 0.02) {
          const pose = motion.at(t);
          const foot = pose.legs[side].forefoot;
          if (!onGround(motion, pose, side)) stood = null;
          else if (stood === null) stood = foot;
          else worst = Math.max(worst, Math.hypot(foot[0] - stood[0], foot[2] - stood[2]));
        }
      }
    }
    expect(worst).toBeLessThan(0.01);
  });

  test('in the air the centre of mass follows g = 9.81 within 1 %', () => {
    let worst = 0;
    for (const motion of motions) {
      for (const flight of motion.flights) {
        for (const share of [0.06, 0.2, 0.4, 0.6, 0.8, 0.94]) {
          const t = flight.from + share * (flight.to - flight.from);
          const a = acceleration((s) => motion.at(s).centreOfMass, t, 0.004);
          worst = Math.max(worst, length(add(a, [0, GRAVITY, 0])) / GRAVITY);
        }
      }
    }
    expect(worst).toBeLessThan(0.01);
  });

  test('whenever nothing touches anything, the body is in such a flight', () => {
    for (const motion of motions.slice(0, FEW)) {
      for (let t = 0.01; t < motion.duration; t += 0.01) {
        const pose = motion.at(t);
        const feetOff = SIDES.every((side) => soleHeight(pose.legs[side]) - support(motion, pose, side) > 2e-3);
        const handsOff = pose.arms.every((arm) => arm.fingertip[1] > 0.06);
        const inFlight = motion.flights.some(({ from, to }) => t > from - 0.02 && t < to + 0.02);
        if (feetOff && handsOff) expect(inFlight, `t = ${t}`).toBe(true);
      }
    }
  });

  test('velocities are continuous', () => {
    // A jump of velocity by 0.8 m/s shows as 400 m/s^2 over 2 ms; knees near full stretch turn fastest.
    const bound = { trunk: 200, limb: 1000, hand: 1000 };
    const trunk = new Set(['pelvis', 'waist', 'neckBase', 'headBase', 'headTop', 'chest']);
    const worst = { trunk: 0, limb: 0, hand: 0 };
    const h = 0.002;
    for (const motion of motions.slice(0, FEW)) {
      let before = points(motion.at(0));
      let now = points(motion.at(h));
      for (let t = 2 * h; t <= motion.duration; t += h) {
        const next = points(motion.at(t));
        for (const [name, p] of Object.entries(next)) {
          if (name === 'ball') continue;
          const a = length(subtract(add(p, before[name] ?? p), scale(now[name] ?? p, 2))) / (h * h);
          const kind = trunk.has(name) ? 'trunk' : name.startsWith('fingertip') ? 'hand' : 'limb';
          worst[kind] = Math.max(worst[kind], a);
        }
        before = now;
        now = next;
      }
    }
    expect(worst.trunk).toBeLessThan(bound.trunk);
    expect(worst.limb).toBeLessThan(bound.limb);
    expect(worst.hand).toBeLessThan(bound.hand);
  });

  test('velocity does not jump at any key moment', () => {
    const h = 2e-5;
    let worst = 0;
    for (const motion of motions) {
      for (const { t } of motion.moments) {
        if (t < 2 * h || t > motion.duration - 2 * h) continue;
        const a = points(motion.at(t - h));
        const b = points(motion.at(t));
        const c = points(motion.at(t + h));
        for (const name of Object.keys(b)) {
          if (name === 'ball') continue;
          const [p, q, r] = [a[name], b[name], c[name]];
          if (p !== undefined && q !== undefined && r !== undefined) {
            worst = Math.max(worst, length(subtract(add(p, r), scale(q, 2))) / h);
          }
        }
      }
    }
    // With an acceleration of 1000 m/s^2 two neighbouring velocities differ by 0.02 m/s.
    expect(worst).toBeLessThan(0.03);
  });
});

describe('hands', () => {
  test('on the floor do not slide', () => {
    let worst = 0;
    for (let seed = 0; seed < COUNT; seed += 1) {
      const motion = makeRep(specimen('jump-burpee', seed));
      const from = momentOf(motion, 'hands-down') ?? 0;
      const to = momentOf(motion, 'feet-in') ?? 0;
      const placed = motion.at(from).arms;
      for (let t = from; t < to; t += 0.02) {
        for (const side of SIDES) {
          const { fingertip } = motion.at(t).arms[side];
          // Feet far past the hands lift them before they land.
          if (fingertip[1] > placed[side].fingertip[1] + 0.003) continue;
          const at = placed[side].fingertip;
          worst = Math.max(worst, Math.hypot(fingertip[0] - at[0], fingertip[2] - at[2]));
        }
      }
    }
    expect(worst).toBeLessThan(0.01);
  });
});

describe('the ball', () => {
  const motions = Array.from({ length: COUNT }, (_, seed) => makeRep(specimen('wall-throw', seed)));
  const centre = (motion: Motion, t: number): Vec3 => motion.at(t).ball?.centre ?? [0, 0, 0];

  test('follows g = 9.81 within 1 % while it flies', () => {
    let checked = 0;
    for (const motion of motions) {
      const bounces = motion.moments.filter(({ name }) => name === 'floor-bounce' || name === 'wall-contact');
      for (let t = 0.01; t < motion.duration - 0.01; t += 0.02) {
        const flies = [t - 0.005, t, t + 0.005].every((s) => motion.at(s).ball?.state === 'flying');
        if (!flies || bounces.some((bounce) => Math.abs(bounce.t - t) < 0.006)) continue;
        const a = acceleration((s) => centre(motion, s), t, 0.004);
        expect(length(add(a, [0, GRAVITY, 0])) / GRAVITY).toBeLessThan(0.01);
        checked += 1;
      }
    }
    expect(checked).toBeGreaterThan(COUNT * 10);
  });

  test('meets the wall at the top of its flight and gains no speed there', () => {
    for (const motion of motions) {
      const t = momentOf(motion, 'wall-contact') ?? 0;
      const r = motion.specification.sheet.ballRadius;
      expect(centre(motion, t)[2] + r).toBeCloseTo(motion.scene.wallZ ?? 0, 6);
      expect(centre(motion, t)[1]).toBeGreaterThan(centre(motion, t - 0.02)[1]);
      expect(centre(motion, t)[1]).toBeGreaterThan(centre(motion, t + 0.02)[1]);
      const before = distance(centre(motion, t), centre(motion, t - 0.01));
      const after = distance(centre(motion, t), centre(motion, t + 0.01));
      expect(after).toBeLessThan(before);
    }
  });

  test('loses speed at each bounce off the floor', () => {
    for (const motion of motions) {
      for (const { t } of motion.moments.filter(({ name }) => name === 'floor-bounce')) {
        const down = centre(motion, t - 0.004)[1] - centre(motion, t)[1];
        const up = centre(motion, t + 0.004)[1] - centre(motion, t)[1];
        expect(up).toBeLessThan(down);
      }
    }
  });

  test('leaves and meets the hands with the speed it has in the air', () => {
    const h = 1e-4;
    for (const motion of motions) {
      for (const name of ['release', 'catch'] as const) {
        const t = momentOf(motion, name) ?? 0;
        const before = scale(subtract(centre(motion, t), centre(motion, t - h)), 1 / h);
        const after = scale(subtract(centre(motion, t + h), centre(motion, t)), 1 / h);
        expect(distance(before, after), name).toBeLessThan(0.05);
      }
    }
  });

  test('while held, both palms lie on it', () => {
    let worst = 0;
    for (const motion of motions.slice(0, FEW)) {
      for (let t = 0; t < motion.duration; t += 0.02) {
        const pose = motion.at(t);
        if (pose.ball?.state !== 'held') continue;
        for (const arm of pose.arms) {
          const palm: Vec3 = scale(add(scale(arm.wrist, 0.55), scale(arm.fingertip, 0.45)), 1);
          const gap = Math.abs(distance(palm, pose.ball.centre) - motion.specification.sheet.ballRadius);
          worst = Math.max(worst, gap);
        }
      }
    }
    expect(worst).toBeLessThan(0.06);
  });
});

describe('balance', () => {
  test('in a wall throw the common centre of athlete and ball stays over the feet until the throw', () => {
    for (let seed = 0; seed < FEW; seed += 1) {
      const motion = makeRep(specimen('wall-throw', seed, 0.4));
      const from = momentOf(motion, 'ready') ?? 0;
      const to = momentOf(motion, 'bottom') ?? 0;
      for (const share of [0, 0.5, 1]) {
        const pose = motion.at(from + share * (to - from));
        const m = motion.specification.sheet.ballMass;
        const common =
          (pose.centreOfMass[2] * motion.body.mass + (pose.ball?.centre[2] ?? 0) * m) / (motion.body.mass + m);
        expect(common).toBeGreaterThan(Math.min(...pose.legs.map((leg) => leg.heel[2])));
        expect(common).toBeLessThan(Math.max(...pose.legs.map((leg) => leg.toe[2])));
      }
    }
  });

  test('heels stay down in the squat', () => {
    for (let seed = 0; seed < FEW; seed += 1) {
      const motion = makeRep(specimen('wall-throw', seed));
      const pose = motion.at(momentOf(motion, 'bottom') ?? 0);
      for (const leg of pose.legs) expect(leg.heel[1]).toBeLessThan(1e-6);
    }
  });

  test('knees track over the toes in the squat', () => {
    for (let seed = 0; seed < FEW; seed += 1) {
      const motion = makeRep(specimen('wall-throw', seed));
      const pose = motion.at(momentOf(motion, 'bottom') ?? 0);
      for (const leg of pose.legs) {
        const foot = Math.atan2(leg.toe[0] - leg.heel[0], leg.toe[2] - leg.heel[2]);
        const knee = Math.atan2(leg.knee[0] - leg.hip[0], leg.knee[2] - leg.hip[2]);
        expect(Math.abs(foot - knee)).toBeLessThan(0.3);
      }
    }
  });
});
