import { mixSeed, type Random, random } from '../motion/random.ts';
import { FAULTS, type FaultCode, type Margins, unitOf } from '../motion/specification.ts';
import type { Drill, TaskOf } from './drill.ts';
import { faultSizes, shownRange, toleranceOf } from './range.ts';

/**
 * The margins of the single rep at place `index` of the plan. Faulty reps take the faults in turn, sizes spread from least to
 * most, small ones commoner; of the good reps every other is good by a hair in some fault. The order is shuffled from the seed.
 */
export function singleMargins(drill: Drill, task: TaskOf<'single'>, index: number): Margins {
  const draw = random(mixSeed(drill.seed, 11));
  const codes = openFaults(drill, task.faults);
  const faulty = Math.round(task.faultShare * task.reps);
  const sizes = faultSizes(task.size);
  const steps = shuffled(
    Array.from({ length: faulty }, (_, i) => (i + 0.5) / faulty),
    draw,
  );
  const planned = Array.from({ length: task.reps }, (_, i): Margins => {
    const code = codes[i % Math.max(1, codes.length)];
    const near = draw.uniform();
    if (code === undefined) return {};
    const [least, most] = sizes[unitOf(drill.movement, code)];
    const { low, high } = shownRange(drill, code);
    if (i < faulty) return asked(drill, code, Math.max(low, -(least + (most - least) * (steps[i] ?? 0.5) ** 2)));
    return i % 2 === 0 ? {} : asked(drill, code, Math.min(high, near * (least + 1)));
  });
  return shuffled(planned, draw)[index] ?? {};
}

const asked = (drill: Drill, code: FaultCode, margin: number): Margins => ({
  [code]: margin - toleranceOf(drill, code),
});

/** The faults that may come in a drill: those named, or all of the movement that its sheet asks for. */
export function openFaults(drill: Pick<Drill, 'movement' | 'numbers'>, named: readonly FaultCode[]): FaultCode[] {
  return FAULTS[drill.movement].filter(
    (code) => (named.length === 0 || named.includes(code)) && (code !== 'tall' || drill.numbers.tallAsked),
  );
}

/** A new order (Fisher and Yates). */
export function shuffled<T>(items: readonly T[], draw: Random): T[] {
  const next = [...items];
  for (let i = next.length - 1; i > 0; i -= 1) {
    const j = Math.floor(draw.uniform() * (i + 1));
    const [a, b] = [next[i], next[j]];
    if (a === undefined || b === undefined) continue;
    next[i] = b;
    next[j] = a;
  }
  return next;
}
