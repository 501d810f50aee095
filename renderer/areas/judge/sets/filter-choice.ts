import type { SetFilter } from '../../../../shared-types/contract/sets.ts';
import { type Before, before } from '../../../../shared-types/log/setup.ts';
import { startOfDay } from '../../../parts/controls/start-of-day.ts';

/** What stands in the filter form; empty text means any. Days as the browser's date field writes them, 2026-11-25. */
export interface FilterChoice {
  readonly search: string;
  readonly athlete: string;
  readonly judge: string;
  readonly sheet: string;
  readonly loadKg: number | null;
  readonly before: string;
  readonly tag: string;
  readonly from: string;
  readonly to: string;
  readonly phase: '' | NonNullable<SetFilter['phase']>;
  readonly unexplained: boolean;
  readonly practice: NonNullable<SetFilter['practice']>;
}

export const noFilter: FilterChoice = {
  search: '',
  athlete: '',
  judge: '',
  sheet: '',
  loadKg: null,
  before: '',
  tag: '',
  from: '',
  to: '',
  phase: '',
  unexplained: false,
  practice: 'without',
};

function isBefore(text: string): text is Before {
  return (before.options as readonly string[]).includes(text);
}

/** The filter of the contract; what is not chosen does not narrow. */
export function filterOf(choice: FilterChoice): SetFilter {
  const from = startOfDay(choice.from);
  const to = startOfDay(choice.to, 1);
  const search = choice.search.trim();
  const tag = choice.tag.trim();
  return {
    practice: choice.practice,
    ...(search === '' ? {} : { search }),
    ...(choice.athlete === '' ? {} : { athlete: choice.athlete }),
    ...(choice.judge === '' ? {} : { judge: choice.judge }),
    ...(choice.sheet === '' ? {} : { sheet: choice.sheet }),
    ...(choice.loadKg === null ? {} : { loadKg: choice.loadKg }),
    ...(isBefore(choice.before) ? { before: choice.before } : {}),
    ...(tag === '' ? {} : { tag }),
    ...(from === null ? {} : { from }),
    ...(to === null ? {} : { to }),
    ...(choice.phase === '' ? {} : { phase: choice.phase }),
    ...(choice.unexplained ? { unexplained: true } : {}),
  };
}

/** How many of the filters behind the search narrow the list. */
export function filtersInUse(choice: FilterChoice): number {
  const names = Object.keys(noFilter) as (keyof FilterChoice)[];
  return names.filter((name) => name !== 'search' && choice[name] !== noFilter[name]).length;
}
