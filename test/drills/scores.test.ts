import { describe, expect, it } from 'vitest';
import { countsFor, countsOf } from '../../main/analysis/drills/answers.ts';
import { faultScore, lineVerdict } from '../../main/analysis/drills/fault-score.ts';
import { judged } from '../../main/analysis/drills/outcomes.ts';
import { placeGain } from '../../main/analysis/drills/place-gain.ts';
import { reactionScore } from '../../main/analysis/drills/reaction.ts';
import { reasonScore } from '../../main/analysis/drills/reasons.ts';
import { seededGenerator } from '../../main/analysis/random/generator.ts';
import { computed, failed } from '../../main/analysis/result.ts';
import type { TaskOf } from '../../shared-types/drills/drill.ts';
import { foldDrill } from '../../shared-types/drills/fold.ts';
import { poorPlace } from '../../shared-types/drills/places.ts';
import { playDrill } from '../simulation/simulated-judge.ts';
import { CLEAN, LogWriter, side, wallDrill } from './fixtures.ts';

const depth = { code: 'depth', name: 'Not deep enough', unit: 'cm' } as const;

function scored(write: (log: LogWriter) => void, drill = wallDrill()) {
  const log = new LogWriter(drill);
  write(log);
  return judged(drill, foldDrill(drill, log.events));
}

describe('outcomes of single reps', () => {
  const { trials } = scored((log) => {
    log.rep(0, { depth: -3 });
    log.call(0, ['depth'], 2_000);
    log.rep(1, { depth: -3 });
    log.call(1, null, 2_300);
    log.rep(2);
    log.call(2, ['line'], 2_600);
    log.rep(3);
    log.call(3, null, 2_100);
    log.rep(4, { line: -5 });
    log.call(4, ['aim']);
    log.rep(5, { line: -5, depth: -2 });
    log.call(5, ['depth']);
    log.rep(6, { depth: -4 });
    log.call(6, []);
    log.rep(7, { depth: -4 });
    log.put('spoil', { trial: 7, fromMs: 0, toMs: 9, why: 'stuck' });
    log.rep(8, {});
    log.put('call', { trial: 8, afterMs: 1_900, verdict: 'caution', faults: ['depth'], place: null });
    log.rep(9);
  });

  it('are told from truth and call; a caution is a counted rep', () => {
    expect(trials.map((one) => one.outcome)).toEqual([
      'hit',
      'miss',
      'false-alarm',
      'correct-rejection',
      'hit',
      'hit',
      'hit',
      'spoilt',
      'correct-rejection',
      'unanswered',
    ]);
    expect(countsOf(trials)).toEqual({ hits: 4, misses: 1, falseAlarms: 1, correctRejections: 2 });
  });

  it('count for one fault only where the call can be told for it', () => {
    // Left out: the rep with two faults, the no-rep without a reason, the rep that had another fault.
    expect(countsFor(trials, 'depth')).toEqual({ hits: 1, misses: 1, falseAlarms: 0, correctRejections: 3 });
    expect(countsFor(trials, 'line')).toEqual({ hits: 0, misses: 1, falseAlarms: 1, correctRejections: 2 });
    expect(countsFor(trials, 'bounce')).toEqual({ hits: 0, misses: 0, falseAlarms: 0, correctRejections: 0 });
  });

  it('tell right reasons and what was taken for what', () => {
    expect(reasonScore(trials)).toMatchObject({
      right: 2,
      of: 3,
      unexplained: 1,
      confusions: [{ truth: 'line', named: 'aim', count: 1 }],
    });
  });

  it('tell quartiles of the reaction times', () => {
    // 300, 600, 900, 400 ms and four more of 500, 500, 500 and 200.
    expect(reactionScore(trials)).toEqual({ calls: 8, medianMs: 500, lowMs: 375, highMs: 525 });
    expect(reactionScore([])).toEqual({ calls: 0, medianMs: null, lowMs: null, highMs: null });
  });

  it('never make a number of nothing', () => {
    const score = faultScore([], depth, null);
    expect(score.verdict).toEqual({ kind: 'cannot-tell', why: 'no-calls' });
    expect(score.detection).toMatchObject({ dPrime: null, criterion: null, hitRate: null });
    expect(JSON.stringify(score)).not.toMatch(/NaN|Infinity/);
  });
});

