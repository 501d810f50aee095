import fc from 'fast-check';
import type { SetEvent } from '../../shared-types/log/events.ts';

export const SET = '00000000-0000-4000-8000-000000000001';
const OTHER_SET = '00000000-0000-4000-8000-000000000002';

const pad = fc.constantFrom('a', 'b', 'c');
const ref = fc.record({ pad, seq: fc.integer({ min: 1, max: 12 }) });
const faults = fc.subarray(['depth', 'line', 'aim']);
const judged = fc.oneof(
  fc.constant({ verdict: 'counted' as const, faults: [] as string[] }),
  fc.record({ verdict: fc.constantFrom('no-rep' as const, 'caution' as const), faults }),
);

const body = fc.oneof(
  { weight: 2, arbitrary: fc.constant({ kind: 'go' as const, wallClock: 1_700_000_000_000 }) },
  { weight: 8, arbitrary: judged.map((call) => ({ kind: 'call' as const, ...call })) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('explain' as const), of: ref, faults }) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(judged, ref)
      .map(([call, of]) => ({ kind: 'reverse' as const, of, ...call, by: null, reason: '' })),
  },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('slip' as const), of: ref }) },
  { weight: 2, arbitrary: fc.constantFrom({ kind: 'break-start' as const }, { kind: 'break-end' as const }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('mark' as const), metres: fc.integer({ min: 0, max: 80 }) }) },
  { weight: 1, arbitrary: fc.constantFrom({ kind: 'finish' as const }, { kind: 'abandon' as const, reason: '' }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'sign-off' as const, by: null, name: 'A' }) },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('appeal' as const),
      of: ref,
      reason: fc.constant(''),
      by: fc.constant(null),
      outcome: fc.constantFrom('open' as const, 'upheld' as const, 'refused' as const),
    }),
  },
);

/** Any log at all: several pads, clocks that step back, references to nothing, the same name twice, another set's event. */
export const anyLog: fc.Arbitrary<SetEvent[]> = fc.array(
  fc
    .record({
      set: fc.oneof({ weight: 19, arbitrary: fc.constant(SET) }, { weight: 1, arbitrary: fc.constant(OTHER_SET) }),
      pad,
      seq: fc.integer({ min: 1, max: 12 }),
      at: fc.integer({ min: 0, max: 20_000 }),
      body,
    })
    .map(({ body: inner, ...head }) => ({ ...head, ...inner })),
  { maxLength: 40 },
);

/** A log without two different events of one name. */
export const cleanLog = anyLog.map((log) => {
  const seen = new Set<string>();
  return log.filter((event) => {
    const key = `${event.pad}#${event.seq}`;
    return event.set === SET && !seen.has(key) && seen.add(key);
  });
});
