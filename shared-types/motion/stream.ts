import type { Athlete } from './body.ts';
import { type Motion, type Placement, placed } from './motion.ts';
import type { Scene } from './movement.ts';
import type { Pose } from './pose.ts';
import { mixSeed, type Random, random } from './random.ts';
import { makeRep, marginRange } from './rep.ts';
import {
  FAULTS,
  type FaultCode,
  type Margins,
  type MovementName,
  type RepSpecification,
  type SheetNumbers,
  unitOf,
} from './specification.ts';
import { type Truth, truth, type Verdict, verdict } from './truth.ts';
import { clamp } from './vector.ts';

/** How often and how badly the reps of a stream go wrong. */
export interface FaultPlan {
  /** Share of reps with at least one fault in the first rep, and in the last (fatigue). */
  readonly rate: number;
  readonly rateAtEnd: number;
  /** Which faults may come; all of the sheet's when empty. */
  readonly codes: readonly FaultCode[];
  /** Share of faulty reps that have a second fault. */
  readonly second: number;
  /** Share of good reps that are good by a hair. */
  readonly nearMisses: number;
  /** From just visible to gross, in each unit, as positive sizes. */
  readonly sizes: Readonly<Record<'cm' | 'ms' | 'degrees', readonly [least: number, most: number]>>;
}

/** @internal exported for the tests of streams */
export const USUAL_PLAN: FaultPlan = {
  rate: 0.15,
  rateAtEnd: 0.3,
  codes: [],
  second: 0.12,
  nearMisses: 0.15,
  sizes: { cm: [1.5, 14], ms: [25, 160], degrees: [5, 35] },
};

export interface StreamSpecification {
  readonly movement: MovementName;
  readonly athlete: Athlete;
  readonly sheet: SheetNumbers;
  /** Reps a minute at the start. */
  readonly cadence: number;
  /** 1 to 200; a drill usually shows 20 to 60. */
  readonly reps: number;
  /** Fatigue at the end, 0 to 1; it grows from nothing. */
  readonly fatigue: number;
  readonly variation: number;
  readonly seed: number;
  readonly plan: FaultPlan;
}

export interface StreamRep {
  /** Seconds since the stream's start. */
  readonly start: number;
  readonly end: number;
  readonly motion: Motion;
  readonly placement: Placement;
}

export interface Stream {
  readonly specification: StreamSpecification;
  readonly duration: number;
  readonly reps: readonly StreamRep[];
  /** What stands around the athlete, in the stream's axes. */
  readonly scene: Scene;
  /** Index of the rep that runs at `t`. */
  repAt(t: number): number;
  at(t: number): Pose;
  /** What happened in one rep, measured. */
  truthOf(rep: number): { readonly truth: Truth; readonly verdict: Verdict };
}

/** The specifications of a stream's reps: faults drawn by the plan, unannounced. */
export function streamReps(spec: StreamSpecification): readonly RepSpecification[] {
  const draw = random(mixSeed(spec.seed, 77));
  const codes = FAULTS[spec.movement].filter((code) => spec.plan.codes.length === 0 || spec.plan.codes.includes(code));
  return Array.from({ length: spec.reps }, (_, i): RepSpecification => {
    const progress = spec.reps > 1 ? i / (spec.reps - 1) : 0;
    const tired = spec.fatigue * progress;
    const bare: RepSpecification = {
      movement: spec.movement,
      athlete: spec.athlete,
      sheet: spec.sheet,
      cadence: spec.cadence * (1 - 0.22 * tired),
      margins: {},
      fatigue: tired,
      variation: spec.variation,
      seed: mixSeed(spec.seed, i + 1),
      styleSeed: spec.seed,
      first: i === 0,
    };
    const rate = spec.plan.rate + (spec.plan.rateAtEnd - spec.plan.rate) * progress;
    return { ...bare, margins: marginsFor(bare, draw, codes, rate, spec.plan) };
  });
}

function marginsFor(
  spec: RepSpecification,
  draw: Random,
  codes: readonly FaultCode[],
  rate: number,
  plan: FaultPlan,
): Margins {
  // The start line stands only before the first rep.
  const open = codes.filter((code) => (code !== 'start' || spec.first) && (code !== 'tall' || spec.sheet.tallAsked));
  const pick = (): FaultCode | undefined => open[Math.floor(draw.uniform() * open.length)];
  const margins: Partial<Record<FaultCode, number>> = {};
  const roll = draw.uniform();
  const first = pick();
  const second = pick();
  const more = draw.uniform() < plan.second;
  const near = draw.uniform() < plan.nearMisses;
  const size = draw.uniform();
  const otherSize = draw.uniform();
  if (first === undefined) return margins;
  if (roll < rate) {
    margins[first] = faultMargin(spec, first, size, plan);
    if (more && second !== undefined) margins[second] = faultMargin(spec, second, otherSize, plan);
    return margins;
  }
  if (near) {
    const range = marginRange(spec, first);
    margins[first] = clamp(size * (plan.sizes[unitOf(spec.movement, first)][0] + 0.5), range.low, range.high);
  }
  return margins;
}

function faultMargin(spec: RepSpecification, code: FaultCode, size: number, plan: FaultPlan): number {
  const [least, most] = plan.sizes[unitOf(spec.movement, code)];
  const range = marginRange(spec, code);
  // Small faults are commoner than gross ones.
  return clamp(-(least + (most - least) * size ** 1.7), range.low, range.high);
}

/** A continuous stream: each rep begins in the very pose in which the one before ended. */
export function makeStream(spec: StreamSpecification): Stream {
  const specs = streamReps(spec);
  const reps: StreamRep[] = [];
  let start = 0;
  let placement: Placement = { turned: false, shift: [0, 0, 0] };
  for (const [i, rep] of specs.entries()) {
    const motion = makeRep(rep, specs[i + 1] ?? null);
    reps.push({ start, end: start + motion.duration, motion, placement });
    start += motion.duration;
    placement = following(motion, placement);
  }
  const repAt = (t: number): number => {
    let low = 0;
    let high = reps.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (t < (reps[middle]?.end ?? 0)) high = middle;
      else low = middle + 1;
    }
    return low;
  };
  const found = new Map<number, { truth: Truth; verdict: Verdict }>();
  return {
    specification: spec,
    duration: start,
    reps,
    scene: reps[0]?.motion.scene ?? { wallZ: null, box: null, startLineZ: null },
    repAt,
    at: (t) => {
      const rep = reps[repAt(t)];
      if (rep === undefined) throw new RangeError('a stream needs at least one rep');
      return placed(rep.motion.at(t - rep.start), rep.placement);
    },
    truthOf: (index) => {
      const known = found.get(index);
      if (known !== undefined) return known;
      const rep = reps[index];
      if (rep === undefined) throw new RangeError(`the stream has no rep ${index}`);
      const measured = truth(rep.motion, spec.sheet);
      const entry = { truth: measured, verdict: verdict(measured) };
      found.set(index, entry);
      return entry;
    },
  };
}

/** Where the next rep lies: on from the landing, or half a turn round the box. */
function following(motion: Motion, placement: Placement): Placement {
  const movement = motion.specification.movement;
  if (movement === 'box-jump-over') return { turned: !placement.turned, shift: placement.shift };
  if (movement === 'wall-throw') return placement;
  const toe = Math.max(...motion.at(motion.duration).legs.map((leg) => leg.toe[2]));
  const [x, y, z] = placement.shift;
  return { turned: false, shift: [x, y, z + toe] };
}
