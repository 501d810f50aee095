import type { Goal, GoalKind } from '../../../../shared-types/log/setup.ts';
import type { Arrangement, Night } from '../../../../shared-types/night/night.ts';
import type { Person } from '../../../../shared-types/people.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';

/** A station as it is typed in; amount in reps, metres or milliseconds, as its kind of goal asks. */
export interface StationEntry {
  readonly sheet: string;
  readonly kind: GoalKind;
  readonly amount: number | null;
  readonly loadKg: number | null;
  readonly heightM: number | null;
}

/** Somebody's part in the night. Times as "18:30"; empty: from the beginning, to the end. */
export interface PartEntry {
  readonly athlete: boolean;
  readonly judge: boolean;
  readonly from: string;
  readonly until: string;
}

export interface PairEntry {
  readonly judge: string;
  readonly athlete: string;
}

/** A night as it is typed in. */
export interface NightEntry {
  readonly name: string;
  readonly date: string;
  readonly start: string;
  readonly heatMinutes: number | null;
  readonly lanes: number | null;
  readonly shadows: boolean;
  readonly stations: readonly StationEntry[];
  readonly parts: Readonly<Record<string, PartEntry>>;
  readonly pairs: readonly PairEntry[];
}

export const noPart: PartEntry = { athlete: false, judge: false, from: '', until: '' };

/** A goal of a kind with the sheet's usual amount, else one that a gym would try first. */
export function amountFor(kind: GoalKind, { usualGoal }: Pick<StandardSheet, 'usualGoal'>): number | null {
  if (usualGoal.kind === kind && usualGoal.amount > 0) return usualGoal.amount;
  return { reps: 50, metres: 80, clock: 300_000, open: null }[kind];
}

export function stationFor(sheet: StandardSheet): StationEntry {
  const { kind } = sheet.usualGoal;
  return {
    sheet: sheet.id,
    kind,
    amount: amountFor(kind, sheet),
    loadKg: sheet.loadsKg[0] ?? null,
    heightM: sheet.heightsM[0] ?? null,
  };
}

/** An empty night on a day ("2026-09-07") with the first sheet as its station. */
export function emptyNight(date: string, sheets: readonly StandardSheet[]): NightEntry {
  const stations = sheets.slice(0, 1).map(stationFor);
  const rest = { name: '', start: '18:00', heatMinutes: 12, lanes: 2, shadows: true };
  return { ...rest, date, stations, parts: {}, pairs: [] };
}

/** Everybody takes the part that they have under People; times typed already stay. */
export function everybody(entry: NightEntry, people: readonly Person[]): NightEntry {
  const parts = people.map(({ id, athlete, judge }) => [id, { ...(entry.parts[id] ?? noPart), athlete, judge }]);
  return { ...entry, parts: { ...entry.parts, ...Object.fromEntries(parts) } };
}

/** A night's arrangement as the form shows it, to be changed. */
export function entryOf(night: Night, given: Arrangement): NightEntry {
  return {
    name: night.name,
    date: night.date,
    start: clockOf(given.startAt),
    heatMinutes: given.heatMinutes,
    lanes: given.lanes.length,
    shadows: given.shadows,
    stations: given.stations.map(({ sheet, goal, loadKg, heightM }) => ({
      sheet: sheet.id,
      kind: goal.kind,
      amount: amountOf(goal),
      loadKg,
      heightM,
    })),
    parts: Object.fromEntries(
      given.people.map(({ id, athlete, judge, from, until }) => [
        id,
        { athlete, judge, from: clockOf(from), until: clockOf(until) },
      ]),
    ),
    pairs: given.mustNotJudge,
  };
}

/**
 * What the desk takes; the entry must be free of problems (`night-problems.ts`). What the form does not show is kept from
 * `held`, the arrangement that is being changed.
 */
