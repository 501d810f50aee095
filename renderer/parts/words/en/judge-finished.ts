import type { Formats } from '../formats.ts';

/** A finished set: its answer, its evidence, what can still be put right. */
export function judgeFinishedWords(formats: Formats) {
  const { number, plain, plural, seconds, metres, percent, duration } = formats;
  /** A no-rep with two faults counts half for each: such a figure is a fraction. */
  const noReps = (count: number): string => `${plain(count)} ${plural(count, { one: 'no-rep', other: 'no-reps' })}`;
  const span = (low: number, high: number): string => `${number(low, 1)} to ${seconds(high)}`;
  return {
    title: (station: string, athlete: string) => `${station}, ${athlete}`,
    judgedBy: (judge: string) => `judged by ${judge}`,
    abandoned: 'Abandoned',
    abandonedWhy: (reason: string) => `Abandoned: ${reason}`,
    help: {
      about: 'What the set says: the answer first, then the evidence.',
      steps: [
        'Name the faults of no-reps that have none yet: one press each.',
        'Read what to train first, what the no-reps cost, and how sure that is.',
        'Pick a mark of the ribbon to put a call right; the first call stays in the log.',
        'The athlete signs off, or disputes a call, which the head judge answers.',
        'Print it on one page, or export it.',
      ],
    },
    practice: 'Practice set: it stays out of every figure.',
    time: 'Time',
    result: 'Result',
    resultWith: (clock: string, added: string) => `${clock} on the clock, ${added} added for no-reps`,
    counted: 'Counted',
    noReps: 'No-reps',
    cautions: (count: number) => `${number(count)} of them with caution`,
    rate: (share: number, low: number, high: number) =>
      `${percent(share, 1)} of attempts (${number(low * 100, 1)} to ${percent(high, 1)})`,
    metres: 'Distance',
    reached: (value: number) => metres(value, value % 1 === 0 ? 0 : 1),
    cost: 'Lost to no-reps',
    costWithin: (low: number, high: number) => `95 % interval ${span(low, high)}`,
    repsLost: (reps: number, low: number, high: number) =>
      `about ${number(reps, 1)} reps fewer (${number(low, 1)} to ${number(high, 1)})`,
    notEstimable: 'Not estimable',
    notEstimableWhy:
      'There are fewer than three clean cycles in this set and no earlier sets of this athlete to compare with.',
    sentence: {
      /** One sentence: what to train first, and why. */
      train: (fault: string, count: number, lost: number | null, share: number) =>
        lost === null
          ? `Train “${fault}” first: it made ${noReps(count)}, ${percent(share)} of them all.`
          : `Train “${fault}” first: its ${noReps(count)} cost ${seconds(lost)}, ${percent(share)} of the time lost.`,
      sure: (probability: number) =>
        probability < 0.6
          ? `These figures hardly tell it from the others: ${percent(probability)} likely to cost most.`
          : probability >= 0.995
            ? 'That it costs most is as good as certain.'
            : `That it costs most is ${percent(probability)} likely on these figures.`,
      unsure: 'One set says little about which fault costs most.',
      clean: 'No no-rep in this set: nothing to train first, keep the standard.',
      none: 'No attempt was called.',
      explainFirst: 'Name the faults of the no-reps below, and this line says what to train first.',
      remedy: 'Remedy',
      cue: (cue: string) => `Cue: “${cue}”`,
    },
    explain: {
      title: (count: number) => `${noReps(count)} to explain`,
      attempt: (attempt: number, at: string) => `Attempt ${number(attempt)} at ${at}`,
    },
    ribbonTitle: 'Every attempt',
    reasonsTitle: 'Reasons, by time lost',
    howMany: noReps,
    unexplained: 'Not explained',
    ledgerTitle: (clock: string) => `Where the ${clock} went`,
    costTitle: 'What each no-rep cost',
    costCaption: 'No-reps with their cost, its repeat and its disruption',
    costOf: (attempts: readonly number[]) =>
      attempts.length === 1
        ? `Attempt ${number(attempts[0] ?? 0)}`
        : `Attempts ${number(attempts[0] ?? 0)} to ${number(attempts.at(-1) ?? 0)}`,
    columns: { attempts: 'No-rep', cost: 'Cost', repeat: 'Repeat', disruption: 'Disruption' },
    where: { start: 'before the first counted rep', end: 'after the last counted rep' },
    pause: (value: number) => `holds a pause of ${seconds(value)} that nobody marked as a break`,
    flags: {
      'unmarked-break-end': 'a break was ended by the next call, not by the judge',
      'below-zero': 'faster than a clean rep would have been',
      'set-running': 'the set had not ended',
      'metres-unknown': 'the metres taken back cannot be timed without marks',
      'no-counted-rep': 'no counted rep to measure from',
    },
    costSentence: (
      total: { value: number; low: number; high: number },
      repeat: number | null,
      disruption: number | null,
    ) =>
      [
        `The no-reps of this set cost ${seconds(total.value)} (${span(total.low, total.high)})`,
        repeat === null || disruption === null
          ? ''
          : `: ${seconds(repeat)} for the attempts done again, ${seconds(disruption)} for the rest around them`,
        '.',
      ].join(''),
    secondsValue: (value: number) => seconds(value),
    spanValue: span,
    how: {
      title: 'How is this computed?',
      methods: {
        'local-fit': (cycles: number) =>
          `A clean rep’s time at each point of the set is a robust local fit (LOWESS) through its ${number(cycles)} clean cycles.`,
        median: (cycles: number) =>
          `The set has only ${number(cycles)} clean ${plural(cycles, { one: 'cycle', other: 'cycles' })}, so a clean rep’s time is their median.`,
        history: () =>
          'The set has too few clean cycles, so a clean rep’s time is the median of the athlete’s own earlier sets here at this load.',
        'not-estimable': () =>
          'The set has fewer than three clean cycles and the athlete no earlier sets here at this load: what a no-rep cost cannot be told. It is not nought.',
      },
      cost: 'A run of no-reps costs the time between the two counted reps around it, less what a clean rep would have taken there, less the breaks marked. “Repeat” is the attempts that did not count, at most one clean rep each; “disruption” is the rest.',
      interval:
        'The intervals hold the true figure 95 times in 100: Wilson’s for the rate, a block bootstrap with a fixed seed for the seconds.',
      ledger: 'Each millisecond from go to finish stands on exactly one line; the lines add up to the clock.',
      shared: 'A no-rep with two faults counts half for each of them.',
      corrected: 'Reversed calls count as what they were turned into; slips as if they had not been pressed.',
    },
    correct: {
      title: 'Put a call right',
      open: 'Put a call right',
      which: 'Attempt',
      of: (attempt: number) => `Attempt ${number(attempt)}`,
      attempt: (attempt: number | null, at: string, how: string, faults: string) =>
        `${attempt === null ? '' : `${number(attempt)}, `}${at}, ${how}${faults === '' ? '' : `: ${faults}`}`,
      turnInto: 'Stands as',
      standings: {
        counted: 'Counted',
        caution: 'Counted, with caution',
        'no-rep': 'No-rep',
        withdrawn: 'No attempt: pressed by mistake',
      },
      faults: 'Faults',
      reason: 'Reason',
      by: 'Decided by',
      ownJudge: (name: string) => `${name}, judge of this set`,
      save: 'Put right',
      hint: 'The first call stays in the log; this is written below it.',
    },
    appeal: {
      title: 'Appeals',
      dispute: 'Dispute a call',
      disputeHint: 'The athlete disputes a call, the head judge answers.',
      why: 'What the athlete says',
      lodge: 'Lodge the appeal',
      of: (attempt: number) => (attempt === 0 ? 'A withdrawn attempt' : `Attempt ${number(attempt)}`),
      open: 'waits for the head judge',
      upheld: 'upheld, the call is changed',
      refused: 'refused, the call stands',
      answer: 'Head judge’s answer',
      headJudge: 'Head judge',
      uphold: 'Uphold and change the call',
      refuse: 'Refuse, the call stands',
      because: 'Reason',
      newCall: 'The call becomes',
    },
    signOff: {
      title: 'Athlete’s sign-off',
      hint: 'The athlete has seen the figures. Appeals stay possible.',
      sign: (name: string) => `${name} signs off`,
      signed: (name: string, when: string) => `Signed off by ${name}, ${when}`,
      line: 'Athlete',
      judgeLine: 'Judge',
    },
    history: {
      title: 'History of this set',
      tally: (slips: number, reversals: number, clashes: number) =>
        `${number(slips)} ${plural(slips, { one: 'slip', other: 'slips' })}, ${number(reversals)} ${plural(reversals, { one: 'reversal', other: 'reversals' })}, ${number(clashes)} ${plural(clashes, { one: 'line', other: 'lines' })} without effect. Nothing in the log is ever changed or deleted.`,
      show: (lines: number) => `The log in words, ${number(lines)} ${plural(lines, { one: 'line', other: 'lines' })}`,
      withdrawn: 'withdrawn',
      withdrawnLater: 'Withdrawn later.',
      say: {
        go: (when: string) => `Go, ${when}`,
        call: (attempt: number | null, verdict: string, fault: string) =>
          `${attempt === null ? '' : `Attempt ${number(attempt)}: `}${verdict}${fault === '' ? '' : `, ${fault}`}`,
        explain: (of: string, fault: string) => `${of} explained: ${fault}`,
        reverse: (of: string, verdict: string, fault: string, by: string, reason: string) =>
          `${of} turned into ${verdict}${fault === '' ? '' : `, ${fault}`}${by === '' ? '' : `, by ${by}`}${reason === '' ? '' : `: ${reason}`}`,
        slip: (of: string) => `Slip: ${of} withdrawn`,
        unslip: (of: string) => `Put back: ${of}`,
        breakStart: 'Break begins',
        breakEnd: 'Break ends',
        mark: (value: string) => `${value} reached`,
        finish: 'Finish',
        abandon: (reason: string) => (reason === '' ? 'Abandoned' : `Abandoned: ${reason}`),
        signOff: (name: string) => `Signed off by ${name}`,
        appealOpen: (of: string, reason: string) => `Appeal against ${of}${reason === '' ? '' : `: ${reason}`}`,
        appealUpheld: (of: string, by: string) => `Appeal against ${of} upheld${by === '' ? '' : ` by ${by}`}`,
        appealRefused: (of: string, by: string, reason: string) =>
          `Appeal against ${of} refused${by === '' ? '' : ` by ${by}`}${reason === '' ? '' : `: ${reason}`}`,
        attempt: (attempt: number | null) => (attempt === null ? 'a withdrawn attempt' : `attempt ${number(attempt)}`),
        verdicts: { counted: 'counted', 'no-rep': 'no-rep', caution: 'counted with caution' },
      },
    },
    actions: {
      again: 'Same set again',
      csv: 'Attempts as CSV',
      json: 'Log as JSON',
      print: 'Print',
      all: 'All sets',
    },
    clockAt: (milliseconds: number) => duration(milliseconds, 1),
  };
}
