import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { en } from '../../renderer/parts/words/en.ts';
import { formatsFor } from '../../renderer/parts/words/formats.ts';

const british = formatsFor('en-GB');
const german = formatsFor('de-DE');

describe('a clock', () => {
  test.each([
    [0, '0:00.0'],
    [151_400, '2:31.4'],
    [59_999, '0:59.9'],
    [60_000, '1:00.0'],
    [3_599_999, '59:59.9'],
    [3_600_000, '1:00:00.0'],
    [-2_500, '−0:02.5'],
    [Number.NaN, '–'],
  ])('%d ms is %s', (milliseconds, text) => {
    expect(british.duration(milliseconds)).toBe(text);
  });

  test('takes the decimals asked for and the locale’s decimal sign', () => {
    expect(british.duration(151_437, 0)).toBe('2:31');
    expect(british.duration(151_437, 3)).toBe('2:31.437');
    expect(german.duration(151_437, 2)).toBe('2:31,43');
  });

  test('reads back to the tenth it was cut to', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 86_400_000 }), (milliseconds) => {
        const parts = british.duration(milliseconds).split(':').map(Number);
        const seconds = parts.reduce((sum, part) => sum * 60 + part, 0);
        expect(Math.round(seconds * 10)).toBe(Math.floor(milliseconds / 100));
      }),
    );
  });
});

test('figures and their units stay on one line', () => {
  expect(british.seconds(12.84)).toBe('12.8\u00a0s');
  expect(british.metres(2.7)).toBe('2.70\u00a0m');
  expect(british.kilograms(6)).toBe('6\u00a0kg');
  expect(british.percent(0.041, 1)).toBe('4.1\u00a0%');
  expect(german.seconds(12.84)).toBe('12,8\u00a0s');
});

test('a figure that is none is a dash', () => {
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(british.number(value)).toBe('–');
    expect(british.plain(value)).toBe('–');
    expect(british.seconds(value)).toBe('–\u00a0s');
  }
});

test('plurals follow the language', () => {
  const forms = { one: 'set', other: 'sets' };
  expect([0, 1, 2].map((count) => british.plural(count, forms))).toEqual(['sets', 'set', 'sets']);
  expect(formatsFor('pl').plural(3, { one: 'a', few: 'b', other: 'c' })).toBe('b');
});

/** Every text of the catalogue that stands as it is, with its place. */
function plainTexts(value: unknown, place: string): (readonly [string, string])[] {
  if (typeof value === 'string') return [[place, value]];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([name, inner]) => plainTexts(inner, `${place}.${name}`));
}

test('no text of the catalogue is left empty or has stray spaces', () => {
  const texts = plainTexts(en(british), 'en');
  expect(texts.length).toBeGreaterThan(200);
  // What measures nothing and costs nothing has no label, and an athlete's name needs no word before it.
  const bare = new Set([
    'en.standards.form.usualAmount.open',
    'en.standards.form.consequenceAmount.repeat',
    'en.night.form.amounts.open',
    'en.night.plan.partHeads.athlete',
  ]);
  expect(texts.filter(([place, text]) => !bare.has(place) && (text === '' || text !== text.trim()))).toEqual([]);
});
