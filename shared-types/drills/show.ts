import { type Motion, momentOf } from '../motion/motion.ts';
import { makeRep } from '../motion/rep.ts';
import { FAULTS, type FaultCode, type MovementName, type RepSpecification } from '../motion/specification.ts';
import { makeStream, type Stream, type StreamSpecification } from '../motion/stream.ts';
import { type Truth, truth } from '../motion/truth.ts';
import { type Drill, faultsNamed, type Place } from './drill.ts';
import type { DrillEventOf, ShownMargins } from './events.ts';
import { brokenFaults } from './fold.ts';

type MomentName = Parameters<typeof momentOf>[1];
type BodyOf<K extends 'rep' | 'stream'> = Omit<DrillEventOf<K>, 'drill' | 'pad' | 'seq' | 'at'>;

/** The moment at which a fault can be seen, or can no longer be missed. */
const SEEN_AT: Readonly<Record<MovementName, Partial<Readonly<Record<FaultCode, MomentName>>>>> = {
  'wall-throw': { stand: 'descent', depth: 'bottom', line: 'wall-contact', aim: 'wall-contact', bounce: 'pick-up' },
  'jump-burpee': {
    start: 'hands-down',
    creep: 'hands-down',
    hands: 'hands-down',
    chest: 'chest-up',
    over: 'feet-in',
    off: 'take-off',
    on: 'landing',
  },
  'box-jump-over': { off: 'take-off', on: 'box-take-off', tall: 'box-take-off', touch: 'box-landing' },
};

/** A rep ready to be drawn, and the event that records it. */
export interface ShownRep {
  readonly motion: Motion;
  readonly truth: Truth;
  readonly body: BodyOf<'rep'>;
}

/** Makes one rep of a drill: its motion, its truth, and what the log keeps of it. Takes some ten milliseconds. */
export function showRep(drill: Drill, trial: number, specification: RepSpecification, place: Place): ShownRep {
  const motion = makeRep(specification);
  const found = truth(motion, drill.numbers);
  const margins = marginsOf(found);
  const { movement: _movement, sheet: _sheet, ...kept } = specification;
  return {
    motion,
    truth: found,
    body: {
      kind: 'rep',
      trial,
      specification: { ...kept, margins: { ...kept.margins }, athlete: { ...kept.athlete } },
      place,
      margins,
      durationMs: whole(motion.duration),
      ...momentsOf(drill, motion, margins),
    },
  };
}

export interface ShownStream {
  readonly stream: Stream;
  readonly body: BodyOf<'stream'>;
}

/** Makes the stream of a drill and what the log keeps of it. Takes about five milliseconds a rep. */
export function showStream(drill: Drill, specification: StreamSpecification, place: Place): ShownStream {
  const stream = makeStream(specification);
  const { movement: _movement, sheet: _sheet, plan, ...kept } = specification;
  const { cm, ms, degrees } = plan.sizes;
  const reps = stream.reps.map(({ motion, start, end }, index) => {
    const margins = marginsOf(stream.truthOf(index).truth);
    const { dueMs, seenMs } = momentsOf(drill, motion, margins);
    const startMs = whole(start);
    return { startMs, endMs: whole(end), dueMs: startMs + dueMs, seenMs: startMs + seenMs, margins };
  });
  const sizes = { cm: [...cm], ms: [...ms], degrees: [...degrees] } satisfies Record<string, [number, number]>;
  return {
    stream,
    body: {
      kind: 'stream',
      specification: { ...kept, athlete: { ...kept.athlete }, plan: { ...plan, codes: [...plan.codes], sizes } },
      place,
      reps,
    },
  };
}

/** The full specification of a recorded rep, for showing it again. */
export function specificationOf(
  drill: Pick<Drill, 'movement' | 'numbers'>,
  kept: BodyOf<'rep'>['specification'],
): RepSpecification {
  return { ...kept, movement: drill.movement, sheet: drill.numbers };
}

/** The same for a recorded stream. */
export function streamSpecificationOf(
  drill: Pick<Drill, 'movement' | 'numbers'>,
  kept: BodyOf<'stream'>['specification'],
): StreamSpecification {
  return { ...kept, movement: drill.movement, sheet: drill.numbers };
}

function marginsOf(found: Truth): ShownMargins {
  const margins: ShownMargins = {};
  for (const [code, entry] of Object.entries(found) as [FaultCode, Truth[FaultCode]][]) {
    // A hundredth of a millimetre is beyond every eye, and the shorter text reads back to the same number.
    margins[code] = entry?.margin == null ? null : Math.round(entry.margin * 1_000) / 1_000;
  }
  return margins;
}

function momentsOf(drill: Drill, motion: Motion, margins: ShownMargins): { dueMs: number; seenMs: number } {
  const seen = (code: FaultCode) => {
    const name = SEEN_AT[drill.movement][code];
    return name === undefined ? null : momentOf(motion, name);
  };
  const times = (codes: readonly FaultCode[]) => codes.map(seen).filter((t) => t !== null);
  // A judge who watches for one fault has seen the rep once that fault can no longer come.
  const named = faultsNamed(drill.task);
  const all = times(named.length === 0 ? FAULTS[drill.movement] : named);
  const last = all.length === 0 ? motion.duration : Math.max(...all);
  const broken = times(brokenFaults(drill, margins));
  return { dueMs: whole(broken.length === 0 ? last : Math.min(...broken)), seenMs: whole(Math.max(last, ...broken)) };
}

const whole = (seconds: number): number => Math.round(1_000 * seconds);
