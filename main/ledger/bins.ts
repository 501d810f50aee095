import { type AttemptFact, binOf, type Scale, scales } from './facts.ts';

/** Attempts and no-reps of one set in the bins of a scale, bin by bin: three numbers for each bin that holds any. */
const NUMBERS = 3;

/**
 * The bins of one set as bytes: bin, attempts, no-reps as unsigned 32-bit numbers, lowest byte first, for each bin in use. One
 * value a set and scale instead of a row a bin: a report over everyone reads a twentieth of the rows.
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
  const bytes = Buffer.alloc(counts.size * NUMBERS * 4);
  let offset = 0;
  for (const [bin, count] of [...counts].sort(([a], [b]) => a - b)) {
    for (const value of [bin, count.attempts, count.noReps]) offset = bytes.writeUInt32LE(value, offset);
  }
  return bytes;
}

/** Columns of equal length, a row for each bin of each set; `set` is equal for rows of one set, which stand together. */
export interface ClusteredBins {
  readonly set: Int32Array;
  readonly bin: Int32Array;
  readonly attempts: Int32Array;
  readonly noReps: Int32Array;
}

/** The bins of many sets as columns, in the order given. */
export function unpackBins(sets: readonly { readonly n: number; readonly counts: Buffer }[]): ClusteredBins {
  const rows = sets.reduce((sum, { counts }) => sum + counts.length / (NUMBERS * 4), 0);
  const column = () => new Int32Array(rows);
  const columns = { set: column(), bin: column(), attempts: column(), noReps: column() };
  let row = 0;
  for (const { n, counts } of sets) {
    for (let offset = 0; offset < counts.length; offset += NUMBERS * 4) {
      columns.set[row] = n;
      columns.bin[row] = counts.readUInt32LE(offset);
      columns.attempts[row] = counts.readUInt32LE(offset + 4);
      columns.noReps[row] = counts.readUInt32LE(offset + 8);
      row += 1;
    }
  }
  return columns;
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
