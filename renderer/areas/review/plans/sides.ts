import type { Subject } from '../../../../shared-types/contract/review/filter.ts';
import type { Choice } from '../address/choice.ts';
import { datesOf, dayOf } from '../address/span.ts';

type SubjectStation = Subject['stations'][number];

/** What two groups of sets can differ in. */
export const waysToCompare = ['before', 'load', 'judge', 'tag', 'time'] as const;
export type Way = (typeof waysToCompare)[number];

/** What an address says of a comparison: the way, and the two sides as texts of that way. */
export interface Sides {
  readonly way: Way;
  readonly a: string;
  readonly b: string;
}

/** A side that stands for both kinds of work before the set. */
export const afterWork = 'work';
const noLoad = 'none';

/** What can be chosen on either side; empty for days, which are written. */
export function sideValues(way: Way, station: SubjectStation, judges: readonly { readonly id: string }[]): string[] {
  switch (way) {
    case 'before': {
      const values: string[] = [...station.before];
      return values.includes('run') && values.includes('station') ? [...values, afterWork] : values;
    }
    case 'load':
      return station.loadsKg.map((load) => (load === null ? noLoad : String(load)));
    case 'judge':
      return judges.map((judge) => judge.id);
    case 'tag':
      return station.tags.map((item) => item.tag);
    case 'time':
      return [];
  }
}

/** The ways in which these sets differ at all. */
export function waysOf(station: SubjectStation, judges: readonly { readonly id: string }[]): readonly Way[] {
  return waysToCompare.filter((way) =>
    way === 'time' ? station.sets > 1 : sideValues(way, station, judges).length > 1,
  );
}

/** The sides of a way before any is chosen: fresh against after work, the two halves of the time, else the first two. */
export function usualSides(way: Way, station: SubjectStation, judges: readonly { readonly id: string }[]): Sides {
  if (way === 'time') {
    const middle = (station.firstAt + station.lastAt) / 2;
    const dayAfter = dayOf(middle + 86_400_000);
    return { way, a: `${dayOf(station.firstAt)}..${dayOf(middle)}`, b: `${dayAfter}..${dayOf(station.lastAt)}` };
  }
  const values = sideValues(way, station, judges);
  const second = way === 'before' && values.includes(afterWork) ? afterWork : (values[1] ?? '');
  return { way, a: values[0] ?? '', b: second };
}

/** Reads the sides of an address; what it does not say is as usual. Null where these sets differ in nothing. */
export function readSides(
  params: URLSearchParams,
  station: SubjectStation,
  judges: readonly { readonly id: string }[],
): Sides | null {
  const ways = waysOf(station, judges);
  const way = ways.find((item) => item === params.get('by')) ?? ways[0];
  if (way === undefined) return null;
  const usual = usualSides(way, station, judges);
  const values = sideValues(way, station, judges);
  const fits = (text: string | null): text is string => text !== null && (way === 'time' || values.includes(text));
  const [a, b] = [params.get('a'), params.get('b')];
  return { way, a: fits(a) ? a : usual.a, b: fits(b) ? b : usual.b };
}

/** The days of a side that is a span, as date fields write them; '' where open. */
export function daysOfSide(side: string): { readonly from: string; readonly to: string } {
  const [from = '', to = ''] = side.split('..');
  const span = datesOf(from, to);
  return span.kind === 'dates' ? { from: span.from, to: span.to } : { from: '', to: '' };
}

/** The choices of a view narrowed further to one side. */
export function sideChoice(choice: Choice, way: Way, side: string): Choice {
  switch (way) {
    case 'before':
      if (side === afterWork) return { ...choice, before: ['run', 'station'] };
      return side === 'fresh' || side === 'run' || side === 'station' ? { ...choice, before: [side] } : choice;
    case 'load':
      return { ...choice, loadsKg: [side === noLoad ? null : Number(side)] };
    case 'judge':
      return { ...choice, judge: side };
    case 'tag':
      return { ...choice, tags: [...choice.tags.filter((tag) => tag !== side), side] };
    case 'time': {
      const { from, to } = daysOfSide(side);
      return { ...choice, span: datesOf(from, to) };
    }
  }
}
