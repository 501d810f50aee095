// Contrast by WCAG 2.2: relative luminance and contrast ratio as its glossary defines them; 4.5 for text (SC 1.4.3),
// 3 for what one must see to understand a drawing or use a control (SC 1.4.11).

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';

const look = path.join(import.meta.dirname, '../../renderer/parts/look');

function luminance(hex: string): number {
  const channels = [1, 3, 5].map((start) => Number.parseInt(hex.slice(start, start + 2), 16) / 255);
  const [red = 0, green = 0, blue = 0] = channels.map((value) =>
    value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05);
}

/** The colours that a block of a style sheet sets, the first block that begins with this selector. */
function colours(file: string, selector: string): ReadonlyMap<string, string> {
  const text = readFileSync(path.join(look, file), 'utf8');
  const start = text.indexOf(selector);
  if (start === -1) throw new Error(`${file} has no ${selector}`);
  const block = text.slice(start, text.indexOf('}', start));
  return new Map(
    [...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map(([, name = '', value = '']) => [name, value]),
  );
}

const looks = [
  ['paper', colours('tokens.css', '[data-theme="paper"]')],
  ['hall', colours('tokens.css', '[data-theme="hall"]')],
  ['print', colours('print.css', '[data-theme]')],
] as const;

const grounds = ['ground', 'surface'];
const texts: readonly (readonly [text: string, grounds: readonly string[]])[] = [
  ['ink', [...grounds, 'raised', 'counted-wash', 'no-rep-wash']],
  ['ink-soft', [...grounds, 'raised']],
  ['counted-ink', [...grounds, 'raised']],
  ['no-rep-ink', [...grounds, 'no-rep-wash']],
];
const marks = ['counted', 'no-rep', 'edge', 'accent', 'focus'];

test('the ratio itself: black on white is 21, and #767676 is the lightest grey that passes on white', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5);
  expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
});

describe.each(looks)('%s', (name, colour) => {
  const of = (token: string): string => {
    // Printing changes only what it names; the rest is the light look's.
    const value = colour.get(token) ?? looks[0][1].get(token);
    if (value === undefined) throw new Error(`${name} has no colour ${token}`);
    return value;
  };

  test.each(texts.flatMap(([text, on]) => on.map((ground) => [text, ground] as const)))(
    'text %s on %s',
    (text, ground) => {
      expect(contrast(of(text), of(ground))).toBeGreaterThanOrEqual(4.5);
    },
  );

  test.each(marks.flatMap((mark) => grounds.map((ground) => [mark, ground] as const)))(
    'mark %s on %s',
    (mark, ground) => {
      expect(contrast(of(mark), of(ground))).toBeGreaterThanOrEqual(3);
    },
  );

  test('the words on the main button', () => {
    expect(contrast(of('on-accent'), of('accent'))).toBeGreaterThanOrEqual(4.5);
  });

  test('the two accents are of the palette for colour-blind readers', () => {
    // Okabe & Ito, "Color Universal Design", 2008: blue, sky blue; vermillion, orange. Values from memory.
    expect(['#0072b2', '#56b4e9']).toContain(of('counted'));
    expect(['#d55e00', '#e69f00']).toContain(of('no-rep'));
  });
});
