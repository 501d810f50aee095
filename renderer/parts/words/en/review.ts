import type { Formats } from '../formats.ts';
import { reviewAnswerWords } from './review-answer.ts';
import { reviewFigureWords } from './review-figures.ts';
import { reviewFilterWords } from './review-filters.ts';
import { reviewHowWords } from './review-how.ts';
import { reviewJudgeWords } from './review-judge.ts';
import { reviewPlanWords } from './review-plans.ts';

/** The words of the Review area. */
export function reviewWords(formats: Formats) {
  const { number, plural, percent } = formats;
  return {
    title: 'Review',
    home: {
      intro: 'Are no-reps getting rarer, which fault costs most, when does it happen, what will it cost on the day?',
      search: 'Find a person',
      athletes: 'Athletes',
      judges: 'Judges',
      gym: 'The whole gym',
      gymHead: 'Gym',
      noMatch: 'Nobody of that name has a set.',
      empty: 'There is nothing to review yet.',
      emptyText: 'Every set that is judged to its end is reviewed here. Judge the first one.',
      toJudge: 'Judge a set',
      sets: (count: number) => `${number(count)} ${plural(count, { one: 'set', other: 'sets' })}`,
      moreByTyping: (count: number) => `${number(count)} more: type a name to find them.`,
      rate: (share: number) => `${percent(share, 1)} no-reps`,
      last: (day: string) => `last ${day}`,
      help: {
        about: 'Review reads what many sets say together.',
        steps: [
          'Choose an athlete, a judge, or the whole gym.',
          'Narrow by station, time, load and what came before: the address keeps it.',
          'Read the answer first, then what to train, then the evidence.',
          'Press a point or a row to open the set behind it.',
        ],
      },
    },
    view: {
      back: 'Review',
      print: 'Print',
      csv: 'Figures as CSV',
      json: 'Figures as JSON',
      saved: (name: string) => `Saved as ${name}.`,
      compare: 'Compare',
      raceCard: 'Race card',
      subject: (name: string, station: string) => `${name}, ${station}`,
      help: {
        about: 'The answer first, with how sure it is; then what to train; then the evidence.',
        steps: [
          'Narrow by station, time, load, what came before, judge or tags.',
          'Point at a figure, or walk it with the arrow keys; Enter opens the set behind it.',
          'Every figure has its values as a table and says how it was computed.',
          'Print it on one page, or export the figures.',
        ],
      },
    },
    filters: reviewFilterWords(formats),
    answer: reviewAnswerWords(formats),
    figures: reviewFigureWords(formats),
    how: reviewHowWords(),
    plans: reviewPlanWords(formats),
    judge: reviewJudgeWords(formats),
  };
}
