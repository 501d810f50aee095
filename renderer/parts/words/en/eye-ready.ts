import type { Formats } from '../formats.ts';

/** The words of "ready to judge": what a gym asks, and who is. */
export function eyeReadyWords({ number, plural }: Formats) {
  const reps = (count: number): string => `${number(count)} ${plural(count, { one: 'rep', other: 'reps' })}`;
  const measures = {
    'd-prime': 'sensitivity',
    criterion: 'bias',
    strictness: 'strictness',
    precision: 'precision',
  } as const;
  const named = (list: readonly (keyof typeof measures)[]): string => list.map((item) => measures[item]).join(', ');
  return {
    title: 'Ready to judge',
    intro: 'What this gym asks of a judge’s eye before they judge, and who has shown it.',
    help: {
      about: 'A gym sets its own bounds; nothing here is an official licence.',
      steps: [
        'Change the bounds: an empty field asks nothing.',
        'The list shows at once who would be ready under them; saving makes them the gym’s.',
      ],
    },
    who: 'Who is ready',
    nobody: 'Nobody has done a drill yet.',
    ready: 'Ready',
    notReady: 'Not ready',
    verdicts: {
      ready: 'ready',
      'not-ready': (list: readonly (keyof typeof measures)[]) => `not ready: ${named(list)}`,
      unclear: (list: readonly (keyof typeof measures)[]) => `cannot be told yet: ${named(list)}`,
      'too-few': (needed: number) => `${reps(needed)} still needed`,
      'not-asked': 'not asked',
    },
    trials: (count: number) => reps(count),
    last: (day: string) => `last drill ${day}`,
    history: (judge: string, station: string) => `History of ${judge}, ${station}`,
    bounds: 'What is asked',
    leastTrials: 'Least reps called, each fault',
    days: 'Drills older than this many days say nothing',
    by: 'A bound is kept when',
    byChoice: { estimate: 'the estimate keeps it', interval: 'its whole 95 % interval does' },
    units: {
      cm: 'Faults measured in centimetres',
      ms: 'Faults measured in milliseconds',
      degrees: 'Faults measured in degrees',
    },
    leastDPrime: 'Least sensitivity d′',
    mostCriterion: 'Most bias c, either way',
    mostStrictness: 'Strictness within',
    mostPrecision: 'Precision at most',
    save: 'Make these the gym’s bounds',
    saved: 'The bounds are saved.',
    usual: 'Back to the usual ones',
    short: {
      none: 'No drill yet on this station.',
      ready: 'Ready to judge this station.',
      notReady: 'Not ready yet.',
    },
  };
}
