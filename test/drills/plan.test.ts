import { describe, expect, it } from 'vitest';
import { seededGenerator } from '../../main/analysis/random/generator.ts';
import { drill as drillSchema, type TaskOf } from '../../shared-types/drills/drill.ts';
import type { DrillEvent } from '../../shared-types/drills/events.ts';
import { foldDrill } from '../../shared-types/drills/fold.ts';
import { poorPlace, walkedPlace } from '../../shared-types/drills/places.ts';
import { nextStep, progressOf } from '../../shared-types/drills/plan.ts';
import { showRep, showStream, specificationOf, streamSpecificationOf } from '../../shared-types/drills/show.ts';
import { momentOf } from '../../shared-types/motion/motion.ts';
import { FAULTS, MOVEMENTS } from '../../shared-types/motion/specification.ts';
import { drillOf, playDrill } from '../simulation/simulated-judge.ts';
import { LogWriter, lineTask, side, singleTask, wallDrill } from './fixtures.ts';

const judge = { eyes: { depth: { strictness: -2, precision: 2, lapse: 0 } } };
const place = {
  kind: 'place',
  fault: 'depth',
  reps: 10,
  poor: poorPlace('wall-throw', 'depth'),
  advised: side,
} as const;

describe('the plan of a drill', () => {
  it('goes the same way for the same calls, and another way for another seed', () => {
    for (const task of [singleTask, lineTask, place]) {
      const play = (seed: number) => playDrill(wallDrill(task, { seed }), judge, seededGenerator(3));
      expect(play(5)).toEqual(play(5));
      expect(play(5).trials).not.toEqual(play(6).trials);
    }
  });

  it('shows of single reps as many faulty ones as asked, every fault in turn', () => {
    const { trials } = playDrill(wallDrill({ ...singleTask, reps: 40 }), judge, seededGenerator(1));
    expect(trials).toHaveLength(40);
    const broken = trials.filter((trial) => trial.broken.length > 0);
    expect(broken).toHaveLength(20);
    for (const code of FAULTS['wall-throw']) {
      expect(broken.filter((trial) => trial.broken[0] === code)).toHaveLength(4);
    }
  });

  it('shows every rep of a drill on places twice, once from each', () => {
    const { trials } = playDrill(wallDrill(place), judge, seededGenerator(2));
    expect(trials).toHaveLength(20);
    const bySeed = Map.groupBy(trials, (trial) => trial.specification?.seed);
    expect(bySeed.size).toBe(10);
    for (const pair of bySeed.values()) {
      expect(pair.map((trial) => trial.place.name).sort()).toEqual(['advised', 'poor']);
      expect(pair[0]?.specification).toEqual(pair[1]?.specification);
    }
    const firstHalf = trials.slice(0, 10);
    expect(new Set(firstHalf.map((trial) => trial.specification?.seed)).size).toBe(10);
    expect(firstHalf.filter((trial) => trial.place.name === 'poor')).toHaveLength(5);
    expect(trials.filter((trial) => trial.broken.length > 0)).toHaveLength(10);
  });

  it('adapts to the judge and ends by its rule', () => {
    const drill = wallDrill(lineTask);
    const { trials, endedBecause } = playDrill(drill, judge, seededGenerator(4));
    expect(endedBecause).toBe('narrow-enough');
    expect(trials.length).toBeLessThan(40);
    const late = trials.slice(8).map((trial) => trial.margins.depth ?? 0);
    // Every later rep lies within a few of the judge's precisions of their line.
    expect(Math.min(...late)).toBeGreaterThan(-12);
    const blind = playDrill(
      drill,
      { eyes: { depth: { strictness: -2, precision: 40, lapse: 0 } } },
      seededGenerator(5),
    );
    expect(blind.trials.length).toBeGreaterThanOrEqual(12);
  });

  it('steps the same with a memory and without', () => {
    const drill = wallDrill(lineTask);
    const { trials } = playDrill(drill, judge, seededGenerator(6));
    const log: DrillEvent[] = [];
    const writer = new LogWriter(drill);
    log.push(...writer.events);
    for (const trial of trials.slice(0, 6)) {
      const step = nextStep(drill, foldDrill(drill, writer.events));
      expect(step.kind === 'rep' && step.specification.seed).toBe(trial.specification?.seed);
      expect(step.kind === 'rep' && step.specification.margins.depth).toBe(trial.specification?.margins.depth);
      writer.rep(trial.trial, trial.margins);
      writer.call(trial.trial, trial.call?.verdict === 'no-rep' ? ['depth'] : null);
    }
  });

  it('waits for a call, and shows a spoilt rep’s margins again', () => {
    const drill = wallDrill();
    const log = new LogWriter(drill);
    const first = nextStep(drill, foldDrill(drill, log.events));
    if (first.kind !== 'rep') throw new Error('the drill begins with a rep');
    log.rep(0);
    expect(nextStep(drill, foldDrill(drill, log.events))).toEqual({ kind: 'wait' });
    log.put('spoil', { trial: 0, fromMs: 0, toMs: 100, why: 'hidden' });
    const again = nextStep(drill, foldDrill(drill, log.events));
    expect(again).toMatchObject({ kind: 'rep', trial: 1, specification: { margins: first.specification.margins } });
    expect(progressOf(drill, foldDrill(drill, log.events))).toEqual({ done: 0, of: 12 });
  });

  it('refuses a fault that the movement does not know', () => {
    expect(drillSchema.safeParse(wallDrill()).success).toBe(true);
    expect(drillSchema.safeParse(wallDrill({ ...lineTask, fault: 'chest' })).success).toBe(false);
  });

  it('knows the advised place from either side', () => {
    expect(walkedPlace('wall-throw', 'depth', { bearing: -100, distance: 3, height: 1.5 }).name).toBe('advised');
    expect(walkedPlace('wall-throw', 'depth', { bearing: 150, distance: 3, height: 1.5 }).name).toBe('own');
  });
});

