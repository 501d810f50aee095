import { BUILDS } from '../../shared-types/motion/body.ts';
import { type Random, random } from '../../shared-types/motion/random.ts';
import { marginRange } from '../../shared-types/motion/rep.ts';
import {
  FAULTS,
  type FaultCode,
  type MovementName,
  type RepSpecification,
  specify,
  USUAL_NUMBERS,
} from '../../shared-types/motion/specification.ts';

/**
 * How many random specifications a test draws for a movement. MOTION_SPECIMENS=2000 makes the long run, some minutes.
 */
export const COUNT = Number(process.env.MOTION_SPECIMENS ?? 60);

/** A random rep over the whole range of bodies, sheets and margins; `faulty` of the codes get a random margin. */
export function specimen(movement: MovementName, seed: number, faulty = 0.5): RepSpecification {
  const draw = random(seed * 7919 + 13);
  const stature = draw.between(1.5, 2.0);
  const sheet = {
    ...USUAL_NUMBERS,
    lineHeight: pickOf(draw, [2.7, 2.75, 3, 3.05]),
    targetWidth: draw.between(0.3, 0.6),
    ballMass: pickOf(draw, [4, 6, 9]),
    ballRadius: draw.between(0.15, 0.18),
    handsAllowance: draw.between(15, 40),
    creepAllowance: draw.between(0, 12),
    togetherAllowance: draw.between(20, 90),
    boxHeight: pickOf(draw, [0.5, 0.6, 0.6, 0.75]) * Math.min(1, stature / 1.62),
  };
  const spec = specify({
    movement,
    sheet,
    athlete: { stature, build: pickOf(draw, BUILDS) },
    cadence: draw.between(8, 32),
    fatigue: draw.uniform() < 0.5 ? 0 : draw.uniform(),
    variation: draw.uniform() < 0.2 ? 0 : 1,
    seed: Math.floor(draw.between(0, 1e9)),
    styleSeed: Math.floor(draw.between(0, 1e9)),
    first: draw.uniform() < 0.8,
  });
  const margins: Partial<Record<FaultCode, number>> = {};
  for (const code of FAULTS[movement]) {
    const asked = draw.uniform() < faulty;
    const range = marginRange(spec, code);
    const margin = draw.between(range.low, range.high);
    if (asked) margins[code] = margin;
  }
  return { ...spec, margins };
}

function pickOf<T>(draw: Random, items: readonly T[]): T {
  return items[Math.floor(draw.uniform() * items.length)] as T;
}