export function toArrangement(
  entry: NightEntry,
  sheets: readonly Pick<StandardSheet, 'id' | 'version'>[],
  held: Arrangement | null,
): Arrangement {
  const people = Object.entries(entry.parts).filter(([, part]) => part.athlete || part.judge);
  const here = new Set(people.map(([id]) => id));
  const stations = entry.stations.map((station, index) => {
    const id = stationId(entry.stations, index);
    const before = held?.stations.find((item) => item.id === id && item.sheet.id === station.sheet);
    const version = sheets.find((sheet) => sheet.id === station.sheet)?.version ?? 1;
    return {
      id,
      sheet: before?.sheet ?? { id: station.sheet, version },
      goal: goalOf(station),
      loadKg: station.loadKg,
      heightM: station.heightM,
      before: before?.before ?? ('fresh' as const),
    };
  });
  const known = new Set(stations.map(({ id }) => id));
  return {
    startAt: timeOf(entry.date, entry.start) ?? 0,
    heatMinutes: entry.heatMinutes ?? 12,
    mostHeats: held?.mostHeats ?? null,
    shadows: entry.shadows,
    stations,
    lanes: Array.from({ length: entry.lanes ?? 1 }, (_, index) => {
      const lane = held?.lanes[index] ?? { id: `${index + 1}`, name: `${index + 1}`, stations: [] };
      return { ...lane, stations: lane.stations.filter((id) => known.has(id)) };
    }),
    people: people.map(([id, { athlete, judge, from, until }]) => {
      const before = held?.people.find((person) => person.id === id);
      return {
        id,
        athlete,
        judge,
        stations: (before?.stations ?? []).filter((station) => known.has(station)),
        from: timeOf(entry.date, from),
        until: leaving(entry, until),
        own: before?.own ?? {},
      };
    }),
    mustNotJudge: entry.pairs.filter(({ judge, athlete }) => here.has(judge) && here.has(athlete)),
  };
}

/** The sheet's own name, for the desk's sentences say it; with a number where a sheet is used again. */
function stationId(stations: readonly StationEntry[], index: number): string {
  const sheet = (stations[index]?.sheet ?? 'station').slice(0, 28);
  const before = stations.slice(0, index).filter((item) => item.sheet.slice(0, 28) === sheet).length;
  return before === 0 ? sheet : `${sheet}-${before + 1}`;
}

function goalOf({ kind, amount }: StationEntry): Goal {
  switch (kind) {
    case 'reps':
      return { kind, reps: amount ?? 1 };
    case 'metres':
      return { kind, metres: amount ?? 1 };
    case 'clock':
      return { kind, milliseconds: amount ?? 1_000 };
    case 'open':
      return { kind };
  }
}

function amountOf(goal: Goal): number | null {
  switch (goal.kind) {
    case 'reps':
      return goal.reps;
    case 'metres':
      return goal.metres;
    case 'clock':
      return goal.milliseconds;
    case 'open':
      return null;
  }
}

/** The time of day, "18:30"; empty where there is none. */
function clockOf(at: number | null): string {
  if (at === null) return '';
  const time = new Date(at);
  return [time.getHours(), time.getMinutes()].map((value) => String(value).padStart(2, '0')).join(':');
}

/** A time of a day as the gym's own clock has it; milliseconds since 1970 UTC, null where it is none. */
export function timeOf(date: string, time: string, daysAfter = 0): number | null {
  const day = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  const clock = /^(\d{2}):(\d{2})$/.exec(time);
  if (day === null || clock === null) return null;
  const [year, month, number] = [Number(day[1]), Number(day[2]) - 1, Number(day[3]) + daysAfter];
  const at = new Date(year, month, number, Number(clock[1]), Number(clock[2])).getTime();
  return Number.isFinite(at) ? at : null;
}

/** A time to leave that is earlier than the start is one after midnight. */
export function leaving({ date, start }: Pick<NightEntry, 'date' | 'start'>, until: string): number | null {
  return timeOf(date, until, until !== '' && until <= start ? 1 : 0);
}
