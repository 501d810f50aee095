import { calls, type DeskParts } from './calls.ts';

/** Answers the calls of the Review area; the sums are made in the reports' thread. */
export function reviewCalls({ reports, now }: DeskParts) {
  const thread = reports.calls.review;
  const until = (signal: AbortSignal | undefined) => (signal === undefined ? {} : { signal });
  const { review } = calls;
  return review.router({
    subjects: review.subjects.handler(({ signal }) => thread.subjects(undefined, until(signal))),
    athlete: review.athlete.handler(({ input, signal }) => thread.athlete(input, until(signal))),
    judge: review.judge.handler(({ input, signal }) => thread.judge(input, until(signal))),
    gym: review.gym.handler(({ input, signal }) => thread.gym(input, until(signal))),
    compare: review.compare.handler(({ input, signal }) => thread.compare(input, until(signal))),
    forecast: review.forecast.handler(({ input, signal }) => thread.forecast(input, until(signal))),
    raceCard: review.raceCard.handler(({ input, signal }) => thread.raceCard(input, until(signal))),
    export: review.export.handler(({ input, signal }) => thread.export({ asked: input, now: now() }, until(signal))),
  });
}
