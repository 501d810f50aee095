import { boxJumpOver } from './box-jump-over.ts';
import { jumpBurpee } from './jump-burpee.ts';
import { type Motion, motionOf } from './motion.ts';
import { type Built, type Knobs, type Memory, UNASKED } from './movement.ts';
import { type Random, random } from './random.ts';
import { FAULTS, type FaultCode, type RepSpecification } from './specification.ts';
import { type Truth, truth } from './truth.ts';
import { clamp } from './vector.ts';
import { wallThrow } from './wall-throw.ts';

const BUILDERS = { 'wall-throw': wallThrow, 'jump-burpee': jumpBurpee, 'box-jump-over': boxJumpOver } as const;

export interface Range {
  readonly low: number;
  readonly high: number;
}

/**
 * The margins of a fault that a body can show under a sheet: a request outside is brought to the nearer end. The high
 * end of a contact (chest, both feet on the box, ball at rest) or of an allowance is where it is met in full.
 */
export function marginRange(spec: RepSpecification, code: FaultCode): Range {
  const { sheet, athlete } = spec;
  const H = athlete.stature;
  const boxed = spec.movement === 'box-jump-over';
  switch (code) {
    case 'depth':
      return { low: -25, high: 7.5 };
    case 'line':
      return { low: Math.max(-60, 100 * (1.18 * H - sheet.lineHeight)), high: 40 };
    case 'aim':
      return { low: Math.max(-25, 50 * sheet.targetWidth - 42), high: 50 * sheet.targetWidth };
    case 'stand':
      return { low: sheet.tallAllowance - 60, high: sheet.tallAllowance - 4 };
    case 'bounce':
      return { low: -50, high: 1 };
    case 'chest':
      return { low: -25, high: 0.8 };
    case 'hands':
      return { low: sheet.handsAllowance - 34 * H, high: sheet.handsAllowance - 6 };
    case 'over':
      return { low: -10, high: 25 };
    case 'off':
      return { low: sheet.togetherAllowance - 250, high: sheet.togetherAllowance };
    case 'on':
      return boxed ? { low: -12, high: 1 } : { low: sheet.togetherAllowance - 250, high: sheet.togetherAllowance };
    case 'creep':
      return { low: sheet.creepAllowance - 40, high: sheet.creepAllowance };
    case 'start':
      return { low: -40, high: 30 };
    case 'tall':
      return { low: sheet.tallAllowance - 60, high: sheet.tallAllowance - 4 };
    case 'touch':
      return { low: -10, high: 5 };
  }
}

/** Margins of a clean rep: met with the room that a practised athlete leaves. */
function usualMargin(spec: RepSpecification, code: FaultCode, vary: Random): number {
  const { sheet } = spec;
  const size = spec.variation;
  switch (code) {
    case 'depth':
      return clamp(4.5 + 1.2 * size * vary.normal(), 2, 6.4);
    case 'line':
      return 12 + 3.5 * size * vary.normal();
    case 'aim':
      return 50 * sheet.targetWidth - 4 * size * Math.abs(vary.normal());
    case 'stand':
    case 'tall':
      return sheet.tallAllowance - 6 - 1.2 * size * Math.abs(vary.normal());
    case 'bounce':
    case 'touch':
      return UNASKED;
    case 'chest':
      return 0.8;
    case 'hands':
      return sheet.handsAllowance - clamp(15 + 3 * size * vary.normal(), 7, 0.8 * sheet.handsAllowance);
    case 'over':
      return 7 + 2 * size * vary.normal();
    case 'off':
      return sheet.togetherAllowance - Math.min(0.5 * sheet.togetherAllowance, 8 * size * Math.abs(vary.normal()));
    case 'on':
      return spec.movement === 'box-jump-over'
        ? 1
        : sheet.togetherAllowance - Math.min(0.5 * sheet.togetherAllowance, 8 * size * Math.abs(vary.normal()));
    case 'creep':
      return sheet.creepAllowance;
    case 'start':
      return 4 + 1.5 * size * Math.abs(vary.normal());
  }
}

/**
 * The margins a rep is made for: those asked, brought into range, and usual ones for the rest.
 * @internal exported for the tests of margins asked and measured
 */
export function plannedMargins(spec: RepSpecification): Knobs {
  const vary = random(spec.seed ^ 0x5bd1e995);
  const planned = {} as Record<FaultCode, number>;
  for (const code of FAULTS[spec.movement]) {
    const usual = usualMargin(spec, code, vary);
    const asked = spec.margins[code];
    const range = marginRange(spec, code);
    planned[code] = asked === undefined ? usual : clamp(asked, range.low, range.high);
    // A hand touches or it does not: nothing is shown nearer to the edge than 3 mm.
    if (code === 'touch' && Math.abs(planned[code]) < 0.3) planned[code] = planned[code] < 0 ? -0.3 : 0.3;
  }
  // Down with a hand on the box, no leg bends far enough to keep its foot high above it.
  if (spec.movement === 'box-jump-over' && planned.touch < UNASKED) planned.on = Math.max(planned.on, -4);
  return planned;
}

/** How near the measured margins must come to the planned ones before the search for them ends. */
const CLOSE: Readonly<Record<'cm' | 'ms' | 'degrees', number>> = { cm: 0.05, ms: 0.5, degrees: 0.15 };

/**
 * Makes one rep. The motion is built, measured, and built again until what is measured is what was asked.
 * @param spec what to show
 * @param next the following rep of a stream: this one ends as that one begins
 */
export function makeRep(spec: RepSpecification, next: RepSpecification | null = null): Motion {
  const planned = plannedMargins(spec);
  const after = next === null ? { ...planned, stand: spec.sheet.tallAllowance - 6 } : plannedMargins(next);
  let knobs: Knobs = planned;
  const memory: Memory = {};
  const last = new Map<FaultCode, { readonly knob: number; readonly size: number }>();
  let best: { motion: Motion; error: number } | null = null;
  for (let round = 0; round < 14; round += 1) {
    const built: Built = BUILDERS[spec.movement](spec, knobs, after, memory);
    const motion = motionOf(spec, built.choreography, built.scene);
    const found = truth(motion, spec.sheet);
    const errors = errorsOf(found, planned);
    const error = Math.max(0, ...errors.map(([, size, close]) => Math.abs(size) / close));
    if (best === null || error < best.error) best = { motion, error };
    if (error <= 1) break;
    const turned: Record<FaultCode, number> = { ...knobs };
    for (const [code, size] of errors) {
      // A secant step: how much the margin answered to the last turn of its knob.
      const before = last.get(code);
      const moved = before === undefined ? 0 : knobs[code] - before.knob;
      const slope = before === undefined || Math.abs(moved) < 1e-6 ? 1 : (size - before.size) / moved;
      last.set(code, { knob: knobs[code], size });
      turned[code] -= size / clamp(slope, 0.4, 2.5);
    }
    knobs = turned;
  }
  if (best === null) throw new Error('no motion was built');
  return best.motion;
}

function errorsOf(found: Truth, planned: Knobs): readonly (readonly [FaultCode, number, number])[] {
  return (Object.keys(found) as FaultCode[]).flatMap((code) => {
    const entry = found[code];
    if (entry === undefined || entry.margin === null || planned[code] >= UNASKED) return [];
    return [[code, entry.margin - planned[code], CLOSE[entry.unit]] as const];
  });
}
