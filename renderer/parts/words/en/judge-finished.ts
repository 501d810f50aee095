import type { Formats } from '../formats.ts';

/** A finished set: its answer, its evidence, what can still be put right. */
export function judgeFinishedWords(formats: Formats) {
  const { number, plural, seconds, metres, percent, duration } = formats;
  const noReps = (count: number): string => `${number(count)} ${plural(count, { one: 'no-rep', other: 'no-reps' })}`;
  const span = (low: number, high: number): string => `${number(low, 1)} to ${seconds(high)}`;
  return {
    title: (station: string, athlete: string) => `${station}, ${athlete}`,
    judgedBy: (judge: string) => `judged by ${judge}`,
    abandoned: 'Abandoned',
    abandonedWhy: (reason: string) => `Abandoned: ${reason}`,
    practice: 'Practice set: it stays out of every figure.',
    time: 'Time',
    result: 'Result',
    resultWith: (added: string) => `with ${added} added for no-reps`,
    counted: 'Counted',
    noReps: 'No-reps',
    cautions: (count: number) => `${number(count)} of them with caution`,
    rate: (share: number, low: number, high: number) =>
      `${percent(share, 1)} of attempts (${number(low * 100, 1)} to ${percent(high, 1)})`,
    metres: 'Distance',
    reached: (value: number) => metres(value, value % 1 === 0 ? 0 : 1),
    cost: 'Lost to no-reps',
    costWithin: (low: number, high: number) => `95 % interval ${span(low, high)}`,
    repsLost: (reps: number) =>
      `about ${number(reps, 1)} ${plural(Math.round(reps), { one: 'rep', other: 'reps' })} fewer`,
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
        probability >= 0.995
          ? 'That it costs most is as good as certain.'
          : `That it costs most is ${percent(probability)} likely on these figures.`,
      unsure: 'One set says little about which fault costs most.',
      clean: 'No no-rep in this set: nothing to train first, keep the standard.',
      none: 'No attempt was called.',
      explainFirst: 'Name the faults of the no-reps below, and this line says what to train first.',
      remedy: 'Remedy',
      cue: 'Cue',
    },
    explain: {
      title: (count: number) => `${noReps(count)} to explain`,
      hint: 'One press names the fault.',
      attempt: (attempt: number, at: string) => `Attempt ${number(attempt)} at ${at}`,
    },
    ribbonTitle: 'Every attempt',
    ribbonHint: 'One mark an attempt: its height is the time since the one before, an open notch is a no-rep.',
    reasonsTitle: 'Reasons, by time lost',
    reason: 'Fault',
    seconds: 'Time lost',
    howMany: 'No-reps',
    unexplained: 'Not explained',
    ledgerTitle: 'Where the clock went',
    ledger: {
      start: 'Start, to the first clean rep',
      work: 'Work',
      noRep: 'No-reps',
      break: 'Breaks',
      total: 'Clock',
    },
    costTitle: 'What each no-rep cost',
    costOf: (attempts: readonly number[]) =>
      attempts.length === 1
        ? `Attempt ${number(attempts[0] ?? 0)}`
        : `Attempts ${number(attempts[0] ?? 0)} to ${number(attempts.at(-1) ?? 0)}`,
    columns: { attempts: 'No-rep', faults: 'Fault', cost: 'Cost', repeat: 'Repeat', disruption: 'Disruption' },
    where: { start: 'before the first counted rep', within: '', end: 'after the last counted rep' },
    pause: (value: number) => `holds a pause of ${seconds(value)} that nobody marked as a break`,
    total: 'Set',
    secondsValue: (value: number) => seconds(value),
    within: (value: number, low: number, high: number) => `${seconds(value)} (${span(low, high)})`,
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
      appealed: 'Reversed calls count as what they were turned into; slips count as if they had not been pressed.',
    },
    attemptsTitle: 'All attempts',
    correct: {
      title: 'Put a call right',
      open: 'Put right',
      of: (attempt: number) => `Attempt ${number(attempt)}`,
      now: 'Stands as',
      turnInto: 'Turn into',
      reason: 'Reason',
      by: 'Decided by',
      save: 'Put right',
      hint: 'The first call stays in the log; this is written below it.',
      faults: 'Faults',
    },
    appeal: {
      title: 'Appeals',
      dispute: 'Dispute a call',
      disputeHint: 'The athlete disputes a call, the head judge answers.',
      which: 'Which attempt?',
      why: 'What the athlete says',
      lodge: 'Lodge the appeal',
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
      hint: 'The log in words: nothing in it is ever changed or deleted.',
      time: 'Clock',
      what: 'What',
      pad: 'Pad',
      withdrawn: 'withdrawn',
      clashTitle: 'Without effect',
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
      resume: 'Take the finish back and go on',
    },
    clockAt: (milliseconds: number) => duration(milliseconds, 1),
  };
}