describe('what is shown', () => {
  it.each(MOVEMENTS)('%s: is made again from the log alone, truth and all', (movement) => {
    const drill = drillOf(movement, { ...singleTask, reps: 4 }, 9);
    const step = nextStep(
      drill,
      foldDrill(drill, [{ drill: drill.id, pad: 'p', seq: 1, at: 0, kind: 'begin', wallClock: 1 }]),
    );
    if (step.kind !== 'rep') throw new Error('the drill begins with a rep');
    const { body } = showRep(drill, 0, step.specification, step.place);
    const again = showRep(drill, 0, specificationOf(drill, JSON.parse(JSON.stringify(body.specification))), step.place);
    expect(again.body).toEqual(body);
    expect(body.dueMs).toBeGreaterThan(0);
    expect(body.seenMs).toBeGreaterThanOrEqual(body.dueMs);
    expect(body.durationMs).toBeGreaterThanOrEqual(body.seenMs);
    for (const [code, asked] of Object.entries(step.specification.margins)) {
      expect(Math.abs((body.margins[code as keyof typeof body.margins] ?? 99) - asked)).toBeLessThan(1);
    }
  });

  it('a clean rep is due once the faults that the drill asks for can no longer come', () => {
    const begun = (task: Parameters<typeof drillOf>[1]) => {
      const drill = drillOf('wall-throw', task, 9);
      const step = nextStep(
        drill,
        foldDrill(drill, [{ drill: drill.id, pad: 'p', seq: 1, at: 0, kind: 'begin', wallClock: 1 }]),
      );
      if (step.kind !== 'rep') throw new Error('the drill begins with a rep');
      const clean = { ...step.specification, margins: {} };
      const { motion, body } = showRep(drill, 0, clean, step.place);
      return { bottom: momentOf(motion, 'bottom'), wall: momentOf(motion, 'wall-contact'), body };
    };
    const one = begun(lineTask);
    expect(one.body.dueMs).toBe(Math.round((one.bottom ?? 0) * 1_000));
    const all = begun(singleTask);
    expect(all.body.dueMs).toBe(Math.round((all.wall ?? 0) * 1_000));
    expect(all.body.dueMs).toBeGreaterThan(one.body.dueMs);
  });

  it('a stream too, its reps one after the other', () => {
    const task: TaskOf<'stream'> = {
      kind: 'stream',
      reps: 6,
      faults: [],
      faultShare: 0.5,
      faultShareAtEnd: 0.6,
      size: 'usual',
      fatigue: 0.5,
      place: side,
    };
    const drill = drillOf('wall-throw', task, 3);
    const step = nextStep(
      drill,
      foldDrill(drill, [{ drill: drill.id, pad: 'p', seq: 1, at: 0, kind: 'begin', wallClock: 1 }]),
    );
    if (step.kind !== 'stream') throw new Error('the drill begins with a stream');
    const { body } = showStream(drill, step.specification, step.place);
    const again = showStream(drill, streamSpecificationOf(drill, body.specification), step.place);
    expect(again.body).toEqual(body);
    body.reps.forEach((rep, i) => {
      expect(rep.startMs).toBe(i === 0 ? 0 : body.reps[i - 1]?.endMs);
      expect(rep.dueMs).toBeGreaterThan(rep.startMs);
      expect(rep.seenMs).toBeLessThanOrEqual(rep.endMs);
    });
  });
});
