import { useState } from 'react';
import type { ReviewFilter } from '../../../../shared-types/contract/review/filter.ts';
import { useQuery } from '../../../parts/shell/hash-place.ts';
import { type Choice, filterOf, noChoice, readChoice, writeChoice } from './choice.ts';

export interface Chosen {
  readonly choice: Choice;
  /** The contract's filter; the same object's text as long as the choice is the same. */
  readonly filter: ReviewFilter;
  readonly change: (part: Partial<Choice>) => void;
  /** Everything but the station back to "all". */
  readonly reset: () => void;
  /** What else the address holds, and a way to change it. */
  readonly params: URLSearchParams;
  readonly edit: (change: (params: URLSearchParams) => void) => void;
}

/** What the address of a view says it is narrowed to. */
export function useChoice(): Chosen {
  const [params, edit] = useQuery();
  const choice = readChoice(params);
  // "The last weeks" end at the moment the view was opened: a view that stays open does not shift under the reader.
  const [now] = useState(() => Date.now());
  const change = (part: Partial<Choice>): void => edit((next) => writeChoice(next, { ...choice, ...part }));
  return {
    choice,
    filter: filterOf(choice, now),
    change,
    reset: () => change({ ...noChoice, sheet: choice.sheet }),
    params,
    edit,
  };
}
