import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findOptions } from '../../renderer/parts/controls/find-options.ts';
import { readNumber } from '../../renderer/parts/controls/read-number.ts';
import { withTag } from '../../renderer/parts/controls/tag-input.tsx';
import { failureOf, storagePath } from '../../renderer/parts/desk/failure.ts';
import { newId } from '../../renderer/parts/desk/new-id.ts';
import { stepTo } from '../../renderer/parts/figure/use-walk.ts';
import { lookOf } from '../../renderer/parts/shell/theme.ts';

const people = [
  { id: '1', label: 'Ana Brandt' },
  { id: '2', label: 'Bear', detail: 'Björn Ó Súilleabháin' },
  { id: '3', label: 'Zoë Anand' },
  { id: '4', label: '(x*.[' },
];

describe('finding people', () => {
  const find = (text: string): string[] => findOptions(people, text).map((option) => option.id);

  test('without accents, in any case, in every word, in the second line too', () => {
    expect(find('zoe')).toEqual(['3']);
    expect(find('SUILLEABHAIN bjorn')).toEqual(['2']);
    expect(find('ana')).toEqual(['1', '3']);
  });

  test('those that begin with the text come first', () => {
    expect(
      findOptions(
        [
          { id: 'b', label: 'Joan' },
          { id: 'a', label: 'Ana' },
        ],
        'an',
      ).map(({ id }) => id),
    ).toEqual(['a', 'b']);
  });

  test('an empty text finds all, a foreign one none, and signs are only signs', () => {
    expect(find('  ')).toHaveLength(4);
    expect(find('nobody')).toEqual([]);
    expect(find('.[')).toEqual(['4']);
  });

  test('whatever is typed, what is found was there', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(people).toEqual(expect.arrayContaining([...findOptions(people, text)]));
      }),
    );
  });
});

describe('numbers as people write them', () => {
  test.each([
    ['2.70', 2.7],
    ['2,70', 2.7],
    [' 1 000 ', 1_000],
    ['−3', -3],
    ['.5', 0.5],
    ['7.', 7],
    ['', null],
    ['1e3', null],
    ['0x10', null],
    ['1,000.5', null],
    ['six', null],
    ['Infinity', null],
  ])('%j', (text, value) => {
    expect(readNumber(text)).toBe(value);
  });

  test('every decimal reads back', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e6, max: 1e6 }), (value) => {
        expect(readNumber(String(value / 100))).toBe(value / 100);
      }),
    );
  });
});

describe('tags', () => {
  test('trimmed, never twice, never too many, never too long', () => {
    expect(withTag(['heat 2'], ' new shoes ', 12)).toEqual(['heat 2', 'new shoes']);
    for (const text of ['', '   ', 'HEAT 2']) expect(withTag(['heat 2'], text, 12)).toEqual(['heat 2']);
    expect(withTag(['a', 'b'], 'c', 2)).toEqual(['a', 'b']);
    expect(withTag([], 'x'.repeat(99), 12)[0]).toHaveLength(40);
  });
});

test('walking by keys never leaves the marks', () => {
  const keys = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End', 'PageUp', 'PageDown'];
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 300 }),
      fc.array(fc.constantFrom(...keys), { minLength: 1 }),
      (count, pressed) => {
        let place = -1;
        for (const key of pressed) {
          place = stepTo(key, place, count) ?? place;
          expect(place).toBeGreaterThanOrEqual(0);
          expect(place).toBeLessThan(count);
        }
      },
    ),
  );
  expect(stepTo('ArrowRight', -1, 0)).toBeNull();
  expect(stepTo('a', 3, 9)).toBeNull();
});

test('identifiers are UUIDs of version 4 (RFC 9562), each another', () => {
  const ids = Array.from({ length: 200 }, newId);
  for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(new Set(ids).size).toBe(200);
});

test('a failure is the desk’s own refusal, or the link’s', () => {
  const refusal = Object.assign(new Error('The disk is full.'), {
    code: 'STORAGE',
    data: { kind: 'full', path: '/gym.db' },
  });
  expect(failureOf(refusal)).toEqual({ code: 'STORAGE', message: 'The disk is full.', data: refusal.data });
  expect(storagePath(failureOf(refusal))).toBe('/gym.db');
  expect(failureOf(new Error('gone')).code).toBe('LINK');
  expect(failureOf('gone')).toEqual({ code: 'LINK', message: 'gone', data: undefined });
  expect(storagePath(failureOf('gone'))).toBeNull();
});

test('a floor screen is dark unless the user says otherwise', () => {
  expect(lookOf('system', true, false)).toBe('hall');
  expect(lookOf('system', false, false)).toBe('paper');
  expect(lookOf('system', false, true)).toBe('hall');
  expect(lookOf('paper', true, true)).toBe('paper');
  expect(lookOf('hall', false, false)).toBe('hall');
});
