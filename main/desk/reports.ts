import { calls, type DeskParts } from './calls.ts';

/** Answers the calls for reports; the sums are made in the reports' thread. */
export function reportsCalls({ reports }: DeskParts) {
  return calls.reports.router({
    set: calls.reports.set.handler(({ input, signal }) =>
      reports.calls.set(input, signal === undefined ? {} : { signal }),
    ),
  });
}
