import type { Expression, ExpressionBuilder, SqlBool } from 'kysely';
import type { Before, Role } from '../../shared-types/log/setup.ts';
import type { Phase } from '../../shared-types/log/state.ts';
import { searchWords } from './people.ts';
import type { Tables } from './tables.ts';

/** Which sets. Every condition given must hold; a list of values means any of them; an empty list means none at all. */
export interface SetFilter {
  /** Every word must occur in the athlete's or judge's names, the station, the tags or the note. */
  readonly search?: string;
  readonly athletes?: readonly string[];
  readonly judges?: readonly string[];
  /** A sheet in all its versions, or in one. */
  readonly sheets?: readonly { readonly id: string; readonly version?: number }[];
  /** Kilograms; null for sets without a load. */
  readonly loadsKg?: readonly (number | null)[];
  readonly heightsM?: readonly (number | null)[];
  readonly before?: readonly Before[];
  /** All of these tags. */
  readonly tags?: readonly string[];
  /** From this moment on, milliseconds since 1970 UTC, by the set's go (by its setup before go). */
  readonly from?: number;
  /** Before this moment. */
  readonly to?: number;
  readonly phases?: readonly Phase[];
  readonly roles?: readonly Role[];
  readonly practice?: 'no' | 'only' | 'also';
  /** Whether the set has no-reps without a reason. */
  readonly unexplained?: boolean;
}

type Conditions = ExpressionBuilder<Tables, 'set_facts'>;

/** The filter as a condition on `set_facts`. */
export function matching(filter: SetFilter): (eb: Conditions) => Expression<SqlBool> {
  return (eb) => eb.and([...plain(eb, filter), ...ranges(eb, filter), ...tagged(eb, filter), ...searched(eb, filter)]);
}

const usual: SetFilter = { phases: ['finished', 'abandoned'], roles: ['main'], practice: 'no' };

/** As `matching`; unless the filter says otherwise, only sets that have ended, of main judges, and no practice. */
export function ended(filter: SetFilter): (eb: Conditions) => Expression<SqlBool> {
  return matching({ ...usual, ...filter });
}

function plain(eb: Conditions, filter: SetFilter): Expression<SqlBool>[] {
  const conditions: Expression<SqlBool>[] = [];
  const any = (column: 'athlete' | 'judge' | 'before' | 'phase' | 'role', values: readonly string[] | undefined) => {
    if (values !== undefined) conditions.push(eb(`set_facts.${column}`, 'in', values));
  };
  any('athlete', filter.athletes);
  any('judge', filter.judges);
  any('before', filter.before);
  any('phase', filter.phases);
  any('role', filter.roles);
  if (filter.sheets !== undefined) {
    conditions.push(
      eb.or(
        filter.sheets.map(({ id, version }) =>
          version === undefined
            ? eb('set_facts.sheet_id', '=', id)
            : eb.and([eb('set_facts.sheet_id', '=', id), eb('set_facts.sheet_version', '=', version)]),
        ),
      ),
    );
  }
  return conditions;
}

function ranges(eb: Conditions, filter: SetFilter): Expression<SqlBool>[] {
  const conditions: Expression<SqlBool>[] = [];
  const numbers = (column: 'load_kg' | 'height_m', values: readonly (number | null)[] | undefined) => {
    if (values === undefined) return;
    const given = values.filter((value) => value !== null);
    const alternatives: Expression<SqlBool>[] = [eb(`set_facts.${column}`, 'in', given)];
    if (values.includes(null)) alternatives.push(eb(`set_facts.${column}`, 'is', null));
    conditions.push(eb.or(alternatives));
  };
  numbers('load_kg', filter.loadsKg);
  numbers('height_m', filter.heightsM);
  if (filter.from !== undefined) conditions.push(eb('set_facts.happened_at', '>=', filter.from));
  if (filter.to !== undefined) conditions.push(eb('set_facts.happened_at', '<', filter.to));
  if (filter.practice === 'no' || filter.practice === 'only') {
    conditions.push(eb('set_facts.practice', '=', filter.practice === 'only' ? 1 : 0));
  }
  if (filter.unexplained !== undefined) {
    conditions.push(eb('set_facts.unexplained', filter.unexplained ? '>' : '=', 0));
  }
  return conditions;
}

function tagged(eb: Conditions, filter: SetFilter): Expression<SqlBool>[] {
  return (filter.tags ?? []).map((tag) =>
    eb.exists(
      eb
        .selectFrom('set_tags')
        .select('set_tags.tag')
        .whereRef('set_tags.set_n', '=', 'set_facts.set_n')
        .where('set_tags.tag', '=', tag),
    ),
  );
}

/** Each word is looked up once in the small tables of people and sheets, and once in the setups' own text. */
function searched(eb: Conditions, filter: SetFilter): Expression<SqlBool>[] {
  return searchWords(filter.search).map((word) => {
    const people = eb
      .selectFrom('people')
      .select('people.id')
      .where((inner) => inner(inner.fn<number>('instr', ['people.search', inner.val(word)]), '>', 0));
    const stations = eb
      .selectFrom('sheets')
      .select('sheets.id')
      .where((inner) => inner(inner.fn<number>('instr', ['sheets.search', inner.val(word)]), '>', 0));
    const own = eb
      .selectFrom('sets')
      .select('sets.n')
      .where((inner) => inner(inner.fn<number>('instr', ['sets.search', inner.val(word)]), '>', 0));
    return eb.or([
      eb('set_facts.athlete', 'in', people),
      eb('set_facts.judge', 'in', people),
      eb('set_facts.sheet_id', 'in', stations),
      eb('set_facts.set_n', 'in', own),
    ]);
  });
}
