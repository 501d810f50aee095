import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldDrill } from '../../shared-types/drills/fold.ts';
import { LogWriter, wallDrill } from './fixtures.ts';

const drill = wallDrill();

function usualLog() {
  const log = new LogWriter(drill);
  log.rep(0, { depth: -3 });
  log.call(0, ['depth']);
  log.rep(1);
  log.call(1, null);
  log.rep(2, { depth: -1, line: -4 });
  log.call(2, ['line']);
  log.put('end', { why: 'stopped' });
  return log;
}

describe('the fold of a drill', () => {
  it('tells reps, truths and calls', () => {
    const state = foldDrill(drill, usualLog().events);
    expect(state.phase).toBe('ended');
    expect(state.clashes).toEqual([]);
    expect(state.trials.map((trial) => trial.broken)).toEqual([['depth'], [], ['depth', 'line']]);
    expect(state.trials.map((trial) => trial.call?.faults)).toEqual([['depth'], [], ['line']]);
  });

  it('reads the same from any order and any repetition', () => {
    const { events } = usualLog();
    const wanted = foldDrill(drill, events);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: events.length - 1 }), { maxLength: 20 }), (again) => {
        const more = again.flatMap((index) => events[index] ?? []);
        expect(foldDrill(drill, [...more, ...events.toReversed()])).toEqual(wanted);
      }),
      { numRuns: 50 },
    );
  });

  it('is total: any part of any log folds, and every event counts or clashes', () => {
    const { events } = usualLog();
    fc.assert(
      fc.property(fc.subarray(events), (part) => {
        const state = foldDrill(drill, part);
        const calls = state.trials.filter((trial) => trial.call !== null).length;
        const ends = state.endedBecause === null ? 0 : 1;
        const begun = state.startedAt === null ? 0 : 1;
        expect(begun + ends + state.trials.length + calls + state.clashes.length).toBe(part.length);
      }),
    );
  });

  it('withdraws a slip, and takes the call that follows it', () => {
    const log = new LogWriter(drill);
    log.rep(0, { depth: -3 });
    const wrong = log.call(0, null);
    log.put('slip', { of: { pad: wrong.pad, seq: wrong.seq } });
    log.call(0, ['depth']);
    const state = foldDrill(drill, log.events);
    expect(state.trials[0]?.call?.verdict).toBe('no-rep');
    expect(state.slips).toBe(1);
    expect(state.clashes).toEqual([]);
  });

  it('keeps a pad’s order where its clock stepped back', () => {
    const log = new LogWriter(drill);
    log.rep(0);
    log.put('call', { trial: 0, at: 1, afterMs: 900, verdict: 'counted', faults: [], place: null });
    expect(foldDrill(drill, log.events).trials[0]?.call?.afterMs).toBe(900);
  });

  it('tells in words what cannot follow', () => {
    const log = usualLog();
    log.call(1, null);
    const [first] = log.events;
    const kinds = (events: typeof log.events) => foldDrill(drill, events).clashes.map((clash) => clash.kind);
    expect(kinds(log.events)).toEqual(['after-end']);
    expect(kinds(log.events.slice(1, 2))).toEqual(['not-begun']);
    const other = new LogWriter(wallDrill(undefined, { id: '00000000-0000-4000-8000-00000000d002' }));
    expect(kinds(other.events)).toEqual(['wrong-drill']);
    if (first?.kind !== 'begin') throw new Error('a log begins with a begin');
    expect(kinds([first, { ...first, wallClock: 5 }])).toEqual(['changed-event']);
    const twice = new LogWriter(drill);
    twice.rep(0);
    twice.call(0, null);
    twice.call(0, ['depth']);
    twice.call(4, null);
    twice.rep(3);
    twice.put('slip', { of: { pad: 'pad-a', seq: 99 } });
    expect(kinds(twice.events)).toEqual(['no-such-call', 'called-already', 'no-such-rep', 'shown-already']);
  });

  it('counts within the sheet’s tolerance as good', () => {
    const lenient = wallDrill(undefined, { numbers: { ...drill.numbers, tolerance: { depth: 2 } } });
    const log = new LogWriter(lenient);
    log.rep(0, { depth: -1.9 });
    log.rep(1, { depth: -2.1 });
    expect(foldDrill(lenient, log.events).trials.map((trial) => trial.broken)).toEqual([[], ['depth']]);
  });
});
