import type { DrillKind, PlaceName } from '../../../../shared-types/drills/drill.ts';
import type { MovementName } from '../../../../shared-types/motion/specification.ts';
import type { Formats } from '../formats.ts';
import { eyeDrillWords } from './eye-drill.ts';
import { eyeMarginWords } from './eye-margins.ts';
import { eyeReadyWords } from './eye-ready.ts';
import { eyeResultWords } from './eye-result.ts';

/** The words of Train the eye. */
export function eyeWords(formats: Formats) {
  const { number, plural } = formats;
  const kinds: Record<DrillKind, string> = {
    single: 'Single reps with feedback',
    stream: 'Live stream',
    line: 'Find your line',
    place: 'Place to stand',
  };
  const kindsAbout: Record<DrillKind, string> = {
    single: 'See one rep, call it, then see the truth: slowly, from the best place, with the margin drawn in.',
    stream: 'Twenty to sixty reps at race pace, faults unannounced, called as they come.',
    line: 'One fault. The reps come closer and closer to your own line, until it is known well enough.',
    place: 'The same reps from a poor place and from the advised one, mixed: what standing right is worth.',
  };
  const places: Record<PlaceName, string> = { advised: 'Advised place', poor: 'Poor place', own: 'Where you walked' };
  const movements: Record<MovementName, string> = {
    'wall-throw': 'An athlete squats with a ball and throws it at a line on the wall',
    'jump-burpee': 'An athlete drops to the floor, comes up and jumps forward along a lane',
    'box-jump-over': 'An athlete jumps onto a box and down on its other side',
  };
  return {
    title: 'Train the eye',
    intro:
      'A drawn athlete whose every centimetre is known. Call the reps as you would beside the lane, and learn how strict and how sharp your eye is.',
    seeing:
      'These drills are about seeing: a moving figure must be watched, and no words can stand in for it. Everything around them, choosing a drill, results, history, works with a screen reader.',
    kinds,
    kindsAbout,
    places,
    movements,
    help: {
      about: 'Here a judge learns to see a no-rep, and sees in centimetres how strict and how sharp that eye is.',
      steps: [
        'Say who is judging, and choose the station and the kind of drill.',
        'Begin with single reps: each is shown again with the truth drawn in.',
        'Then a live stream, at race pace and without a pause.',
        'Find your line tells how many centimetres you let through, and how sharply you see.',
        'Results and history stay with the judge; the gym sets what “ready to judge” means.',
      ],
    },
    setup: {
      judge: 'Who is judging?',
      addPerson: (name: string) => `Add ${name}`,
      noJudge: 'Say who is judging: the results stay with them.',
      station: 'Station',
      noStation: 'No sheet here has a movement that the figure can show.',
      height: 'Height',
      drill: 'Drill',
      faults: 'Faults that may come',
      allFaults: 'All of the sheet',
      fault: 'Fault',
      reps: 'Reps',
      repsEach: 'Reps, each shown twice',
      repsMost: 'It ends by itself, after at most',
      amount: (count: number) => number(count),
      size: 'How big are the faults?',
      sizes: { gross: 'Plain to see', usual: 'As they come', fine: 'Fine' },
      place: 'Begin from',
      pace: 'Pace',
      paces: { slow: 'Easy', usual: 'Race', fast: 'Fast' },
      practice: 'Only to learn the keys',
      practiceHint: 'Stays out of your scores.',
      more: 'More choices',
      start: 'Go to the drill',
    },
    home: {
      ready: 'Ready to judge',
      readyAll: 'Who is ready',
      latest: 'Latest drills',
      allDrills: 'All drills',
      history: 'Your history',
      noDrills: 'No drill yet. The first one takes about three minutes.',
      goOn: 'Go on',
      result: 'Result',
      unfinished: 'not ended',
      line: (right: number, called: number) => `${number(right)} of ${number(called)} called right`,
      practice: 'practice',
    },
    list: {
      title: 'Drills',
      intro: 'Every drill, the latest first. Each can be made again from its seed.',
      help: {
        about: 'All drills that were done here.',
        steps: [
          'Narrow them by judge, station and kind.',
          'Open one for its result.',
          'Export what the filters leave.',
        ],
      },
      judge: 'Judge',
      station: 'Station',
      kind: 'Drill',
      any: 'Any',
      practice: 'With practice',
      count: (total: number) => `${number(total)} ${plural(total, { one: 'drill', other: 'drills' })}`,
      more: 'Show more',
      empty: 'No drill fits.',
      csv: 'Reps as CSV',
      json: 'Logs as JSON',
      saved: (name: string) => `Saved as ${name}.`,
    },
    figure: {
      software: 'No graphics chip at work: a coarser picture, exact timing.',
      spare: 'This computer is busy: a coarser picture, exact timing.',
      nothing: 'This browser cannot draw in three dimensions (WebGL), so the drill cannot be shown here.',
    },
    margins: eyeMarginWords(formats),
    drill: eyeDrillWords(formats),
    result: eyeResultWords(formats),
    ready: eyeReadyWords(formats),
  };
}