describe('a live stream', () => {
  const task: TaskOf<'stream'> = {
    kind: 'stream',
    reps: 4,
    faults: [],
    faultShare: 0.5,
    faultShareAtEnd: 0.5,
    size: 'usual',
    fatigue: 0,
    place: side,
  };
  const drill = wallDrill(task);
  const reps = [CLEAN, { ...CLEAN, depth: -3 }, CLEAN, { ...CLEAN, line: -6 }].map((margins, i) => ({
    startMs: 2_500 * i,
    endMs: 2_500 * (i + 1),
    dueMs: 2_500 * i + (margins.depth < 0 ? 700 : 1_700),
    seenMs: 2_500 * i + 1_700,
    margins,
  }));
  const specification = {
    athlete: { stature: 1.75, build: 'medium' },
    cadence: 24,
    reps: 4,
    fatigue: 0,
    variation: 1,
    seed: 1,
    plan: {
      rate: 0.5,
      rateAtEnd: 0.5,
      codes: [],
      second: 0,
      nearMisses: 0,
      sizes: { cm: [1, 10], ms: [20, 100], degrees: [5, 20] },
    },
  };

  it('gives each rep the call that belongs to it', () => {
    const { trials, extraCalls } = scored((log) => {
      log.put('stream', { specification, place: side, reps });
      log.call(null, null, 2_150);
      log.call(null, ['depth'], 3_700);
      // The third is forgotten; the fourth is called, and a fifth press belongs to nothing.
      log.call(null, ['line'], 9_900);
      log.call(null, null, 12_900);
    }, drill);
    expect(trials.map((one) => one.outcome)).toEqual(['correct-rejection', 'hit', 'unanswered', 'hit']);
    expect(trials.map((one) => one.reaction)).toEqual([450, 500, null, 700]);
    expect(extraCalls.map((call) => call.afterMs)).toEqual([12_900]);
  });

  it('leaves out the reps of a time that could not be seen', () => {
    const { trials } = scored((log) => {
      log.put('stream', { specification, place: side, reps });
      log.call(null, null, 2_150);
      log.put('spoil', { trial: null, fromMs: 2_600, toMs: 5_200, why: 'hidden' });
    }, drill);
    expect(trials.map((one) => one.outcome)).toEqual(
      ['unanswered', 'spoilt', 'spoilt', 'unanswered'].with(0, 'correct-rejection'),
    );
  });
});

describe('what a line says', () => {
  const readings = (value: number, half: number, precision: number) =>
    computed({
      strictness: { value, low: value - half, high: value + half },
      precision: { value: precision, low: precision / 2, high: precision * 2 },
    });

  it('in kinds that words can be made of', () => {
    expect(lineVerdict(readings(-3, 1, 2), 40)).toEqual({ kind: 'lenient', by: 3 });
    expect(lineVerdict(readings(2, 1, 2), 40)).toEqual({ kind: 'strict', by: 2 });
    expect(lineVerdict(readings(0.5, 1, 2), 40)).toEqual({ kind: 'on-the-line' });
    expect(lineVerdict(readings(0.5, 3, 2), 40)).toEqual({ kind: 'unclear', stillNeeded: 120 });
    expect(lineVerdict(failed('one-category', ''), 40)).toEqual({ kind: 'cannot-tell', why: 'all-alike' });
  });

  it('and the gain of a place', () => {
    const drill = wallDrill({
      kind: 'place',
      fault: 'depth',
      reps: 150,
      poor: poorPlace('wall-throw', 'depth'),
      advised: side,
    });
    const judge = {
      eyes: { depth: { strictness: -1, precision: 1.5, lapse: 0 } },
      poorEyes: { depth: { strictness: -7, precision: 7, lapse: 0 } },
    };
    const { trials } = judged(drill, playDrill(drill, judge, seededGenerator(8)));
    const gain = placeGain(trials, depth);
    expect(gain.pairs).toBe(150);
    expect(gain.verdict).toBe('advised-better');
    expect(gain.precisionRatio?.low).toBeGreaterThan(1);
    expect(gain.gain?.value).toBeCloseTo((gain.rightAdvised?.value ?? 0) - (gain.rightPoor?.value ?? 0), 9);
    expect(gain.poor.verdict.kind).toBe('lenient');
    const alike = placeGain(judged(drill, playDrill(drill, { eyes: judge.eyes }, seededGenerator(9))).trials, depth);
    expect(alike.verdict).toBe('unclear');
    expect(placeGain([], depth)).toMatchObject({ pairs: 0, verdict: 'too-few', gain: null, pValue: null });
  });
});
