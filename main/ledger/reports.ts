import { sql } from 'kysely';
import type { Verdict } from '../../shared-types/log/events.ts';
import type { Before } from '../../shared-types/log/setup.ts';
import { addedBins, type BinCount, type ClusteredBins, unpackBins } from './bins.ts';
import type { ReadConnection } from './connection.ts';
import { type AttemptFact, asFacts, type FactColumns, factColumns, type Scale, type SetFacts } from './facts.ts';
import { ended, type SetFilter } from './filter.ts';
import { build } from './query.ts';
import { type ReviewReads, reviewReads } from './review.ts';

/** By what the sums of a report are told apart; `all` gives one group with the key ''. */
export type Grouping = 'all' | 'athlete' | 'judge' | 'sheet';

export interface ReportSet {
  readonly id: string;
  readonly happenedAt: number;
  readonly athlete: string;
  readonly judge: string;
  readonly sheet: { readonly id: string; readonly version: number };
  readonly loadKg: number | null;
  readonly heightM: number | null;
  readonly before: Before;
  readonly facts: SetFacts;
}

export interface Totals {
  readonly group: string;
  readonly sets: number;
  readonly attempts: number;
  readonly counted: number;
  readonly cautions: number;
  readonly noReps: number;
  readonly unexplained: number;
  readonly reversals: number;
  readonly slips: number;
  /** Milliseconds over all sets; the four lines of the time ledger over those that have one. */
  readonly clockMs: number;
  readonly startMs: number;
  readonly workMs: number;
  readonly noRepMs: number;
  readonly breakMs: number;
  /** Seconds over the sets whose cost could be estimated, their number, and their counted reps. */
  readonly costSeconds: number;
  readonly setsWithCost: number;
  readonly noRepsWithCost: number;
  readonly attemptsWithCost: number;
}

export interface ReasonSum {
  readonly group: string;
  readonly sheet: string;
  readonly fault: string;
  readonly noReps: number;
  /** Seconds over the no-reps of sets whose cost could be estimated, and how many those are. */
  readonly seconds: number;
  readonly noRepsWithSeconds: number;
  readonly sets: number;
}

export interface AttemptsOfSet {
  readonly id: string;
  readonly attempts: readonly AttemptFact[];
}

/**
 * What the reports read. Unless the filter says otherwise, only sets that have ended, of main judges, and no practice. Sums
 * are made by SQLite over facts, so they are as new as `facts.write` has made them.
 */
export interface Reports extends ReviewReads {
  /** One row a set, oldest first. */
  sets(filter: SetFilter): ReportSet[];
  totals(filter: SetFilter, by?: Grouping): Totals[];
  reasons(filter: SetFilter, by?: Grouping): ReasonSum[];
  /** Attempts and no-reps in the bins of a scale (see facts.ts), over all sets together. */
  bins(filter: SetFilter, scale: Scale): BinCount[];
  /** The same, set by set, for sums that take a set as one cluster. */
  binsBySet(filter: SetFilter, scale: Scale): ClusteredBins;
  /** The attempts of the latest `limit` sets that match, oldest set first. */
  attempts(filter: SetFilter, limit: number): AttemptsOfSet[];
}

export function reports(connection: ReadConnection): Reports {
  return {
    ...reviewReads(connection),
    sets: (filter) => connection.all(setsQuery(filter)).map(asReportSet),
    totals: (filter, by = 'all') => connection.all(totalsQuery(filter, by)),
    reasons: (filter, by = 'all') => connection.all(reasonsQuery(filter, by)),
    bins: (filter, scale) => addedBins(binsOf(connection, filter, scale), scale),
    binsBySet: (filter, scale) => binsOf(connection, filter, scale),
    attempts: (filter, limit) => attemptsOfSets(connection, filter, limit),
  };
}

function setsQuery(filter: SetFilter) {
  return build
    .selectFrom('set_facts')
    .innerJoin('sets', 'sets.n', 'set_facts.set_n')
    .select(factColumns)
    .select(['sets.id', 'happened_at', 'set_facts.athlete', 'set_facts.judge', 'set_facts.sheet_id'])
    .select(['set_facts.sheet_version', 'set_facts.load_kg', 'set_facts.height_m', 'set_facts.before'])
    .where(ended(filter))
    .orderBy('happened_at')
    .orderBy('set_facts.set_n');
}

function asReportSet(row: FactColumns & ReportSetColumns): ReportSet {
  return {
    id: row.id,
    happenedAt: row.happened_at,
    athlete: row.athlete,
    judge: row.judge,
    sheet: { id: row.sheet_id, version: row.sheet_version },
    loadKg: row.load_kg,
    heightM: row.height_m,
    before: row.before as Before,
    facts: asFacts(row),
  };
}

interface ReportSetColumns {
  id: string;
  happened_at: number;
  athlete: string;
  judge: string;
  sheet_id: string;
  sheet_version: number;
  load_kg: number | null;
  height_m: number | null;
  before: string;
}

