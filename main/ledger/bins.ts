import { type AttemptFact, binOf, type Scale, scales } from './facts.ts';

/**
 * The bins of one set and scale as one value instead of a row a bin, so that a report over everyone reads a twentieth of the
 * rows: for each bin in use its number, attempts and no-reps, rising, as digits with spaces between ("0 3 1 2 4 0").
 */
export function packBins(attempts: readonly AttemptFact[], scale: Scale): Buffer {
  const counts = new Map<number, { attempts: number; noReps: number }>();
  for (const [place, attempt] of attempts.entries()) {
    const bin = binOf(attempt, scale, attempts[place - 1]);
    if (bin === null) continue;
    const count = counts.get(bin) ?? { attempts: 0, noReps: 0 };
    count.attempts += 1;
    if (attempt.verdict === 'no-rep') count.noReps += 1;
    counts.set(bin, count);
  }
  const rising = [...counts].sort(([a], [b]) => a - b);
  return Buffer.from(rising.map(([bin, count]) => `${bin} ${count.attempts} ${count.noReps}`).join(' '));
}

/** Columns of equal length, a row for each bin of each set; `set` is equal for rows of one set, which stand together. */
export interface ClusteredBins {
  readonly set: Int32Array;
  readonly bin: Int32Array;
  readonly attempts: Int32Array;
  readonly noReps: Int32Array;
}

const ZERO = 48;
const NINE = 57;
const SEMICOLON = 59;

/**
 * The bins of many sets as columns. `text`: for each set its number, a space and its packed bins, sets parted by semicolons, as
 * one query returns it for all of them; ten thousands of small values would take longer to cross over than to read.
 */
export function unpackBins(text: string): ClusteredBins {
  // A row takes five characters at least, and a set its number.
  const room = Math.ceil(text.length / 5) + 1;
  const column = () => new Int32Array(room);
  const columns = { set: column(), bin: column(), attempts: column(), noReps: column() };
  const order = [columns.bin, columns.attempts, columns.noReps];
  let row = 0;
  let set = 0;
  let field = -1;
  let value = 0;
  for (let at = 0; at <= text.length; at += 1) {
    const code = at === text.length ? SEMICOLON : text.charCodeAt(at);
    if (code >= ZERO && code <= NINE) {
      value = value * 10 + code - ZERO;
      continue;
    }
    const into = order[field];
    if (into === undefined) set = value;
    else into[row] = value;
    if (field === 2) {
      columns.set[row] = set;
      row += 1;
    }
    field = code === SEMICOLON ? -1 : field === 2 ? 0 : field + 1;
    value = 0;
  }
  return {
    set: columns.set.subarray(0, row),
    bin: columns.bin.subarray(0, row),
    attempts: columns.attempts.subarray(0, row),
    noReps: columns.noReps.subarray(0, row),
  };
}

export interface BinCount {
  readonly bin: number;
  readonly attempts: number;
  readonly noReps: number;
}

/** The bins of all sets together, those in use, rising. */
export function addedBins(rows: ClusteredBins, scale: Scale): BinCount[] {
  const bins = Array.from({ length: scales[scale].bins }, (_, bin) => ({ bin, attempts: 0, noReps: 0 }));
  for (let row = 0; row < rows.bin.length; row += 1) {
    const count = bins[rows.bin[row] ?? 0];
    if (count === undefined) continue;
    count.attempts += rows.attempts[row] ?? 0;
    count.noReps += rows.noReps[row] ?? 0;
  }
  return bins.filter((count) => count.attempts > 0);
}
