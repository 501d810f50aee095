import { readFileSync } from 'node:fs';

/** One published example: what was put in, what was printed, where, how the print was come by, and what R gives. */
export type PublishedEntry = {
  readonly id: string;
  readonly topic: string;
  readonly source: string;
  readonly page_or_table: string;
  readonly input: Record<string, unknown>;
  readonly published: Record<string, unknown> | readonly unknown[];
  readonly published_status: string;
  readonly precision?: unknown;
  readonly recomputed: Record<string, unknown> | readonly number[] | number | null;
  readonly tolerance?: string;
  readonly agrees: boolean | null;
  readonly note: string;
};

const file = new URL('published-values.json', import.meta.url);

export const publishedEntries: readonly PublishedEntry[] = JSON.parse(readFileSync(file, 'utf8'));

/** A number of an entry's input. */
export function number(input: Record<string, unknown>, key: string): number {
  const value = input[key];
  if (typeof value !== 'number') throw new Error(`The entry holds no number ${key}.`);
  return value;
}

/** A list of numbers of an entry's input. */
export function list(input: Record<string, unknown>, key: string): number[] {
  const value = input[key];
  if (!Array.isArray(value) || !value.every((item) => typeof item === 'number')) {
    throw new Error(`The entry holds no list of numbers ${key}.`);
  }
  return value;
}

/** A table, row by row, of an entry's input. */
export function table(input: Record<string, unknown>, key: string): number[][] {
  const value = input[key];
  if (!Array.isArray(value)) throw new Error(`The entry holds no table ${key}.`);
  return value.map((row, i) => list({ [i]: row }, String(i)));
}
