import { describe, expect, test } from 'vitest';
import { comparisonsOf, printedTolerance } from './compare-published.ts';
import { ourValues, unanswered, unansweredFigures } from './our-values.ts';
import { publishedEntries } from './published-entry.ts';

describe('published worked examples', () => {
  for (const entry of publishedEntries.filter(({ id }) => id in ourValues)) {
    test(`${entry.id}: ${entry.source}, ${entry.page_or_table} (${entry.published_status})`, () => {
      const comparisons = comparisonsOf(entry);
      expect(comparisons.length).toBeGreaterThan(0);
      for (const { figure, against, reference, ours, allowed } of comparisons) {
        expect(Math.abs(ours - reference), `${figure} (${against} ${reference}, ours ${ours})`).toBeLessThanOrEqual(
          allowed,
        );
      }
    });
  }

  test('no example is passed over in silence', () => {
    const silent = publishedEntries.filter(({ id }) => !(id in ourValues) && !(id in unanswered)).map(({ id }) => id);
    expect(silent).toEqual([]);
    const known = new Set(publishedEntries.map(({ id }) => id));
    const named = [...Object.keys(ourValues), ...Object.keys(unanswered)];
    expect(named.filter((id) => !known.has(id))).toEqual([]);
    const figures = new Set(
      publishedEntries.flatMap(({ id, published }) => Object.keys(published).map((key) => `${id}.${key}`)),
    );
    expect(Object.keys(unansweredFigures).filter((figure) => !figures.has(figure))).toEqual([]);
  });

  test('a slip of what is quoted is never a target', () => {
    const misprints = publishedEntries.filter(({ agrees }) => agrees === false);
    expect(misprints.map(({ id }) => id)).toEqual(['4-indredavik-mh']);
    for (const { id } of misprints) expect(id in ourValues).toBe(false);
  });

  test('the printed precision is half a unit of the last digit', () => {
    expect(printedTolerance('0.2553')).toBeCloseTo(0.00005, 12);
    expect(printedTolerance('4.115e-05')).toBeCloseTo(5e-9, 15);
    expect(printedTolerance('6065')).toBe(0.5);
  });
});
