import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isSoftware, QualityWatch } from '../../renderer/areas/eye/figure/quality.ts';
import { followed } from '../../renderer/areas/eye/follow.ts';
import { placeView, spotNames, spotView, stoodAt } from '../../renderer/areas/eye/places.ts';
import {
  betweenPlaces,
  eyesOf,
  framingOf,
  LIMITS,
  moved,
  tidy,
  verticalField,
} from '../../renderer/areas/eye/viewpoint.ts';
import { advisedPlace } from '../../shared-types/drills/places.ts';
import { MOVEMENTS } from '../../shared-types/motion/specification.ts';

const view = fc.record({
  bearing: fc.double({ min: -1_000, max: 1_000, noNaN: true }),
  distance: fc.double({ min: -2, max: 40, noNaN: true }),
  height: fc.double({ min: -2, max: 9, noNaN: true }),
});

test('bearings: ahead of the face is +z, the athlete’s left +x', () => {
  const eyes = (bearing: number) => eyesOf({ bearing, distance: 3, height: 1.5 }, [0, 1, 0], { wallZ: null }).at;
  const near = (one: readonly number[], other: readonly number[]) =>
    one.every((value, i) => Math.abs(value - (other[i] ?? 0)) < 1e-9);
  expect(near(eyes(0), [0, 1.5, 3])).toBe(true);
  expect(near(eyes(90), [3, 1.5, 0])).toBe(true);
  expect(near(eyes(180), [0, 1.5, -3])).toBe(true);
  expect(near(eyes(-90), [-3, 1.5, 0])).toBe(true);
});

test('any walk keeps to its limits, and nobody stands in the wall', () => {
  fc.assert(
    fc.property(view, view, fc.double({ min: 0, max: 1, noNaN: true }), (one, other, share) => {
      for (const place of [tidy(one), moved(tidy(one), other), betweenPlaces(tidy(one), tidy(other), share)]) {
        expect(place.bearing).toBeGreaterThanOrEqual(-180);
        expect(place.bearing).toBeLessThanOrEqual(180);
        expect(place.distance).toBeGreaterThanOrEqual(LIMITS.distance[0]);
        expect(place.distance).toBeLessThanOrEqual(LIMITS.distance[1]);
        expect(place.height).toBeGreaterThanOrEqual(LIMITS.height[0]);
        expect(place.height).toBeLessThanOrEqual(LIMITS.height[1]);
        expect(eyesOf(place, [0, 1, 0.15], { wallZ: 0.84 }).at[2]).toBeLessThanOrEqual(0.84 - 0.3 + 1e-9);
      }
    }),
  );
});

test('the walk between two places goes the short way round', () => {
  const from = { bearing: 170, distance: 3, height: 1.5 };
  const to = { bearing: -170, distance: 3, height: 1.5 };
  expect(Math.abs(betweenPlaces(from, to, 0.5).bearing)).toBeCloseTo(180, 9);
  expect(betweenPlaces(from, to, 1).bearing).toBeCloseTo(-170, 9);
});

test('a place within a step of the one given is that place; another is kept with the call', () => {
  const given = advisedPlace('wall-throw', 'depth');
  const at = placeView(given);
  expect(stoodAt(at, given, 'wall-throw', 'depth')).toBe(null);
  expect(stoodAt(moved(at, { bearing: 3 }), given, 'wall-throw', 'depth')).toBe(null);
  expect(stoodAt(moved(at, { bearing: 60 }), given, 'wall-throw', 'depth')).toMatchObject({
    name: 'own',
    bearing: 150,
  });
  // The other side shows the same.
  expect(stoodAt({ ...at, bearing: -90 }, given, 'wall-throw', 'depth')).toMatchObject({
    name: 'advised',
    bearing: -90,
  });
});

test('the places one key away lie within the limits, the advised one first', () => {
  expect(spotNames[0]).toBe('advised');
  for (const movement of MOVEMENTS) {
    for (const name of spotNames) {
      const spot = spotView(name, movement, null);
      expect(tidy(spot)).toEqual(spot);
    }
  }
});

test('the whole athlete fits the picture, high ball and low floor, on a wide and on a narrow screen', () => {
  const { middle, field } = framingOf('wall-throw', null, 3);
  for (const aspect of [0.6, 1, 1.6]) {
    const half = 2.8 * Math.tan(((verticalField(field, aspect) / 2) * Math.PI) / 180);
    expect(middle + half).toBeGreaterThan(3.1);
    expect(middle - half).toBeLessThan(-0.1);
    // A thrower is about 1.2 m wide with both arms.
    expect(half * aspect).toBeGreaterThan(0.9);
  }
});

test('the judge stands still at a wall and a box, and walks along a lane', () => {
  const poseAt = (z: number) => ({ pelvis: [0, 1, z] as const }) as unknown as Parameters<typeof followed>[2];
  const still = { movement: 'wall-throw' as const, around: { wallZ: 0.84, box: null, startLineZ: null } };
  expect(followed(null, still, poseAt(5), 1, 0.016).focus[2]).toBe(followed(null, still, poseAt(0), 1, 0.016).focus[2]);
  const lane = { movement: 'jump-burpee' as const, around: { wallZ: null, box: null, startLineZ: 0 } };
  let follow = followed(null, lane, poseAt(0), 1, null);
  expect(follow.focus[2]).toBe(0);
  const first = followed(follow, lane, poseAt(1.5), 1, 1 / 60);
  expect(first.focus[2]).toBeGreaterThan(0);
  expect(first.focus[2]).toBeLessThan(0.2);
  for (let i = 0; i < 300; i += 1) follow = followed(follow, lane, poseAt(1.5), 1, 1 / 60);
  expect(follow).toEqual({ focus: [0, 1, 1.5], settled: true });
});

test('less is drawn where frames are late, step by step, and never more again', () => {
  const watch = new QualityWatch('full');
  const run = (gap: number, frames: number) => {
    let lowered = 0;
    for (let i = 0; i < frames; i += 1) lowered += watch.frame(gap) ? 1 : 0;
    return lowered;
  };
  expect(run(16, 500)).toBe(0);
  expect(run(45, 60)).toBe(1);
  expect(watch.quality).toBe('plain');
  expect(run(16, 500)).toBe(0);
  expect(watch.quality).toBe('plain');
  run(40, 60);
  expect(watch.quality).toBe('spare');
  // Coarser points only where the picture would jump.
  expect(run(40, 500)).toBe(0);
  run(60, 60);
  expect(watch.quality).toBe('coarse');
  expect(run(200, 500)).toBe(0);
  // A page that was hidden is not a slow one.
  const rested = new QualityWatch('full');
  for (let i = 0; i < 200; i += 1) expect(rested.frame(5_000)).toBe(false);
  expect(isSoftware('ANGLE (Google, Vulkan 1.3.0 (SwiftShader Device (Subzero)))')).toBe(true);
  expect(isSoftware('ANGLE (Intel, Mesa Intel(R) UHD Graphics 620)')).toBe(false);
});
