import { type RandomGenerator, seededGenerator } from '../../main/analysis/random/generator.ts';
import { randomInteger, randomNormal } from '../../main/analysis/random/variates.ts';

/** Random inputs for the comparison with R: the same ones on every run. */
export type Draw = {
  readonly between: (low: number, high: number) => number;
  readonly whole: (low: number, high: number) => number;
  readonly normal: () => number;
  readonly list: <T>(length: number, item: (i: number) => T) => T[];
};

export function drawFrom(seed: number): Draw {
  const generator: RandomGenerator = seededGenerator(seed);
  return {
    between: (low, high) => low + (high - low) * generator.uniform(),
    whole: (low, high) => low + randomInteger(generator, high - low + 1),
    normal: () => randomNormal(generator),
    list: (length, item) => Array.from({ length }, (_, i) => item(i)),
  };
}

/** An R vector. */
export function vector(values: ArrayLike<number>): string {
  return `c(${Array.from(values).join(',')})`;
}

/** An R matrix, row by row. */
export function matrix(rows: readonly (readonly number[])[]): string {
  return `matrix(${vector(rows.flat())},${rows.length},byrow=TRUE)`;
}
