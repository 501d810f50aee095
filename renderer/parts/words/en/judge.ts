import type { Before } from '../../../../shared-types/log/setup.ts';
import type { Formats } from '../formats.ts';
import { judgeFinishedWords } from './judge-finished.ts';
import { judgeLiveWords } from './judge-live.ts';
import { judgeSetupWords } from './judge-setup.ts';

/** The words of the Judge area: setting up, judging, the finished set, the list of sets. */
export function judgeWords(formats: Formats) {
  const { number, plural, metres, kilograms, duration } = formats;
  const before: Record<Before, string> = { fresh: 'Fresh', run: 'After a run', station: 'After another station' };
  return {
    title: 'Judge',
    before,
    practice: 'Practice',
    /** What a goal asks for, as one short phrase. `repsName` is the sheet's own word. */
    goal: {
      reps: (reps: number, repsName: string) => `${number(reps)} ${repsName}`,
      metres: (far: number) => metres(far, far % 1 === 0 ? 0 : 1),
      clock: (milliseconds: number) => duration(milliseconds, 0),
      open: 'Open end',
    },
    load: kilograms,
    height: (heightM: number) => metres(heightM),
    /** Load and height of a set: "6 kg at 2.70 m". */
    conditions: (loadKg: number | null, heightM: number | null) => {
      const load = loadKg === null ? '' : kilograms(loadKg);
      const height = heightM === null ? '' : metres(heightM);
      return load !== '' && height !== '' ? `${load} at ${height}` : load + height;
    },
    setup: judgeSetupWords(formats),
    live: judgeLiveWords(formats),
    finished: judgeFinishedWords(formats),
    sets: {
      title: 'Sets',
      help: {
        about: 'Every set that was judged, the latest first.',
        steps: [
          'Search by name, station or tag; the filters narrow further.',
          'Open a set to read it, put a call right, have it signed off.',
          'Export or print what the filters leave: CSV has a row an attempt, JSON the whole logs.',
        ],
      },
      intro: 'Every set judged here. Nothing is ever deleted; a correction is a further line in its log.',
      search: 'Search',
      searchHint: 'Athlete, judge, station or tag',
      filters: 'Filters',
      filtersInUse: (count: number) => `Filters, ${number(count)} in use`,
      athlete: 'Athlete',
      judge: 'Judge',
      station: 'Station',
      load: 'Load',
      came: 'Came from',
      tag: 'Tag',
      from: 'From',
      to: 'To',
      state: 'State',
      any: 'Any',
      phases: { ready: 'Not begun', running: 'Not ended', finished: 'Finished', abandoned: 'Abandoned' },
      unexplained: 'Only with no-reps to explain',
      practice: 'Practice sets',
      practiceChoice: { without: 'Leave out', with: 'Show too', only: 'Only these' },
      clear: 'Clear all filters',
      count: (total: number) => `${number(total)} ${plural(total, { one: 'set', other: 'sets' })}`,
      more: 'Show more',
      exportCsv: 'Attempts as CSV',
      exportJson: 'Logs as JSON',
      exported: (name: string) => `Saved as ${name}.`,
      empty: 'No set has been judged yet.',
      emptyHint: 'Judge the first one: it takes a name, a station and one press.',
      noMatch: 'No set matches these filters.',
      open: (athlete: string, station: string, day: string) => `Open the set of ${athlete}, ${station}, ${day}`,
      result: (counted: number, noReps: number) =>
        `${number(counted)} counted, ${number(noReps)} ${plural(noReps, { one: 'no-rep', other: 'no-reps' })}`,
      cost: (seconds: string) => `${seconds} lost`,
      costUnknown: 'cost not estimable',
      toExplain: (count: number) => `${number(count)} to explain`,
      judgedBy: (judge: string) => `judged by ${judge}`,
    },
  };
}
