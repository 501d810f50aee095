/** A stream of random numbers: `uint32` gives 32 random bits, `uniform` a number in [0, 1) with 53 bits. */
export type RandomGenerator = { readonly uint32: () => number; readonly uniform: () => number };

const GOLDEN_GAMMA = 0x9e3779b9;

/** SplitMix (Steele, Lea & Flood 2014) with 32-bit state: spreads one seed over the generator's state. */
function splitMix32(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + GOLDEN_GAMMA) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return (mixed ^ (mixed >>> 16)) >>> 0;
  };
}

function rotateLeft(x: number, by: number): number {
  return (x << by) | (x >>> (32 - by));
}

/**
 * xoshiro128** 1.1 (Blackman & Vigna 2021, ACM Transactions on Mathematical Software 47:36) from four state words, not
 * all zero. Period 2^128 - 1. Not for secrets.
 */
export function generatorFromState(state: readonly [number, number, number, number]): RandomGenerator {
  let [a, b, c, d] = state;
  const uint32 = () => {
    const result = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotateLeft(d, 11);
    return result;
  };
  const uniform = () => {
    const high = uint32() >>> 5;
    const low = uint32() >>> 6;
    return (high * 0x4000000 + low) / 0x20000000000000;
  };
  return { uint32, uniform };
}

/** The same seed (any whole number; its lowest 53 bits count) always gives the same stream. */
export function seededGenerator(seed: number): RandomGenerator {
  const low = splitMix32(seed);
  const high = splitMix32(Math.floor(seed / 0x100000000) ^ GOLDEN_GAMMA);
  const state: [number, number, number, number] = [low(), low(), high(), high()];
  return generatorFromState(state.some((word) => word !== 0) ? state : [1, 2, 3, 4]);
}
