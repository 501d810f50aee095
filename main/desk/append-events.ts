import type { Acknowledgement } from '../../shared-types/contract/sets.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import type { DeskParts } from './calls.ts';

/** Writes events of sets, tells who listens, and answers what became of each, in order. */
export function appendEvents(
  { ledger, changes, facts }: Pick<DeskParts, 'ledger' | 'changes' | 'facts'>,
  given: readonly SetEvent[],
): Acknowledgement[] {
  const outcomes = ledger.log.append(given);
  const written = given.filter((_, index) => outcomes[index]?.outcome === 'new');
  const lastN = Math.max(0, ...outcomes.map((outcome) => (outcome.outcome === 'new' ? outcome.n : 0)));
  for (const [set, events] of Map.groupBy(written, (event) => event.set)) {
    changes.appended(set, events);
    facts.touch(set, lastN);
  }
  return given.map(({ pad, seq }, index) => ({ pad, seq, outcome: outcomes[index]?.outcome ?? 'conflict' }));
}
