import { z } from 'zod';
import { before, goal } from '../log/setup.ts';

/** What a night is called and when; never changes. All else of a night is in its log (`events.ts`). */
export const night = z.strictObject({
  id: z.uuid(),
  name: z.string().trim().min(1, 'a night needs a name').max(200),
  /** The calendar day in the gym's own time, for lists and prints. */
  date: z.iso.date(),
  /** Milliseconds since 1970 UTC. */
  createdAt: z.number().int().min(0),
});
export type Night = z.infer<typeof night>;

/** A short word that names a station or a lane within its night. */
const shortId = z.string().regex(/^[a-z0-9][a-z0-9-]{0,31}$/);
const load = z.number().min(0).max(500).nullable();
const height = z.number().min(0).max(10).nullable();
const wallClock = z.number().int().min(0);

/** One station of the night: every athlete entered does it once. */
export const nightStation = z.strictObject({
  id: shortId,
  sheet: z.strictObject({ id: z.string().min(1).max(64), version: z.number().int().min(1) }),
  goal,
  /** For everyone without a load or height of their own. Kilograms, metres. */
  loadKg: load,
  heightM: height,
  before,
});
export type NightStation = z.infer<typeof nightStation>;

export const nightLane = z.strictObject({
  id: shortId,
  name: z.string().trim().min(1).max(40),
  /** Stations that can be done on this lane; empty: all of them. */
  stations: z.array(shortId).max(12),
});
export type NightLane = z.infer<typeof nightLane>;

export const nightPerson = z.strictObject({
  id: z.uuid(),
  athlete: z.boolean(),
  judge: z.boolean(),
  /** Stations this athlete does; empty: all of them. Without meaning for who does not compete. */
  stations: z.array(shortId).max(12),
  /** Here from and until, milliseconds since 1970 UTC; null: from the beginning, to the end. */
  from: wallClock.nullable(),
  until: wallClock.nullable(),
  /** Loads and heights of this athlete's own, by station id; an absent one is the station's. */
  own: z.record(shortId, z.strictObject({ loadKg: load, heightM: height })),
});
export type NightPerson = z.infer<typeof nightPerson>;

/** How the night is meant to go, before any plan: what the organiser decides. */
export const arrangement = z
  .strictObject({
    /** When the first heat is to begin, and how long a heat lasts with its change-over. */
    startAt: wallClock,
    heatMinutes: z.number().min(1).max(240),
    /** The most heats there may be; null: as many as are needed, at most 60. */
    mostHeats: z.number().int().min(1).max(60).nullable(),
    /** A second judge on every lane, whose calls do not count. */
    shadows: z.boolean(),
    stations: z.array(nightStation).min(1).max(6),
    lanes: z.array(nightLane).min(1).max(32),
    people: z.array(nightPerson).max(200),
    /** `judge` must not judge `athlete`, as main judge or as shadow. */
    mustNotJudge: z.array(z.strictObject({ judge: z.uuid(), athlete: z.uuid() })).max(2_000),
  })
  .refine(({ stations }) => unique(stations.map(({ id }) => id)), 'each station of a night has an id of its own')
  .refine(({ lanes }) => unique(lanes.map(({ id }) => id)), 'each lane has an id of its own')
  .refine(({ people }) => unique(people.map(({ id }) => id)), 'each person stands once in a night')
  .refine(({ stations, lanes, people }) => {
    const known = new Set(stations.map(({ id }) => id));
    return [...lanes, ...people].every((item) => item.stations.every((id) => known.has(id)));
  }, 'lanes and people name stations that the night has')
  .refine(({ people, mustNotJudge }) => {
    const known = new Set(people.map(({ id }) => id));
    return mustNotJudge.every(({ judge, athlete }) => known.has(judge) && known.has(athlete));
  }, 'who must not judge whom names people of the night');
export type Arrangement = z.infer<typeof arrangement>;

/** What happens on one lane in one heat. */
export const assignment = z.strictObject({
  lane: shortId,
  station: shortId,
  athlete: z.uuid(),
  judge: z.uuid(),
  shadow: z.uuid().nullable(),
});
export type Assignment = z.infer<typeof assignment>;

/** One heat: lanes that stay empty are left out. */
const plannedHeat = z.array(assignment).max(32);

/** Heats 1, 2, … in order. A heat may be empty: a pause. */
export const nightPlan = z.array(plannedHeat).max(60);
export type NightPlan = z.infer<typeof nightPlan>;

/** The stations that this person is to do, in the night's order; none for who does not compete. */
export function stationsOf(given: Pick<Arrangement, 'stations'>, person: NightPerson): readonly NightStation[] {
  if (!person.athlete) return [];
  return given.stations.filter(({ id }) => person.stations.length === 0 || person.stations.includes(id));
}

/** Whether a station can be done on a lane. */
export function laneTakes(lane: NightLane, station: string): boolean {
  return lane.stations.length === 0 || lane.stations.includes(station);
}

/** When heat `index` (0, 1, …) is to begin and to end, milliseconds since 1970 UTC. */
export function heatSpan(
  given: Pick<Arrangement, 'startAt' | 'heatMinutes'>,
  index: number,
): { readonly start: number; readonly end: number } {
  const length = Math.round(given.heatMinutes * 60_000);
  return { start: given.startAt + index * length, end: given.startAt + (index + 1) * length };
}

function unique(values: readonly string[]): boolean {
  return new Set(values).size === values.length;
}
