import { describe, expect, test } from 'vitest';
import {
  agreementOfTwo,
  alphaOfNight,
  exchanged,
  type JudgedAttempt,
  type JudgedCall,
  judgedAttempts,
} from '../../main/analysis/agreement/judges-together.ts';
import { foldSet } from '../../shared-types/log/fold.ts';
import { list, number, publishedEntries } from '../outside/published-entry.ts';
import { logOf } from './small-night.ts';

const set = '00000000-0000-4000-8000-00000000abcd';
const call = (noRep: boolean, at = 0, faults: string[] = []): JudgedCall => ({
  ref: { pad: 'p', seq: 1 },
  at,
  verdict: noRep ? 'no-rep' : 'counted',
  faults,
});

function attempts(both: number, firstOnly: number, secondOnly: number, neither: number): JudgedAttempt[] {
  const many = (times: number, one: boolean, other: boolean) =>
    Array.from({ length: times }, () => ({ first: call(one), second: call(other, 200) }));
  return [
    ...many(both, true, true),
    ...many(firstOnly, true, false),
    ...many(secondOnly, false, true),
    ...many(neither, false, false),
  ];
}

describe('two judges together', () => {
  test('the whole way from logs to figures, by hand', () => {
    const first = foldSet(
      set,
      logOf(
        set,
        'a',
        '..D.L..',
        [1, 3, 5, 7, 9, 11, 13].map((s) => s * 1_000),
        14_000,
      ),
    );
    const second = foldSet(
      set,
      logOf(
        set,
        'b',
        '..DDD.',
        [1, 3, 5, 7, 9, 11].map((s) => s * 1_000 + 300),
        14_000,
      ),
    );
    const result = agreementOfTwo(judgedAttempts(first, second));
    expect(result).toMatchObject({ pairs: 6, missedByFirst: 0, missedBySecond: 1 });
    expect(result).toMatchObject({ bothNoRep: 2, firstOnly: 0, secondOnly: 1, neither: 3 });
    expect(result.sameReason).toEqual({ count: 1, of: 2 });
    expect(result.lag?.median).toBeCloseTo(0.3, 10);
    // One differing pair: exact binomial 1, mid-p 1 - 1/2.
    expect(result.mcNemarP).toBeCloseTo(0.5, 10);
  });

  test('figures follow the published tables from which the methods were checked', () => {
    // Kappa's paradox, from published-values.json: the source stands there with each entry.
    const entries = publishedEntries.filter(({ id }) => id.startsWith('5-paradox'));
    expect(entries.length).toBeGreaterThan(0);
    for (const entry of entries) {
      const [a = 0, b = 0, c = 0, d = 0] = ['a', 'b', 'c', 'd'].map((key) => number(entry.input, key));
      const { kappa, ac1 } = agreementOfTwo(attempts(a, b, c, d));
      const recomputed = Object.fromEntries(Object.entries(entry.recomputed ?? {}));
      expect(kappa.ok && kappa.value.estimate).toBeCloseTo(number(recomputed, 'kappa'), 8);
      expect(ac1.ok && ac1.value.estimate).toBeCloseTo(number(recomputed, 'ac1'), 8);
    }
    // McNemar on approval ratings (Agresti 1990, p. 350; R 4.2.2's own example), mid-p recomputed in R.
    const approval = publishedEntries.find(({ id }) => id === '3-mcnemar-approval');
    const [both = 0, one = 0, two = 0, none = 0] = ['n11', 'n12', 'n21', 'n22'].map((key) =>
      number(approval?.input ?? {}, key),
    );
    const recomputed = Object.fromEntries(Object.entries(approval?.recomputed ?? {}));
    const ratio = (agreementOfTwo(attempts(both, one, two, none)).mcNemarP ?? 0) / number(recomputed, 'p_mid');
    expect(ratio).toBeCloseTo(1, 6);
    // Krippendorff's two observers and ten units (2011, section A): 0.095, printed value from memory.
    const binary = publishedEntries.find(({ id }) => id === '7-binary');
    const owen = list(binary?.input ?? {}, 'Owen');
    const units = list(binary?.input ?? {}, 'Meg').map((meg, unit) => ({
      first: call(meg === 1),
      second: call(owen[unit] === 1),
    }));
    const { verdicts } = alphaOfNight(units);
    expect(verdicts.ok && verdicts.value.alpha).toBeCloseTo(0.095, 3);
  });

  test('exchanging the judges turns who is stricter round and leaves agreement alone', () => {
    const given = attempts(4, 6, 1, 50);
    const one = agreementOfTwo(given);
    const other = agreementOfTwo(exchanged(given));
    expect(one.stricter.ok && one.stricter.value.estimate).toBeCloseTo(5 / 61, 10);
    expect(other.stricter.ok && other.stricter.value.estimate).toBeCloseTo(-5 / 61, 10);
    expect(other.agreed).toEqual(one.agreed);
    expect(other.mcNemarP).toBe(one.mcNemarP);
    expect(other.lag?.median).toBeCloseTo(-0.2, 10);
  });

  test('a missed call lowers alpha only where misses count', () => {
    const given = attempts(5, 0, 0, 20);
    const missed = [...given, { first: call(false), second: null }];
    const whole = alphaOfNight(missed);
    expect(whole.verdicts.ok && whole.verdicts.value.alpha).toBe(1);
    expect(whole.withMisses.ok && whole.withMisses.value.alpha).toBeLessThan(1);
    const alike = alphaOfNight(attempts(0, 0, 0, 9));
    expect(alike.verdicts.ok).toBe(false);
    expect(agreementOfTwo([])).toMatchObject({ pairs: 0, lag: null, mcNemarP: null });
  });
});
