import { type NightPlan, type NightStation, stationsOf } from '../../../shared-types/night/night.ts';
import { judgeLoads } from '../../../shared-types/night/pairs.ts';
import type { Roster } from '../../../shared-types/night/roster.ts';

/** One athlete at one station, still to be done. */
export interface Entry {
  readonly athlete: string;
  readonly station: string;
}

/** What is left to plan of a night in `heats` heats; indices count from 0 and begin at `first`. */
export interface Task {
  readonly roster: Roster;
  readonly heats: number;
  readonly first: number;
  /** Judges a lane: 1, or 2 with shadows. */
  readonly perLane: number;
  readonly entries: readonly Entry[];
  readonly athletes: readonly string[];
  readonly judges: readonly string[];
  /** Heats judged so far. */
  readonly loads: ReadonlyMap<string, number>;
  /** `judge athlete` for who must not judge whom. */
  readonly banned: ReadonlySet<string>;
  /** Stations with the lanes that take each. */
  readonly stations: readonly NightStation[];
  readonly mayCompete: (athlete: string, heat: number) => boolean;
  readonly mayJudge: (judge: string, heat: number) => boolean;
}

export function taskOf(roster: Roster, heats: number): Task {
  const { arrangement, begun } = roster;
  const first = begun.length;
  const last: NightPlan[number] = begun.at(-1) ?? [];
  const busy = new Set(
    last.flatMap(({ athlete, judge, shadow }) => [athlete, judge, ...(shadow === null ? [] : [shadow])]),
  );
  const done = new Set(begun.flat().map(({ athlete, station }) => `${athlete} ${station}`));
  const entries = arrangement.people
    .filter(({ id }) => roster.stays(id))
    .flatMap((person) => stationsOf(arrangement, person).map(({ id }) => ({ athlete: person.id, station: id })))
    .filter(({ athlete, station }) => !done.has(`${athlete} ${station}`));
  return {
    roster,
    heats,
    first,
    perLane: arrangement.shadows ? 2 : 1,
    entries,
    athletes: [...new Set(entries.map(({ athlete }) => athlete))],
    judges: arrangement.people.filter(({ judge }) => judge).map(({ id }) => id),
    loads: judgeLoads(begun),
    banned: new Set(arrangement.mustNotJudge.map(({ judge, athlete }) => `${judge} ${athlete}`)),
    stations: arrangement.stations,
    // Whoever competed or judged in the last heat that has begun rests, or competes no sooner than a heat later.
    mayCompete: (athlete, heat) => roster.here(athlete, heat) && !(heat === first && busy.has(athlete)),
    mayJudge: (judge, heat) => roster.here(judge, heat),
  };
}
