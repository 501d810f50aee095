import { calls, type DeskParts } from './calls.ts';

/** Answers what the desk is, what time it has, and what changes at it. */
export function aboutCalls({ about, changes, now }: DeskParts) {
  return calls.desk.router({
    about: calls.desk.about.handler(() => about),
    time: calls.desk.time.handler(() => ({ now: now() })),
    changes: calls.desk.changes.handler(({ signal }) => changes.listen(signal)),
  });
}
