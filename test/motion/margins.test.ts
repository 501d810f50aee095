import { describe, expect, test } from 'vitest';
import { makeRep, marginRange, plannedMargins } from '../../shared-types/motion/rep.ts';
import {
  FAULTS,
  type FaultCode,
  type MarginUnit,
  MOVEMENTS,
  specify,
  unitOf,
} from '../../shared-types/motion/specification.ts';
import { truth, verdict } from '../../shared-types/motion/truth.ts';
import { COUNT, specimen } from './specimens.ts';

/** How near the measured margin comes to the requested one. */
const CLOSE: Readonly<Record<MarginUnit, number>> = { cm: 0.2, ms: 2, degrees: 0.5 };
/** From gross to just visible, as sizes of a fault. */
const SIZES: Readonly<Record<MarginUnit, readonly number[]>> = {
  cm: [0.5, 2, 6, 9.5],
  ms: [5, 25, 80, 150],
  degrees: [1, 5, 15, 35],
};

describe.each(MOVEMENTS)('%s', (movement) => {
  const codes: readonly FaultCode[] = FAULTS[movement];

  test('a clean rep meets every standard and is counted', () => {
    for (let seed = 0; seed < COUNT; seed += 1) {
      const motion = makeRep({ ...specimen(movement, seed, 0), first: true });
      const found = truth(motion, motion.specification.sheet);
      expect(verdict(found), `seed ${seed}`).toEqual({ counted: true, faults: [] });
    }
  });

  test('whatever is asked of all faults together is what is measured', () => {
    for (let seed = 0; seed < COUNT; seed += 1) {
      const spec = specimen(movement, seed, 0.6);
      const found = truth(makeRep(spec), spec.sheet);
      const planned = plannedMargins(spec);
      for (const code of codes) {
        const entry = found[code];
        if (spec.margins[code] === undefined || entry === undefined || entry.margin === null) continue;
        expect(Math.abs(entry.margin - planned[code]), `seed ${seed}: ${code}`).toBeLessThan(CLOSE[entry.unit]);
        expect(entry.met, `seed ${seed}: ${code}`).toBe(entry.margin >= 0);
      }
    }
  });

  describe.each(codes)('%s', (code) => {
    const unit = unitOf(movement, code);

    test('alone, from just visible to gross: this fault and no other', () => {
      for (const size of SIZES[unit]) {
        const spec = specify({ movement, margins: { [code]: -size }, seed: size * 31 + 5 });
        const range = marginRange(spec, code);
        if (-size < range.low) continue;
        const found = truth(makeRep(spec), spec.sheet);
        expect(verdict(found), `${size} ${unit}`).toEqual({ counted: false, faults: [code] });
        expect(Math.abs((found[code]?.margin ?? 0) + size), `${size} ${unit}`).toBeLessThan(CLOSE[unit]);
      }
    });

    test('met by a hair is met', () => {
      const spec = specify({ movement, margins: { [code]: 0.6 }, seed: 77 });
      const found = truth(makeRep(spec), spec.sheet);
      expect(verdict(found).counted).toBe(true);
      expect(Math.abs((found[code]?.margin ?? 0) - 0.6)).toBeLessThan(CLOSE[unit]);
    });

    test('with every other fault of the sheet', () => {
      for (const other of codes) {
        if (other === code) continue;
        const spec = specify({ movement, margins: { [code]: -2.5, [other]: -3 }, seed: 11 });
        const found = truth(makeRep(spec), spec.sheet);
        expect([...verdict(found).faults].sort(), other).toEqual([code, other].sort());
        expect(Math.abs((found[code]?.margin ?? 0) + 2.5), other).toBeLessThan(CLOSE[unit]);
        expect(Math.abs((found[other]?.margin ?? 0) + 3), other).toBeLessThan(CLOSE[unitOf(movement, other)]);
      }
    });
  });
});

describe('the sheet decides', () => {
  test('a tolerance gives the benefit of the doubt', () => {
    const spec = specify({ movement: 'wall-throw', margins: { depth: -1.5 } });
    const motion = makeRep(spec);
    expect(verdict(truth(motion, spec.sheet)).faults).toEqual(['depth']);
    expect(verdict(truth(motion, { ...spec.sheet, tolerance: { depth: 2 } })).counted).toBe(true);
  });

  test('the same throw is short of a higher line by the difference', () => {
    const spec = specify({ movement: 'wall-throw', margins: { line: 8 } });
    const motion = makeRep(spec);
    const low = truth(motion, spec.sheet).line?.margin ?? 0;
    const high = truth(motion, { ...spec.sheet, lineHeight: spec.sheet.lineHeight + 0.15 }).line;
    expect((high?.margin ?? 0) - low).toBeCloseTo(-15, 6);
    expect(high?.met).toBe(false);
  });

  test('hips are judged on the box only where the sheet asks for it', () => {
    const spec = specify({ movement: 'box-jump-over', margins: { tall: -30 } });
    const found = truth(makeRep(spec), { ...spec.sheet, tallAsked: false });
    expect(found.tall).toEqual({ margin: null, unit: 'degrees', met: true });
  });

  test('without a dropped ball there is nothing to pick up; without a start line none to cross', () => {
    const thrown = specify({ movement: 'wall-throw' });
    expect(truth(makeRep(thrown), thrown.sheet).bounce?.margin).toBeNull();
    const later = specify({ movement: 'jump-burpee', first: false });
    expect(truth(makeRep(later), later.sheet).start?.margin).toBeNull();
  });
});

describe('determinism', () => {
  test('the same specification gives the same motion, another seed another', () => {
    for (const movement of MOVEMENTS) {
      const spec = specimen(movement, 3);
      const [one, two] = [makeRep(spec), makeRep(spec)];
      const other = makeRep({ ...spec, seed: spec.seed + 1 });
      const at = (share: number): string => JSON.stringify(one.at(share * one.duration));
      for (const share of [0, 0.2, 0.5, 0.7, 1]) {
        expect(JSON.stringify(two.at(share * two.duration))).toBe(at(share));
      }
      expect(JSON.stringify(other.at(0.5 * other.duration))).not.toBe(at(0.5));
    }
  });

  test('without variation two seeds differ only by what is asked', () => {
    const spec = specify({ movement: 'box-jump-over', variation: 0, seed: 2, styleSeed: 9 });
    const again = makeRep({ ...spec, seed: 4 });
    expect(again.duration).toBeCloseTo(makeRep(spec).duration, 6);
  });
});
