import { type Design, linearPredictor } from './design.ts';

const TOLERANCE = 1e-6;

/**
 * Whether moving the coefficients along `direction` only ever makes the data likelier: every all-success row rises or
 * stays, every all-failure row falls or stays, mixed rows stay, and some row moves. Then the data are separated, wholly
 * or in part, and no finite maximum-likelihood estimate exists (Albert & Anderson 1984, Biometrika 71:1-10).
 *
 * Under separation the steps of the scoring algorithm turn into such a direction, so testing them is enough.
 */
export function separates(design: Design, direction: readonly number[]): boolean {
  const moves = linearPredictor(design.columns, direction, design.rows);
  let largest = 0;
  let worst = 0;
  for (let i = 0; i < design.rows; i += 1) {
    const move = moves[i] ?? 0;
    const successes = design.successes[i] ?? 0;
    const allSuccess = successes === design.trials[i];
    largest = Math.max(largest, Math.abs(move));
    if (successes > 0 && !allSuccess) worst = Math.max(worst, Math.abs(move));
    else worst = Math.max(worst, allSuccess ? -move : move);
  }
  return largest > 0 && worst <= TOLERANCE * largest;
}
