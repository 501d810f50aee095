import type { Formats } from '../formats.ts';

interface Bounds {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** The words of a drill's result and of a judge's history: sentences first, figures after them. */
export function eyeResultWords({ number, plural, percent, seconds }: Formats) {
  const span = (text: (value: number) => string, { value, low, high }: Bounds): string =>
    `${text(value)} (${text(low)} to ${text(high)})`;
  const reps = (count: number): string => `${number(count)} ${plural(count, { one: 'rep', other: 'reps' })}`;
  return {
    title: (drill: string, station: string) => `${drill}, ${station}`,
    help: {
      about: 'What this drill says of the judge’s eye, in words first.',
      steps: [
        'The sentences say what you let through and what you take away, in the unit of each fault.',
        'Under them are the figures with their 95 % intervals; each says how it is computed.',
        'At the end stands every rep with its truth and your call; a rep can be looked at again.',
      ],
    },
    back: 'Train the eye',
    again: 'Once more',
    unfinished: 'This drill has not ended.',
    goOn: 'Go on with it',
    export: { csv: 'Reps as CSV', json: 'Log as JSON' },
    saved: (name: string) => `Saved as ${name}.`,
    practice: 'For practice: it stays out of the scores.',
    /** What is let through or taken away, and between which sizes the true one lies, 95 times in 100. */
    lets: (what: string, sure: string) => `You let through ${what} (${sure}).`,
    takes: (what: string, sure: string) => `You take away ${what} (${sure}).`,
    onLine: (fault: string) => `Your line for “${fault}” is where the sheet’s is.`,
    unclear: (fault: string, more: number) =>
      `“${fault}”: your line may be the sheet’s, but it is not known well enough; about ${reps(more)} more would tell.`,
    why: {
      'no-calls': (fault: string) => `“${fault}”: none of these reps was called.`,
      'one-kind': (fault: string) => `“${fault}”: the reps were all good or all bad, so nothing can be told.`,
      'few-calls': (fault: string) => `“${fault}”: too few calls to tell where your line is.`,
      'all-alike': (fault: string) => `“${fault}”: you called every rep the same way, so there is no line to find.`,
      'no-slope': (fault: string) =>
        `“${fault}”: your calls do not follow the size of the fault. Stand elsewhere, or look at the cue.`,
      'beyond-shown': (fault: string) => `“${fault}”: your line lies beyond what was shown.`,
    },
    sharp: (much: string) => `You see it to within ${much} (one standard deviation).`,
    rightOf: (right: number, of: number) => `${number(right)} of ${number(of)} called right`,
    fromPlace: { advised: 'from the advised place', poor: 'from the poor place', own: 'from where you walked' },
    counts: {
      hits: 'Faults called',
      hitsOf: (hits: number, of: number) => `${number(hits)} of ${number(of)}`,
      falseAlarms: 'Good reps taken away',
      dPrime: 'Sensitivity d′',
      criterion: 'Criterion c',
      reasons: 'Reasons right',
      reaction: 'Reaction',
      unanswered: 'Not called',
      extra: 'Calls without a rep',
      spoilt: 'Left out',
      cannotTell: 'can’t tell',
      rate: (bounds: Bounds) => span((value) => percent(value), bounds),
      plain: (bounds: Bounds) => span((value) => number(value, 2), bounds),
      early: (ms: number) => `${seconds(-ms / 1_000, 2)} early`,
      after: (ms: number) => seconds(ms / 1_000, 2),
      reactionSpan: (low: string, high: string) => `half of them between ${low} and ${high}`,
    },
    faultsTitle: 'Fault by fault',
    strictness: 'Strictness',
    precision: 'Precision',
    amount: (text: (value: number) => string, bounds: Bounds) => span(text, bounds),
    signed: (value: number, amount: string) => (value < 0 ? `−${amount}` : amount),
    told: 'Told from',
    trials: (count: number) => reps(count),
    curve: (fault: string) => `“${fault}”: how often you call a no-rep, by the margin`,
    curveX: (unit: string) => `Margin, ${unit} (below 0 is a no-rep)`,
    curveY: 'Called a no-rep',
    curveAt: (margin: string, share: string) => `At ${margin}, ${share} called a no-rep`,
    curveLabel: (fault: string, line: string) =>
      `Your calls for ${fault} against the margin: the curve crosses one half at ${line}.`,
    units: { cm: 'cm', ms: 'ms', degrees: 'degrees' },
    how: {
      detection:
        'Hits and false alarms are counted rep by rep. d′ and c use the log-linear correction of Hautus (1995); rates carry Wilson intervals.',
      line: 'Strictness is the margin at which half the reps are called a no-rep, precision the spread of what you see around what is there: a psychometric function, fitted by Bayes’ rule, with 95 % limits.',
      reaction: 'From the moment at which the verdict could be seen to your call; the median and the middle half.',
      place:
        'The same reps from both places: the difference of paired shares (Newcombe 1998) and McNemar’s exact test.',
    },
    gain: {
      title: 'What the place is worth',
      better: (poor: string, advised: string) =>
        `From the advised place you call ${advised} right, from the poor one ${poor}. Standing right is worth it.`,
      worse: (poor: string, advised: string) =>
        `Here you did better from the other place: ${poor} against ${advised} right. That is unusual; do it once more.`,
      unclear: (poor: string, advised: string) =>
        `From the advised place ${advised} right, from the poor one ${poor}. The difference may be chance.`,
      few: 'Too few reps were called from both places to compare them.',
      difference: 'Difference',
      sharper: (ratio: string) => `The advised place is ${ratio} times as sharp.`,
    },
    confusions: 'Wrong reasons',
    confusion: (truth: string, named: string, count: number) => `${truth}, named as ${named}: ${number(count)}`,
    noReason: 'no reason',
    trialsTitle: 'Every rep',
    trial: 'Rep',
    truth: 'Truth',
    call: 'Call',
    outcome: 'Outcome',
    good: 'good',
    outcomes: {
      hit: 'fault called',
      miss: 'fault missed',
      'false-alarm': 'good rep taken away',
      'correct-rejection': 'right',
      unanswered: 'not called',
      spoilt: 'left out',
    },
    margin: 'Margin',
    place: 'Place',
    lookAgain: 'Look at it again',
    clashes: 'Lines of the log without effect',
    history: {
      title: (judge: string, station: string) => `${judge}, ${station}`,
      help: {
        about: 'How one judge’s eye for one station has come along.',
        steps: [
          'Each fault has a sentence, its figures over all counted drills, and a picture over time.',
          'Choose another station above.',
        ],
      },
      none: 'No drill on this station yet.',
      over: (drills: number, trials: number) =>
        `${number(drills)} ${plural(drills, { one: 'drill', other: 'drills' })}, ${reps(trials)}.`,
      ready: 'Ready to judge this station.',
      notReady: 'Not ready yet for this station.',
      chart: (fault: string) => `“${fault}”: strictness over time`,
      chartY: (unit: string) => `Strictness, ${unit}`,
      chartX: 'Date',
      point: (day: string, value: string) => `${day}: ${value}`,
      station: 'Station',
    },
  };
}
