import { normalCdf, normalDensity, normalQuantile } from '../distributions/normal.ts';

/** How a linear predictor becomes a probability. `derivative` is that of `probability`; `predictor` is its inverse. */
export type Link = {
  readonly name: string;
  readonly probability: (predictor: number) => number;
  readonly derivative: (predictor: number) => number;
  readonly predictor: (probability: number) => number;
  /** Open range of the probabilities the link can give. */
  readonly range: readonly [number, number];
};

export const logit: Link = {
  name: 'logit',
  probability: (predictor) => 1 / (1 + Math.exp(-predictor)),
  derivative: (predictor) => {
    const small = Math.exp(-Math.abs(predictor));
    return small / (1 + small) ** 2;
  },
  predictor: (probability) => Math.log(probability / (1 - probability)),
  range: [0, 1],
};

export const probit: Link = {
  name: 'probit',
  probability: normalCdf,
  derivative: normalDensity,
  predictor: normalQuantile,
  range: [0, 1],
};

/** Complementary log-log. */
export const cloglog: Link = {
  name: 'cloglog',
  probability: (predictor) => -Math.expm1(-Math.exp(predictor)),
  derivative: (predictor) => Math.exp(predictor - Math.exp(predictor)),
  predictor: (probability) => Math.log(-Math.log1p(-probability)),
  range: [0, 1],
};

/**
 * A link whose probability runs from `guess` to 1 - `lapse` instead of 0 to 1: the psychometric function with a rate of
 * lucky guesses and one of lapses (Wichmann & Hill 2001, Perception & Psychophysics 63:1293-1313).
 */
export function withGuessAndLapse(link: Link, guess: number, lapse: number): Link {
  if (guess === 0 && lapse === 0) return link;
  const span = 1 - guess - lapse;
  return {
    name: link.name,
    probability: (predictor) => guess + span * link.probability(predictor),
    derivative: (predictor) => span * link.derivative(predictor),
    predictor: (probability) => link.predictor((probability - guess) / span),
    range: [guess, 1 - lapse],
  };
}
