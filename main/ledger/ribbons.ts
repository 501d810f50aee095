import type { Verdict } from '../../shared-types/log/events.ts';
import type { ReadConnection } from './connection.ts';
import { build } from './query.ts';

/** What a ribbon shows of one attempt that stands. */
export interface RibbonMark {
  readonly verdict: Verdict;
  readonly faults: readonly string[];
}

export interface RibbonReads {
  /** The attempts of these sets by set id, in order, as of each set's facts; a set without attempts is not in the map. */
  of(sets: readonly string[]): Map<string, RibbonMark[]>;
}

export function ribbonReads(connection: ReadConnection): RibbonReads {
  return {
    of: (sets) => {
      const rows = connection.all(
        build
          .selectFrom('sets')
          .innerJoin('attempts as t', 't.set_n', 'sets.n')
          .select(['sets.id', 't.verdict', 't.faults'])
          .where('sets.id', 'in', sets)
          .orderBy('t.set_n')
          .orderBy('t.number'),
      );
      const marks = Map.groupBy(rows, (row) => row.id);
      return new Map(
        [...marks].map(([id, own]) => [
          id,
          own.map((row) => ({
            verdict: row.verdict as Verdict,
            faults: row.faults === '' ? [] : row.faults.split(','),
          })),
        ]),
      );
    },
  };
}
