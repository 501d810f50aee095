import { expect, test } from 'vitest';
import { openDrillLog } from '../../renderer/areas/eye/run/drill-log.ts';
import { DrillRun, PACE } from '../../renderer/areas/eye/run/drill-run.ts';
import type { Task } from '../../shared-types/drills/drill.ts';
import type { DrillEvent } from '../../shared-types/drills/events.ts';
import { drillWith, tasks } from './drills.ts';

/** A run on a clock that stands until it is moved, with the events as the desk would get them. */
function started(task: Task, known: readonly DrillEvent[] = []) {
  const sent: DrillEvent[] = [];
  let now = 1_000;
  const log = openDrillLog(
    drillWith(task),
    known,
    // Every page load writes under a name of its own.
    `pad ${known.length}`,
    async (events) => {
      sent.push(...events);
    },
    () => now,
  );
  const run = new DrillRun(log);
  run.begin(now, 1_700_000_000_000);
  return {
    run,
    log,
    sent,
    now: () => now,
    /** Lets time pass with the screen ticking as it does. */
    pass: (milliseconds: number) => {
      for (let left = milliseconds; left > 0; left -= 40) {
        now += Math.min(40, left);
        run.tick(now);
      }
    },
    kinds: () => sent.map((event) => event.kind),
  };
}

function shownRep(run: DrillRun) {
  const phase = run.phase.get();
  if (phase.kind !== 'rep') throw new Error(`no rep is shown: ${phase.kind}`);
  return phase;
}

test('single reps: shown, called, the truth after the rep, then the next, to the end', async () => {
  const { run, log, pass, now, kinds } = started(tasks.single);
  for (let trial = 0; trial < tasks.single.reps; trial += 1) {
    const { shown, startAt } = shownRep(run);
    expect(startAt).toBe(now() + PACE.leadRep);
    expect(run.call('counted', [], now(), null)).toBe(false);
    pass(PACE.leadRep + 500);
    expect(run.call('no-rep', ['depth'], now(), null)).toBe(true);
    expect(run.call('counted', [], now(), null)).toBe(false);
    expect(shownRep(run).call?.afterMs).toBe(500);
    pass(shown.body.durationMs - 500 - 60);
    expect(run.phase.get().kind).toBe('rep');
    pass(100);
    expect(run.phase.get().kind).toBe('feedback');
    run.next(now());
  }
  expect(run.phase.get().kind).toBe('done');
  await log.sent();
  const reps = Array.from({ length: tasks.single.reps }, () => ['rep', 'call']).flat();
  expect(kinds()).toEqual(['begin', ...reps, 'end']);
  const state = log.state.get();
  expect(state.phase).toBe('ended');
  expect(state.endedBecause).toBe('all-shown');
  expect(state.clashes).toEqual([]);
  expect(state.trials.map((trial) => trial.call?.afterMs)).toEqual([500, 500, 500, 500]);
});

test('a slip withdraws the call while the truth is not shown, and the next call stands', () => {
  const { run, log, pass, now } = started(tasks.single);
  expect(run.slip()).toBe(false);
  pass(PACE.leadRep + 400);
  run.call('counted', [], now(), null);
  pass(120);
  expect(run.slip()).toBe(true);
  expect(shownRep(run).call).toBe(null);
  pass(200);
  run.call('no-rep', [], now(), null);
  expect(log.state.get().trials[0]?.call?.verdict).toBe('no-rep');
  expect(log.state.get().slips).toBe(1);
  pass(10_000);
  expect(run.phase.get().kind).toBe('feedback');
  expect(run.slip()).toBe(false);
});

test('finding a line: no truth in between, the next rep soon after the call, ended by rule', () => {
  const { run, log, pass, now } = started(tasks.line);
  let shown = 0;
  while (run.phase.get().kind === 'rep' && shown < 20) {
    shown += 1;
    pass(PACE.leadRep + 1_000);
    // A judge whose line lies at -3 cm, without noise.
    const margin = log.state.get().trials.at(-1)?.margins.depth ?? 0;
    run.call(margin < -3 ? 'no-rep' : 'counted', margin < -3 ? ['depth'] : [], now(), null);
    pass(PACE.noted - 40);
    expect(shownRep(run).call).not.toBe(null);
    pass(80);
  }
  expect(run.phase.get().kind).toBe('done');
  expect(shown).toBeGreaterThanOrEqual(tasks.line.leastTrials);
  expect(['narrow-enough', 'most-trials']).toContain(log.state.get().endedBecause);
});

test('places: each rep comes from both, and the drill leads the judge there', () => {
  const { run, log, pass, now } = started(tasks.place);
  for (let trial = 0; trial < 2 * tasks.place.reps; trial += 1) {
    pass(PACE.leadRep + 900);
    run.call('counted', [], now(), null);
    pass(PACE.noted + 40);
  }
  expect(run.phase.get().kind).toBe('done');
  const names = log.state.get().trials.map((trial) => trial.place.name);
  expect(names.toSorted()).toEqual(['advised', 'advised', 'poor', 'poor']);
});

