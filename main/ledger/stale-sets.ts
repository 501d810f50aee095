import type { ReadConnection } from './connection.ts';

/** A set whose facts are older than its log or than the program's way of computing them. */
export interface StaleSet {
  readonly id: string;
  /** Place of the set's last event: what facts computed from its whole log now apply up to. */
  readonly lastN: number;
}

/** Looks up the sets whose facts lag, by indexes: at most `limit`, oldest change first. */
export function staleSets(connection: ReadConnection): (projection: number, limit: number) => StaleSet[] {
  const lookUp = connection.prepare<[number, number], StaleSet>(
    `SELECT s.id, l.last_n AS lastN
     FROM (SELECT set_n, last_n FROM set_facts WHERE applied_n < last_n
           UNION SELECT set_n, last_n FROM set_facts WHERE projection < ? AND last_n > 0) l
     JOIN sets s ON s.n = l.set_n ORDER BY l.last_n LIMIT ?`,
  );
  return (projection, limit) => lookUp.all(projection, limit);
}
