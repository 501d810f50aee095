/** One step of the schema. Once released it never changes: a later step mends what an earlier one got wrong. */
export interface Migration {
  readonly version: number;
  readonly name: string;
  readonly statements: readonly string[];
}
