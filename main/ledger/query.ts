import {
  type CompiledQuery,
  DummyDriver,
  Kysely,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely';
import type { Tables } from './tables.ts';

/** A query that can be turned into SQL; `Row` is what each row of its answer looks like. */
export interface Query<Row> {
  compile(): CompiledQuery<Row>;
}

/**
 * Kysely writes the queries and never runs them. Run through its own driver, each query would be a turn of the event loop
 * of its own, and an append could land inside a transaction that somebody else holds open, acknowledged and then rolled
 * back. `connection.ts` runs them, one after the other, to the end.
 */
export const build = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (database) => new SqliteIntrospector(database),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});
