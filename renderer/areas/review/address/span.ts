import { startOfDay } from '../../../parts/controls/start-of-day.ts';

/** A span of the calendar: all, the last weeks up to now, or days as a date field writes them (2026-11-25), both included. */
export type Span =
  | { readonly kind: 'all' }
  | { readonly kind: 'last'; readonly weeks: number }
  | { readonly kind: 'dates'; readonly from: string; readonly to: string };

/** The spans that are offered, in weeks. */
export const offeredWeeks = [4, 12, 26, 52] as const;

export function readSpan(params: URLSearchParams): Span {
  const weeks = Number(params.get('weeks'));
  if (Number.isInteger(weeks) && weeks >= 1 && weeks <= 2_000) return { kind: 'last', weeks };
  return datesOf(params.get('from'), params.get('to'));
}

export function writeSpan(params: URLSearchParams, span: Span): void {
  for (const name of ['weeks', 'from', 'to']) params.delete(name);
  if (span.kind === 'last') params.set('weeks', String(span.weeks));
  if (span.kind !== 'dates') return;
  if (span.from !== '') params.set('from', span.from);
  if (span.to !== '') params.set('to', span.to);
}

/** A span between two days, either of them open; all where neither is a day. */
export function datesOf(from: string | null, to: string | null): Span {
  const day = (text: string | null): string => (text !== null && startOfDay(text) !== null ? text : '');
  const dates = { kind: 'dates', from: day(from), to: day(to) } as const;
  return dates.from === '' && dates.to === '' ? { kind: 'all' } : dates;
}

/** Milliseconds since 1970 UTC, `to` exclusive; null where open. */
export function spanLimits(span: Span, now: number): { readonly from: number | null; readonly to: number | null } {
  if (span.kind === 'all') return { from: null, to: null };
  if (span.kind === 'dates') return { from: startOfDay(span.from), to: startOfDay(span.to, 1) };
  const date = new Date(now);
  return {
    from: new Date(date.getFullYear(), date.getMonth(), date.getDate() - 7 * span.weeks).getTime(),
    to: null,
  };
}

/** The day of a moment in local time, as a date field writes it. */
export function dayOf(at: number): string {
  const date = new Date(at);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
