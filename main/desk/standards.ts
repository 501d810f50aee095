import { calls, type DeskParts } from './calls.ts';

/** Answers the calls about standard sheets. */
export function standardsCalls({ ledger, changes }: DeskParts) {
  return calls.standards.router({
    list: calls.standards.list.handler(() => ledger.sheets.latest()),
    versions: calls.standards.versions.handler(({ input }) => ledger.sheets.versions(input.id).toReversed()),
    get: calls.standards.get.handler(({ input }) => ledger.sheets.get(input.id, input.version)),
    publish: calls.standards.publish.handler(({ input }) => {
      ledger.sheets.publish(input);
      changes.changed('standards', input.id);
      return ledger.sheets.get(input.id, input.version);
    }),
  });
}