test('a stream: made, begun after the lead, called without a pause, ended by itself', async () => {
  const { run, log, pass, now, kinds } = started(tasks.stream);
  expect(run.phase.get().kind).toBe('making');
  run.make(now);
  const phase = run.phase.get();
  if (phase.kind !== 'stream') throw new Error('no stream');
  expect(run.call('counted', [], now(), null)).toBe(false);
  pass(PACE.leadStream);
  let at = 0;
  for (const rep of phase.shown.body.reps) {
    pass(rep.seenMs + 100 - at);
    at = rep.seenMs + 100;
    expect(run.call('counted', [], now(), null)).toBe(true);
  }
  expect(run.slip()).toBe(true);
  expect(run.call('no-rep', ['line'], now(), null)).toBe(true);
  pass(phase.shown.stream.duration * 1_000 - at + PACE.lastCalls - 60);
  expect(run.phase.get().kind).toBe('stream');
  pass(120);
  expect(run.phase.get().kind).toBe('done');
  await log.sent();
  expect(kinds()).toEqual(['begin', 'stream', ...Array(5).fill('call'), 'slip', 'call', 'end']);
  const state = log.state.get();
  expect(state.calls.map((call) => call.afterMs)).toEqual(phase.shown.body.reps.map((rep) => rep.seenMs + 100));
  expect(state.calls.at(-1)?.verdict).toBe('no-rep');
  expect(state.clashes).toEqual([]);
});

test('a rep that the page or the drawing has hidden is shown again', () => {
  const { run, log, pass, now } = started(tasks.single);
  const first = shownRep(run).shown.body.specification;
  pass(PACE.leadRep + 500);
  run.visible(false, now());
  pass(300);
  run.visible(true, now());
  expect(run.phase.get()).toEqual({ kind: 'paused', why: 'hidden' });
  expect(log.state.get().trials[0]).toMatchObject({ spoilt: true, call: null });
  run.resume(now());
  expect(shownRep(run).shown.body.trial).toBe(1);
  expect(shownRep(run).shown.body.specification.margins).toEqual(first.margins);
  pass(PACE.leadRep + 500);
  run.frame(PACE.stuck - 1, now());
  expect(run.phase.get().kind).toBe('rep');
  run.frame(PACE.stuck, now());
  expect(run.phase.get()).toEqual({ kind: 'paused', why: 'stuck' });
  run.resume(now());
  pass(PACE.leadRep + 20_000);
  // The rep is over and waits for its call: there is nothing left to be missed.
  run.frame(2_000, now());
  expect(run.phase.get().kind).toBe('rep');
});

test('in a stream what was hidden is left out, and the stream goes on', () => {
  const { run, log, pass, now } = started(tasks.stream);
  run.make(now);
  pass(PACE.leadStream + 3_500);
  run.visible(false, now());
  pass(400);
  run.visible(true, now());
  expect(run.phase.get().kind).toBe('stream');
  const spoilt = log.state.get().trials.filter((trial) => trial.spoilt);
  expect(spoilt.length).toBeGreaterThanOrEqual(1);
  expect(spoilt.every((trial) => trial.startMs < 3_900 && trial.endMs > 3_500)).toBe(true);
});

test('a pause shows the rep again; stopping keeps what was called', () => {
  const { run, log, pass, now } = started(tasks.single);
  pass(PACE.leadRep + 300);
  run.pause(now());
  expect(run.phase.get()).toEqual({ kind: 'paused', why: 'asked' });
  run.resume(now());
  pass(PACE.leadRep + 300);
  run.call('counted', [], now(), null);
  run.stop();
  expect(log.state.get()).toMatchObject({ phase: 'ended', endedBecause: 'stopped' });
  expect(log.state.get().trials.filter((trial) => trial.call !== null)).toHaveLength(1);
});

test('taken up after a reload: the rep under way is shown again, a stream is over', async () => {
  const before = started(tasks.single);
  before.pass(PACE.leadRep + 300);
  await before.log.sent();
  const after = started(tasks.single, before.sent);
  expect(after.log.state.get().trials).toMatchObject([{ spoilt: true }]);
  expect(shownRep(after.run).shown.body.trial).toBe(1);

  const stream = started(tasks.stream);
  stream.run.make(stream.now);
  stream.pass(PACE.leadStream + 1_000);
  await stream.log.sent();
  const later = started(tasks.stream, stream.sent);
  expect(later.run.phase.get().kind).toBe('done');
  expect(later.log.state.get().endedBecause).toBe('stopped');
});
