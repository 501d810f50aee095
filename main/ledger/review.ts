import { type ExpressionBuilder, sql } from 'kysely';
import type { Before } from '../../shared-types/log/setup.ts';
import type { ReadConnection } from './connection.ts';
import { ended, type SetFilter } from './filter.ts';
import { build } from './query.ts';
import type { Tables } from './tables.ts';

/** What a review reads of one set; `n` is its number in this database. Fields as in `SetFacts`, times in milliseconds. */
export interface ReviewSet {
  readonly n: number;
  readonly at: number;
  readonly athlete: string;
  readonly judge: string;
  readonly sheet: string;
  readonly loadKg: number | null;
  readonly heightM: number | null;
  readonly before: Before;
  readonly attempts: number;
  readonly counted: number;
  readonly cautions: number;
  readonly noReps: number;
  readonly unexplained: number;
  readonly metres: number;
  readonly reversals: number;
  readonly slips: number;
  readonly breaks: number;
  readonly clockMs: number;
  readonly startMs: number | null;
  readonly workMs: number | null;
  readonly noRepMs: number | null;
  readonly breakMs: number | null;
  readonly cleanCycles: number;
  readonly cleanMs: number | null;
  readonly costS: number | null;
  readonly costLowS: number | null;
  readonly costHighS: number | null;
  readonly repeatS: number | null;
  readonly disruptionS: number | null;
}

/** A fault's share of one set; `seconds` null where the set's cost cannot be estimated. */
export interface ReviewReason {
  readonly n: number;
  readonly fault: string;
  readonly noReps: number;
  readonly seconds: number | null;
}

export interface SubjectSum {
  readonly person: string;
  readonly sheet: string;
  readonly loadKg: number | null;
  readonly before: Before;
  readonly sets: number;
  readonly attempts: number;
  readonly noReps: number;
  readonly firstAt: number;
  readonly lastAt: number;
}

export interface SubjectTag {
  readonly person: string;
  readonly sheet: string;
  readonly tag: string;
  readonly sets: number;
}

/** Reads of sets that have ended, of main judges, and no practice, unless the filter says otherwise. */
export interface ReviewReads {
  /** Oldest first. */
  reviewSets(filter: SetFilter): ReviewSet[];
  /** By number of set. */
  reviewReasons(filter: SetFilter): ReviewReason[];
  /** Ids of sets by their numbers. */
  setIds(numbers: readonly number[]): Map<number, string>;
  subjectSums(by: 'athlete' | 'judge'): SubjectSum[];
  subjectTags(by: 'athlete' | 'judge'): SubjectTag[];
}

export function reviewReads(connection: ReadConnection): ReviewReads {
  const ids = connection.prepare<[string], { n: number; id: string }>(
    'SELECT n, id FROM sets WHERE n IN (SELECT value FROM json_each(?))',
  );
  return {
    reviewSets: (filter) => connection.all(setsQuery(filter)),
    reviewReasons: (filter) => connection.all(reasonsQuery(filter)),
    setIds: (numbers) => new Map(ids.all(JSON.stringify(numbers)).map(({ n, id }) => [n, id])),
    subjectSums: (by) => connection.all(subjectsQuery(by)),
    subjectTags: (by) => connection.all(tagsQuery(by)),
  };
}

const columns = [
  'set_n as n',
  'happened_at as at',
  'athlete',
  'judge',
  'sheet_id as sheet',
  'load_kg as loadKg',
  'height_m as heightM',
  'attempts',
  'counted',
  'cautions',
  'no_reps as noReps',
  'unexplained',
  'metres',
  'reversals',
  'slips',
  'breaks',
  'clock_ms as clockMs',
  'start_ms as startMs',
  'work_ms as workMs',
  'no_rep_ms as noRepMs',
  'break_ms as breakMs',
  'clean_cycles as cleanCycles',
  'clean_median_ms as cleanMs',
  'cost_s as costS',
  'cost_low_s as costLowS',
  'cost_high_s as costHighS',
  'repeat_s as repeatS',
  'disruption_s as disruptionS',
] as const;

function setsQuery(filter: SetFilter) {
  return build
    .selectFrom('set_facts')
    .select(columns)
    .select(beforeColumn)
    .where(ended(filter))
    .orderBy('happened_at')
    .orderBy('set_n');
}

function beforeColumn(eb: ExpressionBuilder<Tables, 'set_facts'>) {
  return eb.ref('set_facts.before').$castTo<Before>().as('before');
}

function reasonsQuery(filter: SetFilter) {
  return build
    .selectFrom('set_facts')
    .innerJoin('set_reasons as r', 'r.set_n', 'set_facts.set_n')
    .select(['r.set_n as n', 'r.fault', 'r.no_reps as noReps', 'r.seconds'])
    .where(ended(filter))
    .orderBy('r.set_n');
}

function subjectsQuery(by: 'athlete' | 'judge') {
  return build
    .selectFrom('set_facts')
    .select([`${by} as person`, 'sheet_id as sheet', 'load_kg as loadKg'])
    .select(beforeColumn)
    .select([sql<number>`count(*)`.as('sets'), sql<number>`sum(attempts)`.as('attempts')])
    .select([sql<number>`sum(no_reps)`.as('noReps'), sql<number>`min(happened_at)`.as('firstAt')])
    .select(sql<number>`max(happened_at)`.as('lastAt'))
    .where(ended({}))
    .groupBy([by, 'sheet_id', 'load_kg', 'before']);
}

function tagsQuery(by: 'athlete' | 'judge') {
  return build
    .selectFrom('set_tags')
    .innerJoin('set_facts', 'set_facts.set_n', 'set_tags.set_n')
    .select([`set_facts.${by} as person`, 'set_facts.sheet_id as sheet', 'set_tags.tag'])
    .select(sql<number>`count(*)`.as('sets'))
    .where(ended({}))
    .groupBy([`set_facts.${by}`, 'set_facts.sheet_id', 'set_tags.tag']);
}
