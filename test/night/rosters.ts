import { type RandomGenerator, seededGenerator } from '../../main/analysis/random/generator.ts';
import type { Arrangement, NightPerson } from '../../shared-types/night/night.ts';

export function personId(index: number): string {
  return `00000000-0000-4000-8000-${index.toString(16).padStart(12, '0')}`;
}

export function nameOf(id: string): string {
  return `Person ${Number.parseInt(id.slice(-12), 16)}`;
}

export const startAt = Date.UTC(2026, 8, 7, 17, 0);

/** A night of one station and two lanes, to be changed at will. */
export function arrangementOf(changes: Partial<Arrangement> = {}): Arrangement {
  return {
    startAt,
    heatMinutes: 10,
    mostHeats: null,
    shadows: false,
    stations: [stationOf('throws')],
    lanes: [laneOf('1'), laneOf('2')],
    people: [],
    mustNotJudge: [],
    ...changes,
  };
}

export function stationOf(id: string): Arrangement['stations'][number] {
  const sheet = { id: 'wall-throw', version: 1 };
  return { id, sheet, goal: { kind: 'reps', reps: 10 }, loadKg: 6, heightM: 2.7, before: 'fresh' };
}

export function laneOf(id: string, stations: string[] = []): Arrangement['lanes'][number] {
  return { id, name: `Lane ${id}`, stations };
}

export function personOf(index: number, changes: Partial<NightPerson> = {}): NightPerson {
  return {
    id: personId(index),
    athlete: true,
    judge: true,
    stations: [],
    from: null,
    until: null,
    own: {},
    ...changes,
  };
}

export function people(athletes: number, judges: number, both = 0): NightPerson[] {
  return Array.from({ length: athletes + judges + both }, (_, index) =>
    personOf(index + 1, { athlete: index < athletes + both, judge: index >= athletes }),
  );
}

/** A night drawn at random: some can be planned, some cannot. */
export function randomArrangement(seed: number): Arrangement {
  const random = seededGenerator(seed);
  const upTo = (most: number) => Math.floor(random.uniform() * (most + 1));
  const stations = Array.from({ length: 1 + upTo(2) }, (_, index) => stationOf(`s${index + 1}`));
  const lanes = Array.from({ length: 1 + upTo(3) }, (_, index) =>
    laneOf(`${index + 1}`, random.uniform() < 0.2 ? [stations[upTo(stations.length - 1)]?.id ?? 's1'] : []),
  );
  const crowd = people(1 + upTo(5), upTo(6), upTo(4)).map((person) => withHours(person, random, stations));
  const banned = crowd.flatMap((judge) =>
    crowd.filter((athlete) => judge.judge && athlete.athlete && judge !== athlete && random.uniform() < 0.08),
  );
  return arrangementOf({
    shadows: random.uniform() < 0.5,
    mostHeats: random.uniform() < 0.3 ? 1 + upTo(11) : null,
    stations,
    lanes,
    people: crowd,
    mustNotJudge: banned.flatMap((athlete) => {
      const judge = crowd.find((other) => other.judge && other !== athlete);
      return judge === undefined ? [] : [{ judge: judge.id, athlete: athlete.id }];
    }),
  });
}

function withHours(person: NightPerson, random: RandomGenerator, stations: Arrangement['stations']): NightPerson {
  const late = random.uniform() < 0.15 ? startAt + Math.floor(random.uniform() * 5) * 600_000 : null;
  const early = random.uniform() < 0.1 ? startAt + (4 + Math.floor(random.uniform() * 8)) * 600_000 : null;
  const own = random.uniform() < 0.15 ? [stations[0]?.id ?? 's1'] : [];
  return { ...person, from: late, until: early, stations: own };
}
