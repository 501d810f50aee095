import type { Formats } from '../formats.ts';

/** What a review is narrowed to. */
export function reviewFilterWords({ number, plural, kilograms, date, list }: Formats) {
  const lastWeeks = (weeks: number): string =>
    weeks === 52 ? 'Last year' : `Last ${number(weeks)} ${plural(weeks, { one: 'week', other: 'weeks' })}`;
  const before = { fresh: 'Fresh', run: 'After a run', station: 'After another station' } as const;
  return {
    title: 'Narrow',
    station: 'Station',
    anyStation: 'All stations',
    span: 'Time',
    all: 'All time',
    lastWeeks,
    dates: 'From a day to a day',
    from: 'From',
    to: 'To',
    more: 'Filters',
    moreInUse: (count: number) => `Filters, ${number(count)} in use`,
    load: 'Load',
    loadOf: (loadKg: number | null) => (loadKg === null ? 'No load' : kilograms(loadKg)),
    before: 'Came from',
    beforeOf: before,
    judge: 'Judge',
    anyJudge: 'Any judge',
    tags: 'Tags',
    reset: 'Show all',
    /** The days that a view covers. */
    days: (from: number, to: number) => (date(from) === date(to) ? date(from) : `${date(from)} to ${date(to)}`),
    fromDay: (day: string) => `From ${day}`,
    toDay: (day: string) => `To ${day}`,
    tagged: (tags: readonly string[]) => `tagged ${list(tags)}`,
    judgedBy: (judge: string) => `judged by ${judge}`,
    size: (sets: number, attempts: number) =>
      `${number(sets)} ${plural(sets, { one: 'set', other: 'sets' })}, ${number(attempts)} ${plural(attempts, { one: 'attempt', other: 'attempts' })}`,
    nothing: 'No set matches.',
    nothingText: 'Widen the time or the filters.',
  };
}
