/** A small seeded generator: the same seed gives the same numbers on every machine. */
export interface Random {
  /** Uniform on [0, 1). */
  uniform(): number;
  /** Uniform on [low, high). */
  between(low: number, high: number): number;
  /** Standard normal, cut at +-2.5 so that one draw never makes an impossible body. */
  normal(): number;
}

/** Stirs two integers into one, so that nearby seeds give unrelated streams. */
export function mixSeed(seed: number, salt: number): number {
  let h = (Math.trunc(seed) ^ Math.imul(salt + 0x9e3779b9, 0x85ebca6b)) >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x21f0aaad);
  h = Math.imul(h ^ (h >>> 15), 0x735a2d97);
  return (h ^ (h >>> 15)) >>> 0;
}

/**
 * Mulberry32 (a public-domain generator by Tommy Ettinger): 32 bits of state, ample for a few dozen draws a rep.
 */
export function random(seed: number): Random {
  let state = mixSeed(seed, 1);
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform,
    between: (low, high) => low + (high - low) * uniform(),
    normal: () => {
      const size = Math.sqrt(-2 * Math.log(1 - uniform()));
      return Math.max(-2.5, Math.min(2.5, size * Math.cos(2 * Math.PI * uniform())));
    },
  };
}
