import type { FaultCode, MovementName } from '../motion/specification.ts';
import type { Place } from './drill.ts';

type Spot = readonly [bearing: number, distance: number, height: number];
type Spots = Partial<Readonly<Record<FaultCode, { readonly advised: Spot; readonly poor: Spot }>>>;

/**
 * The sheets' "where to stand" as numbers, and for each fault a place from which it is hard to see. Our own reading of common
 * practice, no source. Bearings in degrees (0 ahead, 90 the athlete's left, 180 behind), distance and eye height in metres.
 */
const SPOTS: Readonly<Record<MovementName, Spots>> = {
  'wall-throw': {
    depth: { advised: [90, 2.6, 0.6], poor: [170, 3, 1.7] },
    line: { advised: [100, 2.6, 1.8], poor: [70, 1.2, 1.6] },
    aim: { advised: [172, 3, 1.7], poor: [90, 2.6, 1.7] },
    stand: { advised: [90, 2.6, 1.1], poor: [178, 3, 1.7] },
    bounce: { advised: [90, 2.6, 1.5], poor: [178, 3, 1.7] },
  },
  'jump-burpee': {
    chest: { advised: [85, 2.2, 0.4], poor: [175, 3.5, 1.7] },
    hands: { advised: [90, 2.2, 1.2], poor: [0, 3.5, 1.7] },
    over: { advised: [85, 2.2, 1.2], poor: [0, 3.5, 1.7] },
    off: { advised: [75, 2.6, 1.2], poor: [178, 3.5, 1.7] },
    on: { advised: [60, 3, 1.2], poor: [178, 3.5, 1.7] },
    creep: { advised: [90, 2.2, 1.4], poor: [0, 3.5, 1.7] },
    start: { advised: [90, 2.2, 1.5], poor: [178, 3.5, 1.7] },
  },
  'box-jump-over': {
    off: { advised: [105, 2.6, 1.2], poor: [0, 3.5, 1.7] },
    on: { advised: [90, 2.4, 0.8], poor: [178, 3.5, 1.7] },
    tall: { advised: [90, 2.8, 1.4], poor: [0, 3.5, 1.7] },
    touch: { advised: [90, 2.2, 1.5], poor: [178, 3.5, 1.7] },
  },
};

/** Where the judge sees most faults of the movement at once: at the athlete's side. */
const USUAL: Readonly<Record<MovementName, Spot>> = {
  'wall-throw': [95, 2.8, 1.2],
  'jump-burpee': [85, 2.6, 1.2],
  'box-jump-over': [90, 2.8, 1.2],
};

const asPlace = (name: Place['name'], [bearing, distance, height]: Spot): Place => ({
  name,
  bearing,
  distance,
  height,
});

/** The advised place for one fault, or for the movement as a whole when `fault` is null. */
export function advisedPlace(movement: MovementName, fault: FaultCode | null): Place {
  return asPlace('advised', (fault === null ? undefined : SPOTS[movement][fault]?.advised) ?? USUAL[movement]);
}

/** A place from which the fault is hard to see. */
export function poorPlace(movement: MovementName, fault: FaultCode): Place {
  return asPlace('poor', SPOTS[movement][fault]?.poor ?? [178, 3.5, 1.7]);
}

const NEAR_DEGREES = 20;

/** A place the judge walked to, under the name that its scores belong to: the advised one's when it is as good as that. */
export function walkedPlace(movement: MovementName, fault: FaultCode | null, spot: Omit<Place, 'name'>): Place {
  const advised = advisedPlace(movement, fault);
  // Left and right side show the same.
  const turn = Math.abs(Math.abs(spot.bearing) - Math.abs(advised.bearing));
  return { name: turn <= NEAR_DEGREES ? 'advised' : 'own', ...spot };
}
