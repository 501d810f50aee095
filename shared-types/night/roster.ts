import { begunHeats } from './fold.ts';
import { type Arrangement, heatSpan, type NightPerson, type NightPlan } from './night.ts';
import type { NightState } from './state.ts';

/** Who can be planned for, and when: an arrangement with what has become of it so far. */
export interface Roster {
  readonly arrangement: Arrangement;
  /** Heats that have begun, and what they were; a plan keeps them. */
  readonly begun: NightPlan;
  /** Whether a person is here throughout heat `index` (0, 1, …): as arranged, as noted since, and as late as the night runs. */
  here(person: string, index: number): boolean;
  /** Whether anything more can be asked of the person: neither gone nor reported absent. */
  stays(person: string): boolean;
}

/** The roster of a night; null before it is arranged. */
export function rosterOf(state: Pick<NightState, 'arrangement' | 'heats' | 'presence'>): Roster | null {
  const { arrangement } = state;
  if (arrangement === null) return null;
  const begunCount = begunHeats(state);
  const begun = state.heats.slice(0, begunCount);
  const people = new Map(arrangement.people.map((person) => [person.id, person]));
  const last = begun.at(-1);
  // A night that runs late stays late; one that runs early waits for nobody, but nobody was asked to come earlier.
  const lateBy = last?.openedAt == null ? 0 : Math.max(0, last.openedAt - heatSpan(arrangement, begunCount - 1).start);
  const stays = (id: string) => {
    const noted = state.presence.get(id)?.state;
    return people.has(id) && noted !== 'no-show' && noted !== 'left';
  };
  return {
    arrangement,
    begun: begun.map(({ lanes }) =>
      lanes.map(({ lane, station, athlete, judge, shadow }) => ({ lane, station, athlete, judge, shadow })),
    ),
    stays,
    here: (id, index) => {
      const person = people.get(id);
      if (person === undefined) return false;
      const noted = state.presence.get(id);
      const heat = begun[index];
      if (heat !== undefined) {
        if (noted?.state === 'no-show') return false;
        if (noted?.state === 'arrived' && (heat.openedAt ?? 0) < noted.at && person.from === null) return false;
        if (noted?.state === 'left' && (heat.openedAt ?? 0) > noted.at) return false;
        return asArranged(person, arrangement, index, 0);
      }
      if (!stays(id)) return false;
      const arranged = noted?.state === 'arrived' ? { ...person, from: null } : person;
      return asArranged(arranged, arrangement, index, lateBy);
    },
  };
}

/**
 * The roster of an arrangement of which nothing has happened yet.
 * @internal exported for the tests; the program plans nights that it has a log of
 */
export function freshRoster(arrangement: Arrangement): Roster {
  const roster = rosterOf({ arrangement, heats: [], presence: new Map() });
  if (roster === null) throw new Error('an arrangement always has a roster');
  return roster;
}

function asArranged(person: NightPerson, arrangement: Arrangement, index: number, lateBy: number): boolean {
  const { start, end } = heatSpan(arrangement, index);
  return (person.from ?? 0) <= start + lateBy && (person.until ?? Number.POSITIVE_INFINITY) >= end + lateBy;
}