function groupOf(by: Grouping) {
  switch (by) {
    case 'all':
      return sql<string>`''`;
    case 'athlete':
      return sql<string>`set_facts.athlete`;
    case 'judge':
      return sql<string>`set_facts.judge`;
    case 'sheet':
      return sql<string>`set_facts.sheet_id`;
  }
}

function totalsQuery(filter: SetFilter, by: Grouping) {
  const sum = (column: string) => sql<number>`coalesce(sum(${sql.ref(`set_facts.${column}`)}), 0)`;
  const withCost = (column: string) =>
    sql<number>`coalesce(sum(${sql.ref(`set_facts.${column}`)}) FILTER (WHERE set_facts.cost_s IS NOT NULL), 0)`;
  const group = groupOf(by);
  return build
    .selectFrom('set_facts')
    .select([group.as('group'), sql<number>`count(*)`.as('sets'), sum('attempts').as('attempts')])
    .select([sum('counted').as('counted'), sum('cautions').as('cautions'), sum('no_reps').as('noReps')])
    .select([sum('unexplained').as('unexplained'), sum('reversals').as('reversals'), sum('slips').as('slips')])
    .select([sum('clock_ms').as('clockMs'), sum('start_ms').as('startMs'), sum('work_ms').as('workMs')])
    .select([sum('no_rep_ms').as('noRepMs'), sum('break_ms').as('breakMs'), sum('cost_s').as('costSeconds')])
    .select([sql<number>`count(set_facts.cost_s)`.as('setsWithCost'), withCost('no_reps').as('noRepsWithCost')])
    .select(withCost('attempts').as('attemptsWithCost'))
    .where(ended(filter))
    .groupBy(group)
    .orderBy('group');
}

function reasonsQuery(filter: SetFilter, by: Grouping) {
  const group = groupOf(by);
  return build
    .selectFrom('set_facts')
    .innerJoin('set_reasons as r', 'r.set_n', 'set_facts.set_n')
    .select([group.as('group'), 'set_facts.sheet_id as sheet', 'r.fault', sql<number>`sum(r.no_reps)`.as('noReps')])
    .select(sql<number>`coalesce(sum(r.seconds), 0)`.as('seconds'))
    .select(sql<number>`coalesce(sum(r.no_reps) FILTER (WHERE r.seconds IS NOT NULL), 0)`.as('noRepsWithSeconds'))
    .select(sql<number>`count(*)`.as('sets'))
    .where(ended(filter))
    .groupBy([group, 'set_facts.sheet_id', 'r.fault'])
    .orderBy('group')
    .orderBy('sheet')
    .orderBy('noReps', 'desc');
}

/** Sets lead, so that one athlete's bins are found set by set and everyone's are read in the order of the table. */
function binsQuery(filter: SetFilter, scale: Scale) {
  return build
    .selectFrom('set_facts')
    .crossJoin('set_bins as b')
    .select(sql<string | null>`group_concat(b.set_n || ' ' || CAST(b.counts AS TEXT), ';')`.as('text'))
    .whereRef('b.set_n', '=', 'set_facts.set_n')
    .where('b.scale', '=', scale)
    .where(ended(filter));
}

function binsOf(connection: ReadConnection, filter: SetFilter, scale: Scale): ClusteredBins {
  return unpackBins(connection.first(binsQuery(filter, scale))?.text ?? '');
}

/** The latest `limit` sets that match: a whole number of them, at least one. */
function latest(filter: SetFilter, limit: number) {
  return build
    .selectFrom('set_facts')
    .select('set_facts.set_n')
    .where(ended(filter))
    .orderBy('set_facts.happened_at', 'desc')
    .orderBy('set_facts.set_n', 'desc')
    .limit(Math.max(1, Math.trunc(limit)));
}

function attemptsOfSets(connection: ReadConnection, filter: SetFilter, limit: number): AttemptsOfSet[] {
  const rows = connection.all(
    build
      .selectFrom('set_facts')
      .innerJoin('sets', 'sets.n', 'set_facts.set_n')
      .innerJoin('attempts as t', 't.set_n', 'set_facts.set_n')
      .select(['sets.id', 't.number', 't.at', 't.verdict', 't.faults', 't.cycle_ms', 't.expected_ms'])
      .select(['t.clean', 't.progress', 't.cost_s'])
      .where('set_facts.set_n', 'in', latest(filter, limit))
      .orderBy('set_facts.happened_at')
      .orderBy('set_facts.set_n')
      .orderBy('t.number'),
  );
  const sets: { id: string; attempts: AttemptFact[] }[] = [];
  for (const row of rows) {
    let current = sets.at(-1);
    if (current?.id !== row.id) {
      current = { id: row.id, attempts: [] };
      sets.push(current);
    }
    current.attempts.push({
      number: row.number,
      at: row.at,
      verdict: row.verdict as Verdict,
      faults: row.faults === '' ? [] : row.faults.split(','),
      cycleMs: row.cycle_ms,
      expectedMs: row.expected_ms,
      clean: row.clean === 1,
      progress: row.progress,
      costSeconds: row.cost_s,
    });
  }
  return sets;
}
