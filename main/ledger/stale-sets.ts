import type { ReadConnection } from './connection.ts';

/** A set whose facts are older than its log or than the program's way of computing them. */
export interface StaleSet {
  readonly id: string;
  /** Place of the set's last event: what facts computed from its whole log now apply up to. */
  readonly lastN: number;
}

/**
 * Which sets' facts lag behind. Looked up in the whole log once, then kept in memory as the one writer appends and writes
 * facts: asking again while a set is judged must not read a log of ten years.
 */
export class StaleSets {
  private known: { readonly projection: number; readonly lastN: Map<string, number> } | null = null;
  private readonly connection: ReadConnection;

  constructor(connection: ReadConnection) {
    this.connection = connection;
  }

  /** Notes the place of a set's newest event, once it is durable. */
  appended(id: string, n: number): void {
    // Taken out and put in again, so that the map stays in the order of the latest change.
    this.known?.lastN.delete(id);
    this.known?.lastN.set(id, n);
  }

  /** Notes that a set's facts were written. */
  applied(id: string, appliedN: number, projection: number): void {
    if (this.known === null || projection < this.known.projection) return;
    if (appliedN >= (this.known.lastN.get(id) ?? 0)) this.known.lastN.delete(id);
  }

  lookAgain(): void {
    this.known = null;
  }

  /** At most `limit`, oldest change first. */
  list(projection: number, limit: number): StaleSet[] {
    if (this.known?.projection !== projection) this.known = { projection, lastN: this.lookUp(projection) };
    const found: StaleSet[] = [];
    for (const [id, lastN] of this.known.lastN) {
      if (found.length >= limit) break;
      found.push({ id, lastN });
    }
    return found;
  }

  private lookUp(projection: number): Map<string, number> {
    const rows = this.connection
      .prepare<[number], StaleSet>(
        `SELECT s.id, l.last_n AS lastN FROM (SELECT set_n, max(n) AS last_n FROM events GROUP BY set_n) l
         JOIN set_facts f ON f.set_n = l.set_n JOIN sets s ON s.n = l.set_n
         WHERE f.applied_n < l.last_n OR f.projection < ? ORDER BY l.last_n`,
      )
      .all(projection);
    return new Map(rows.map(({ id, lastN }) => [id, lastN]));
  }
}
