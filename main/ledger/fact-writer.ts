import { packBins } from './bins.ts';
import type { WriteConnection } from './connection.ts';
import { type AttemptFact, asColumns, type ReasonFact, type Scale, type SetFacts, scales } from './facts.ts';
import { unknownSet } from './log.ts';
import { build } from './query.ts';
import { type StaleSet, staleSets } from './stale-sets.ts';

/** Everything derived from the log of one set. */
export interface FactsOfSet {
  readonly facts: SetFacts;
  readonly reasons: readonly ReasonFact[];
  readonly attempts: readonly AttemptFact[];
  /** Place of the last event they were computed from. */
  readonly appliedN: number;
  /** The version of the computation, 1 or more; raise it and every set becomes stale. */
  readonly projection: number;
}

export interface FactWrites {
  /**
   * Replaces what is derived from the log of a set, as one transaction. `older` where facts of a later event or a later
   * computation are there already: those stay. Errors: `unknown-set`.
   */
  write(set: string, derived: FactsOfSet): 'written' | 'older';
  /** Sets to compute again for `projection`, oldest change first, at most `limit`. */
  stale(projection: number, limit: number): StaleSet[];
  /** Forgets everything derived, so that every set becomes stale. */
  forget(): void;
}

export function factWrites(connection: WriteConnection): FactWrites {
  const current = connection.prepare<
    [string],
    { n: number; applied_n: number; projection: number; created_at: number }
  >(`SELECT s.n, s.created_at, f.applied_n, f.projection FROM sets s JOIN set_facts f ON f.set_n = s.n WHERE s.id = ?`);
  const replaceRows = rowReplacer(connection);
  const replaceFacts = (setN: number, createdAt: number, derived: FactsOfSet) => {
    connection.run(
      build
        .updateTable('set_facts')
        .set({
          ...asColumns(derived.facts),
          happened_at: derived.facts.startedAt ?? createdAt,
          applied_n: derived.appliedN,
          projection: derived.projection,
        })
        .where('set_n', '=', setN),
    );
    replaceRows(setN, derived);
  };
  return {
    write: (set, derived) =>
      connection.transaction(() => {
        const row = current.get(set);
        if (row === undefined) throw unknownSet(set, connection.path);
        const older =
          derived.projection < row.projection ||
          (derived.projection === row.projection && derived.appliedN < row.applied_n);
        if (older) return 'older';
        replaceFacts(row.n, row.created_at, derived);
        return 'written';
      }),
    stale: staleSets(connection),
    forget: () => {
      connection.transaction(() => {
        for (const table of ['set_reasons', 'attempts', 'set_bins'] as const) connection.run(build.deleteFrom(table));
        connection.run(build.updateTable('set_facts').set({ applied_n: 0, projection: 0 }));
      });
    },
  };
}

function rowReplacer(connection: WriteConnection): (setN: number, derived: FactsOfSet) => void {
  const clear = ['set_reasons', 'attempts', 'set_bins'].map((table) =>
    connection.prepare<[number]>(`DELETE FROM ${table} WHERE set_n = ?`),
  );
  const reason = connection.prepare<unknown[]>('INSERT INTO set_reasons VALUES (?, ?, ?, ?)');
  const attempt = connection.prepare<unknown[]>('INSERT INTO attempts VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)');
  const bins = connection.prepare<unknown[]>('INSERT INTO set_bins VALUES (?, ?, ?)');
  return (setN, { reasons, attempts }) => {
    for (const statement of clear) statement.run(setN);
    for (const { fault, noReps, seconds } of reasons) reason.run(setN, fault, noReps, seconds);
    for (const a of attempts) {
      const faults = a.faults.join(',');
      attempt.run(
        setN,
        a.number,
        a.at,
        a.verdict,
        faults,
        a.cycleMs,
        a.expectedMs,
        Number(a.clean),
        a.progress,
        a.costSeconds,
      );
    }
    for (const scale of Object.keys(scales) as Scale[]) bins.run(setN, scale, packBins(attempts, scale));
  };
}
