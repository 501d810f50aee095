import { describe, expect, it } from 'vitest';
import {
  boundsFor,
  type ReadyFigures,
  readyCriteria,
  readyFor,
  usualCriteria,
} from '../../shared-types/drills/ready.ts';

const about = (value: number, half = 0.5) => ({ value, low: value - half, high: value + half });
const good: ReadyFigures = {
  trials: 60,
  dPrime: about(2.5),
  criterion: about(0.1, 0.2),
  strictness: about(-1),
  precision: about(3),
};
const bounds = boundsFor(usualCriteria, 'wall-throw', 'depth', 'cm');

describe('ready to judge', () => {
  it('keeps to every bound that is asked', () => {
    expect(readyCriteria.parse(usualCriteria)).toEqual(usualCriteria);
    expect(readyFor(good, bounds, usualCriteria)).toEqual({ kind: 'ready' });
    expect(readyFor({ ...good, strictness: about(-5) }, bounds, usualCriteria)).toEqual({
      kind: 'not-ready',
      misses: ['strictness'],
    });
    expect(readyFor({ ...good, dPrime: about(1), precision: about(8) }, bounds, usualCriteria)).toEqual({
      kind: 'not-ready',
      misses: ['d-prime', 'precision'],
    });
  });

  it('does not say of too few calls, nor of what cannot be told', () => {
    expect(readyFor({ ...good, trials: 20 }, bounds, usualCriteria)).toEqual({
      kind: 'too-few',
      trials: 20,
      needed: 10,
    });
    expect(readyFor({ ...good, precision: null }, bounds, usualCriteria)).toEqual({
      kind: 'unclear',
      open: ['precision'],
    });
  });

  it('asks for the whole interval where the gym wants to be sure', () => {
    const sure = { ...usualCriteria, by: 'interval' as const };
    expect(readyFor(good, bounds, sure)).toEqual({ kind: 'ready' });
    expect(readyFor({ ...good, strictness: about(-3.8) }, bounds, sure)).toEqual({
      kind: 'unclear',
      open: ['strictness'],
    });
    expect(readyFor({ ...good, strictness: about(-4.8) }, bounds, sure)).toEqual({
      kind: 'not-ready',
      misses: ['strictness'],
    });
  });

  it('takes a fault’s own bounds, or leaves it out', () => {
    const own = { leastDPrime: null, mostCriterion: null, mostStrictness: 0.5, mostPrecision: null };
    const criteria = {
      ...usualCriteria,
      faults: [
        { sheet: 'wall-throw', code: 'depth', asked: true, bounds: own },
        { sheet: 'wall-throw', code: 'aim', asked: false, bounds: own },
      ],
    };
    const depth = boundsFor(criteria, 'wall-throw', 'depth', 'cm');
    expect(readyFor(good, depth, criteria)).toEqual({ kind: 'not-ready', misses: ['strictness'] });
    expect(readyFor(good, boundsFor(criteria, 'wall-throw', 'aim', 'cm'), criteria)).toEqual({ kind: 'not-asked' });
    expect(boundsFor(criteria, 'lunge', 'depth', 'cm')).toEqual(usualCriteria.units.cm);
  });
});
