import type { ReviewFilter } from '../../../../shared-types/contract/review/filter.ts';
import { type Before, before } from '../../../../shared-types/log/setup.ts';
import { readSpan, type Span, spanLimits, writeSpan } from './span.ts';

/** What a view is narrowed to, as the address says it. Empty lists and texts do not narrow. */
export interface Choice {
  /** The station's sheet; '' where the address names none. */
  readonly sheet: string;
  readonly span: Span;
  /** Kilograms; null stands for sets without a load. */
  readonly loadsKg: readonly (number | null)[];
  readonly before: readonly Before[];
  readonly judge: string;
  readonly tags: readonly string[];
}

export const noChoice: Choice = {
  sheet: '',
  span: { kind: 'all' },
  loadsKg: [],
  before: [],
  judge: '',
  tags: [],
};

const none = 'none';
const uuid = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

/** Reads the choices of an address; what cannot be read does not narrow, so that no address is an error. */
export function readChoice(params: URLSearchParams): Choice {
  const loads = listOf(params.get('load')).map((text) => (text === none ? null : Number(text)));
  const judge = params.get('judge') ?? '';
  return {
    sheet: (params.get('station') ?? '').slice(0, 64),
    span: readSpan(params),
    loadsKg: [...new Set(loads)].filter((load) => load === null || (Number.isFinite(load) && load >= 0)).slice(0, 50),
    before: before.options.filter((value) => listOf(params.get('before')).includes(value)),
    judge: uuid.test(judge) ? judge : '',
    tags: [...new Set(params.getAll('tag'))].filter((tag) => tag !== '' && tag.length <= 40).slice(0, 12),
  };
}

/** Puts the choices into an address; what does not narrow is left out of it. */
export function writeChoice(params: URLSearchParams, choice: Choice): void {
  // Taken out first, so that the same choices make the same address in whatever order they were chosen.
  for (const name of ['station', 'load', 'before', 'judge', 'tag']) params.delete(name);
  put(params, 'station', choice.sheet);
  put(params, 'load', choice.loadsKg.map((load) => (load === null ? none : String(load))).join(' '));
  put(params, 'before', choice.before.join(' '));
  put(params, 'judge', choice.judge);
  for (const tag of choice.tags) params.append('tag', tag);
  writeSpan(params, choice.span);
}

/** The contract's filter. `now`: milliseconds since 1970 UTC; spans that end today begin at a local midnight. */
export function filterOf(choice: Choice, now: number): ReviewFilter {
  const { from, to } = spanLimits(choice.span, now);
  return {
    ...(choice.sheet === '' ? {} : { sheet: choice.sheet }),
    ...(from === null ? {} : { from }),
    ...(to === null ? {} : { to }),
    ...(choice.loadsKg.length === 0 ? {} : { loadsKg: [...choice.loadsKg] }),
    ...(choice.before.length === 0 ? {} : { before: [...choice.before] }),
    ...(choice.judge === '' ? {} : { judge: choice.judge }),
    ...(choice.tags.length === 0 ? {} : { tags: [...choice.tags] }),
  };
}

/** How many of the choices narrow, the station and the span left aside: those stand in sight. */
export function narrowings(choice: Choice): number {
  const { loadsKg, before: from, judge, tags } = choice;
  return Number(loadsKg.length > 0) + Number(from.length > 0) + Number(judge !== '') + tags.length;
}

/** A parameter set to a text, or taken out where the text is empty. */
export function put(params: URLSearchParams, name: string, text: string): void {
  if (text === '') params.delete(name);
  else params.set(name, text);
}

function listOf(text: string | null): readonly string[] {
  return (text ?? '').split(' ').filter((part) => part !== '');
}
