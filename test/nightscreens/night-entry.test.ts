import { expect, test } from 'vitest';
import {
  emptyNight,
  entryOf,
  everybody,
  leaving,
  type NightEntry,
  noPart,
  stationFor,
  timeOf,
  toArrangement,
} from '../../renderer/areas/night/arrange/night-entry.ts';
import { nightProblems } from '../../renderer/areas/night/arrange/night-problems.ts';
import { nightWords } from '../../renderer/parts/words/en/night.ts';
import { formatsFor } from '../../renderer/parts/words/formats.ts';
import { arrangement } from '../../shared-types/night/night.ts';
import { shippedSheets } from '../../shared-types/sheets/shipped.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';

const words = nightWords(formatsFor('en-GB')).form;
const [ana, ben] = ['00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000002'];
const whole: NightEntry = {
  ...emptyNight('2026-09-07', [wallThrow]),
  name: ' First night ',
  parts: { [ana]: { ...noPart, athlete: true, until: '00:30' }, [ben]: { ...noPart, judge: true, from: '19:00' } },
  pairs: [{ judge: ben, athlete: ana }],
};
const night = { id: '00000000-0000-4000-8000-000000000009', name: 'First night', date: '2026-09-07', createdAt: 1 };

test('a whole entry has no problem and is what the desk takes', () => {
  expect(nightProblems(whole, words)).toEqual({});
  const made1 = toArrangement(whole, shippedSheets, null);
  expect(arrangement.safeParse(made1).success).toBe(true);
  expect(made1.startAt).toBe(new Date(2026, 8, 7, 18, 0).getTime());
  expect(made1.stations[0]).toMatchObject({
    id: 'wall-throw',
    sheet: { id: 'wall-throw', version: wallThrow.version },
  });
  expect(made1.people[0]).toMatchObject({ id: ana, from: null, until: new Date(2026, 8, 8, 0, 30).getTime() });
  expect(made1.people[1]).toMatchObject({ id: ben, from: new Date(2026, 8, 7, 19, 0).getTime(), until: null });
  expect(made1.mustNotJudge).toEqual([{ judge: ben, athlete: ana }]);
});

test('what is missing or wrong is named by its field', () => {
  const wrong = (part: Partial<NightEntry>) => nightProblems({ ...whole, ...part }, words);
  expect(wrong({ name: ' ' })).toEqual({ name: words.nameMissing });
  expect(wrong({ date: '' })).toMatchObject({ date: words.dateMissing });
  expect(wrong({ start: '' })).toMatchObject({ start: words.startMissing });
  expect(wrong({ lanes: 2.5 })).toEqual({ lanes: words.wholeFigure(1, 32) });
  expect(wrong({ heatMinutes: null })).toEqual({ heatMinutes: words.figure(1, 240) });
  expect(wrong({ stations: [] })).toEqual({ stations: words.stationMissing });
  const station = { ...stationFor(wallThrow), kind: 'reps' as const, amount: 0.5, loadKg: 501 };
  expect(wrong({ stations: [station] })).toEqual({ 'amount 0': words.amounts.reps, 'load 0': words.figure(0, 500) });
  expect(wrong({ parts: {} })).toEqual({ people: words.athleteMissing });
  expect(wrong({ parts: { [ana]: { ...noPart, athlete: true } } })).toEqual({ people: words.judgeMissing });
  const late = { ...noPart, athlete: true, judge: true, from: '20:00', until: '19:30' };
  expect(wrong({ parts: { [ana]: late } })).toEqual({ [`times ${ana}`]: words.timesWrong });
  expect(wrong({ pairs: [{ judge: ana, athlete: ana }] })).toEqual({ pairs: words.pairOfOne });
});

test('times are those of the gym; leaving before the start is leaving after midnight', () => {
  expect(timeOf('2026-09-07', 'noon')).toBeNull();
  expect(timeOf('7.9.2026', '18:00')).toBeNull();
  const eve = { date: '2026-12-31', start: '20:00' };
  expect(leaving(eve, '')).toBeNull();
  expect(leaving(eve, '22:15')).toBe(new Date(2026, 11, 31, 22, 15).getTime());
  expect(leaving(eve, '01:00')).toBe(new Date(2027, 0, 1, 1, 0).getTime());
});

test('a sheet used twice makes two stations with names of their own', () => {
  const stations = [stationFor(wallThrow), stationFor(wallThrow)];
  const made2 = toArrangement({ ...whole, stations }, shippedSheets, null);
  expect(made2.stations.map(({ id }) => id)).toEqual(['wall-throw', 'wall-throw-2']);
});

test('everybody takes the part that they have under People, and times typed already stay', () => {
  const base = { name: 'x', nickname: '', notes: '', archivedAt: null, createdAt: 1 };
  const next = everybody(whole, [{ ...base, id: ben, athlete: true, judge: false }]);
  expect(next.parts[ben]).toEqual({ athlete: true, judge: false, from: '19:00', until: '' });
  expect(next.parts[ana]).toEqual(whole.parts[ana]);
});

test('an arrangement goes through the form unchanged, with what the form does not show', () => {
  const plain = toArrangement(whole, shippedSheets, null);
  const held = {
    ...plain,
    mostHeats: 9,
    lanes: plain.lanes.map((lane) => ({ ...lane, name: 'Window', stations: ['wall-throw'] })),
    stations: plain.stations.map((station) => ({
      ...station,
      before: 'run' as const,
      sheet: { ...station.sheet, version: 7 },
    })),
    people: plain.people.map((person) => ({ ...person, own: { 'wall-throw': { loadKg: 4, heightM: null } } })),
  };
  const entry = entryOf(night, held);
  expect(nightProblems(entry, words)).toEqual({});
  expect(toArrangement(entry, shippedSheets, held)).toEqual(held);
  const fewer = toArrangement({ ...entry, stations: [] }, shippedSheets, held);
  expect(fewer.lanes.map(({ stations }) => stations)).toEqual([[], []]);
});
