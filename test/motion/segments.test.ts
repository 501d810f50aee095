import { describe, expect, test } from 'vitest';
import { BUILDS, bodyOf, FRACTIONS, MASSES } from '../../shared-types/motion/body.ts';
import { makeRep } from '../../shared-types/motion/rep.ts';
import { specify } from '../../shared-types/motion/specification.ts';
import { segments } from './examine.ts';

/**
 * Winter DA (2009), Biomechanics and Motor Control of Human Movement, 4th ed., Figure 4.1, after Drillis R & Contini R
 * (1966), Body Segment Parameters, Report 1166-03: fractions of standing height, as printed.
 */
const PUBLISHED = {
  ankleHeight: 0.039,
  kneeHeight: 0.285,
  hipHeight: 0.53,
  shoulderHeight: 0.818,
  chinHeight: 0.87,
  eyeHeight: 0.936,
  headLength: 0.13,
  shoulderHalfWidth: 0.129,
  hipHalfWidth: 0.191 / 2,
  upperArm: 0.186,
  forearm: 0.146,
  hand: 0.108,
  thigh: 0.245,
  shank: 0.246,
  footLength: 0.152,
  footBreadth: 0.055,
};

describe('segment lengths', () => {
  test('the fractions are the published ones', () => {
    expect(FRACTIONS).toEqual(PUBLISHED);
  });

  test('thigh and shank follow from the printed heights', () => {
    expect(FRACTIONS.hipHeight - FRACTIONS.kneeHeight).toBeCloseTo(FRACTIONS.thigh, 9);
    expect(FRACTIONS.kneeHeight - FRACTIONS.ankleHeight).toBeCloseTo(FRACTIONS.shank, 9);
  });

  test.each([1.5, 1.75, 1.8, 2.0])('a figure of %f m has them', (stature) => {
    const pose = makeRep(specify({ movement: 'jump-burpee', athlete: { stature, build: 'medium' } })).at(0);
    const found = segments(pose);
    for (const side of [0, 1]) {
      expect(found[`thigh${side}`]).toBeCloseTo(0.245 * stature, 9);
      expect(found[`shank${side}`]).toBeCloseTo(0.246 * stature, 9);
      expect(found[`upperArm${side}`]).toBeCloseTo(0.186 * stature, 9);
      expect(found[`forearm${side}`]).toBeCloseTo(0.146 * stature, 9);
      expect(found[`hand${side}`]).toBeCloseTo(0.108 * stature, 9);
      expect(found[`shoulder${side}`]).toBeCloseTo(0.129 * stature, 9);
      expect((found[`sole${side}`] ?? 0) + (found[`toes${side}`] ?? 0)).toBeCloseTo(0.152 * stature, 9);
    }
    expect((found.lowerTrunk ?? 0) + (found.upperTrunk ?? 0)).toBeCloseTo((0.818 - 0.53) * stature, 9);
    expect(found.neck).toBeCloseTo((0.87 - 0.818) * stature, 9);
    expect(found.head).toBeCloseTo(0.13 * stature, 9);
  });

  test('the published heights come out for 1.80 m (printed: knee 0.513, hip 0.954, shoulder 1.472)', () => {
    expect(FRACTIONS.kneeHeight * 1.8).toBeCloseTo(0.513, 3);
    expect(FRACTIONS.hipHeight * 1.8).toBeCloseTo(0.954, 3);
    expect(FRACTIONS.shoulderHeight * 1.8).toBeCloseTo(1.472, 3);
  });

  test('builds differ in flesh, never in length', () => {
    const [slim, medium, sturdy] = BUILDS.map((build) => bodyOf({ stature: 1.75, build }));
    expect(slim?.thigh).toBe(sturdy?.thigh);
    expect(slim?.upperArm).toBe(medium?.upperArm);
    expect(slim?.flesh.thigh).toBeLessThan(medium?.flesh.thigh ?? 0);
    expect(medium?.flesh.thigh).toBeLessThan(sturdy?.flesh.thigh ?? 0);
  });
});

describe('masses', () => {
  // Winter (2005), Table 4.1, after Dempster (1955).
  test('the shares add up to the whole body', () => {
    const limbs = [MASSES.hand, MASSES.forearm, MASSES.upperArm, MASSES.foot, MASSES.shank, MASSES.thigh];
    const sum = limbs.reduce((total, part) => total + 2 * part.share, MASSES.headAndNeck.share + MASSES.trunk.share);
    expect(sum).toBeCloseTo(1, 9);
  });

  test('standing, the centre of mass lies at 53 to 58 % of stature (textbook range, from memory)', () => {
    const pose = makeRep(specify({ movement: 'jump-burpee' })).at(0);
    expect(pose.centreOfMass[1] / 1.75).toBeGreaterThan(0.53);
    expect(pose.centreOfMass[1] / 1.75).toBeLessThan(0.58);
  });
});
