import type { Subject } from '../../../../shared-types/contract/review/filter.ts';

/** A person in the list of whom to look at. */
export interface SubjectLine {
  readonly id: string;
  readonly name: string;
  /** The station with the latest set. */
  readonly station: string;
  readonly sets: number;
  readonly attempts: number;
  readonly noReps: number;
  /** Milliseconds since 1970 UTC. */
  readonly lastAt: number;
}

/** One line a person, over all stations, in the order given. */
export function linesOf(subjects: readonly Subject[]): readonly SubjectLine[] {
  return subjects.map(({ person, stations }) => ({
    id: person.id,
    name: person.name,
    station: stations[0]?.sheet ?? '',
    sets: sumOf(stations, 'sets'),
    attempts: sumOf(stations, 'attempts'),
    noReps: sumOf(stations, 'noReps'),
    lastAt: stations.reduce((latest, station) => Math.max(latest, station.lastAt), 0),
  }));
}

function sumOf(stations: Subject['stations'], field: 'sets' | 'attempts' | 'noReps'): number {
  return stations.reduce((sum, station) => sum + station[field], 0);
}
