import type { ResultLine, StationResults } from '../../../shared-types/contract/nights/debrief.ts';
import { goalReached, tally } from '../../../shared-types/log/fold.ts';
import { type NightStation, stationsOf } from '../../../shared-types/night/night.ts';
import { readRecord } from '../record.ts';
import { cycleHistory } from '../reports/cycle-history.ts';
import { setReportOf } from '../reports/set-report.ts';
import { sumSet } from '../reports/set-sums.ts';
import type { JudgedLane, JudgedNight, NightLedger } from './lanes.ts';

/** The results of every station; finished sets have places, equal ones share theirs. */
export function resultsOf(ledger: NightLedger, night: JudgedNight): StationResults[] {
  const { arrangement } = night.state;
  if (arrangement === null) return [];
  return arrangement.stations.map((station) => {
    const sheet = ledger.sheets.get(station.sheet.id, station.sheet.version);
    const lines = arrangement.people
      .filter((person) => stationsOf(arrangement, person).some(({ id }) => id === station.id))
      .map((person) => {
        const lane = night.lanes.find(({ place }) => place.athlete === person.id && place.station === station.id);
        return resultLine(ledger, night, station, person.id, lane);
      });
    const rankedBy = rankOf(station, sheet.markEveryM !== null);
    return {
      station: { id: station.id, name: sheet.station },
      goal: station.goal,
      rankedBy,
      lines: withPlaces(lines, rankedBy),
    };
  });
}

function rankOf({ goal }: NightStation, marks: boolean): StationResults['rankedBy'] {
  if (goal.kind === 'reps' || goal.kind === 'metres') return 'time';
  return marks ? 'metres' : 'counted';
}

function resultLine(
  ledger: NightLedger,
  night: JudgedNight,
  station: NightStation,
  athlete: string,
  lane: JudgedLane | undefined,
): ResultLine {
  const nowhere = {
    place: null,
    tied: false,
    athlete: night.who(athlete),
    heat: lane?.heat ?? null,
    lane: lane?.place.lane ?? null,
  };
  const state = lane?.main ?? null;
  const set = lane?.place.set ?? null;
  if (state === null || set === null || state.phase === 'ready') {
    const none = { clockMs: 0, resultMs: 0, counted: 0, metres: 0, noReps: 0, costS: null };
    return { ...nowhere, ...none, set: null, state: 'did-not-start' };
  }
  const record = readRecord(ledger, set);
  const report = setReportOf(record, sumSet(record, cycleHistory(ledger, record)));
  const { counted, metres, noReps } = tally(state);
  // A set that ends short of its goal has no time that can be compared, whoever pressed what.
  const clock = station.goal.kind === 'clock' || station.goal.kind === 'open';
  const done = state.phase === 'finished' && (clock || goalReached(station.goal, state, state.endedAt ?? 0));
  return {
    ...nowhere,
    set,
    state: done ? 'finished' : 'did-not-finish',
    clockMs: report.clockMs,
    resultMs: report.resultMs,
    counted,
    metres,
    noReps,
    costS: report.cost.total?.value ?? null,
  };
}

/** Standard competition ranking ("2, 2, 4"); those without a place follow, the farthest first. */
function withPlaces(lines: readonly ResultLine[], rankedBy: StationResults['rankedBy']): ResultLine[] {
  const value = (line: ResultLine) => (rankedBy === 'time' ? line.resultMs : -line[rankedBy]);
  const byName = (one: ResultLine, other: ResultLine) => (one.athlete.name < other.athlete.name ? -1 : 1);
  const finished = lines
    .filter(({ state }) => state === 'finished')
    .toSorted((one, other) => value(one) - value(other) || byName(one, other))
    .map((line, _index, all) => ({
      ...line,
      place: 1 + all.filter((other) => value(other) < value(line)).length,
      tied: all.filter((other) => value(other) === value(line)).length > 1,
    }));
  const others = lines
    .filter(({ state }) => state !== 'finished')
    .toSorted(
      (one, other) =>
        Number(one.state === 'did-not-start') - Number(other.state === 'did-not-start') ||
        other.counted - one.counted ||
        other.metres - one.metres ||
        byName(one, other),
    );
  return [...finished, ...others];
}
