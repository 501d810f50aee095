import { describe, expect, test } from 'vitest';
import { MOVEMENTS, USUAL_NUMBERS } from '../../shared-types/motion/specification.ts';
import { makeStream, type StreamSpecification, USUAL_PLAN } from '../../shared-types/motion/stream.ts';
import { distance, length, scale, subtract } from '../../shared-types/motion/vector.ts';
import { points } from './examine.ts';

function streamOf(movement: (typeof MOVEMENTS)[number], part: Partial<StreamSpecification> = {}): StreamSpecification {
  return {
    movement,
    athlete: { stature: 1.72, build: 'medium' },
    sheet: USUAL_NUMBERS,
    cadence: { 'wall-throw': 24, 'jump-burpee': 15, 'box-jump-over': 16 }[movement],
    reps: 30,
    fatigue: 0.8,
    variation: 1,
    seed: 21,
    plan: { ...USUAL_PLAN, rate: 0.3, rateAtEnd: 0.5 },
    ...part,
  };
}

describe.each(MOVEMENTS)('%s', (movement) => {
  const stream = makeStream(streamOf(movement));

  test('each rep begins in the pose, and with the velocity, in which the one before ended', () => {
    const h = 1e-5;
    for (const rep of stream.reps.slice(1)) {
      const before = points(stream.at(rep.start - 1e-9));
      const after = points(stream.at(rep.start + 1e-9));
      const later = points(stream.at(rep.start + h));
      const earlier = points(stream.at(rep.start - h));
      for (const [name, p] of Object.entries(before)) {
        const q = after[name] ?? [9, 9, 9];
        expect(distance(p, q), name).toBeLessThan(1e-6);
        const out = scale(subtract(p, earlier[name] ?? p), 1 / h);
        const into = scale(subtract(later[name] ?? q, q), 1 / h);
        expect(length(subtract(out, into)), name).toBeLessThan(0.01);
      }
    }
  });

  test('faults come unannounced, as planned, and good reps lie between', () => {
    const calls = stream.reps.map((_, i) => stream.truthOf(i).verdict);
    const bad = calls.filter((call) => !call.counted).length;
    expect(bad).toBeGreaterThan(4);
    expect(bad).toBeLessThan(22);
    for (const [i, rep] of stream.reps.entries()) {
      const asked = Object.entries(rep.motion.specification.margins).filter(([, margin]) => margin < 0);
      expect(calls[i]?.faults.toSorted()).toEqual(asked.map(([code]) => code).toSorted());
    }
  });

  test('time runs through all reps without a gap', () => {
    for (const [i, rep] of stream.reps.entries()) {
      expect(rep.start).toBe(stream.reps[i - 1]?.end ?? 0);
      expect(stream.repAt((rep.start + rep.end) / 2)).toBe(i);
    }
    expect(stream.duration).toBe(stream.reps.at(-1)?.end);
  });

  test('a tired athlete is slower', () => {
    const mean = (from: number, to: number): number =>
      stream.reps.slice(from, to).reduce((sum, rep) => sum + rep.end - rep.start, 0) / (to - from);
    expect(mean(20, 30)).toBeGreaterThan(mean(0, 10));
  });

  test('the same specification gives the same stream', () => {
    const again = makeStream(streamOf(movement));
    for (const share of [0.1, 0.37, 0.81]) {
      expect(again.at(share * again.duration)).toEqual(stream.at(share * stream.duration));
    }
  });
});

describe('places', () => {
  test('jump burpees go forward, rep by rep', () => {
    const stream = makeStream(streamOf('jump-burpee', { reps: 12 }));
    const toe = (t: number): number => Math.max(...stream.at(t).legs.map((leg) => leg.toe[2]));
    let last = toe(0);
    for (const rep of stream.reps) {
      expect(toe(rep.end)).toBeGreaterThan(last + 0.7);
      last = toe(rep.end);
    }
  });

  test('box jump-overs go to and fro over one box', () => {
    const stream = makeStream(streamOf('box-jump-over', { reps: 12 }));
    for (const [i, rep] of stream.reps.entries()) {
      const side = i % 2 === 0 ? -1 : 1;
      expect(Math.sign(stream.at(rep.start).pelvis[2])).toBe(side);
      expect(stream.at(rep.start).frames.pelvis.forward[2] * side).toBeLessThan(-0.9);
    }
  });

  test('no fault is drawn outside the plan', () => {
    const stream = makeStream(
      streamOf('wall-throw', { plan: { ...USUAL_PLAN, rate: 0.6, rateAtEnd: 0.6, codes: ['depth'] } }),
    );
    const seen = new Set(stream.reps.flatMap((_, i) => stream.truthOf(i).verdict.faults));
    expect([...seen]).toEqual(['depth']);
  });
});
