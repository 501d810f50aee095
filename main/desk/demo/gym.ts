import type { AthleteModel, FaultModel, JudgeModel } from '../../analysis/simulator/models.ts';

/** The people of an invented gym, Harbour Shed, and how they move and judge. Any likeness is chance. */
export interface DemoAthlete {
  readonly name: string;
  readonly nickname: string;
  /** Seconds of a clean throw when fresh, and of a clean jump burpee. */
  readonly throwS: number;
  readonly jumpS: number;
  readonly metresPerJump: number;
  /** No-reps of attempts at the beginning of the two months, and what is left of that rate at their end. */
  readonly rate: number;
  readonly keeps: number;
  /** Faults by weight; the first is the athlete's own worst. */
  readonly throwFaults: readonly (readonly [fault: string, weight: number])[];
  readonly jumpFaults: readonly (readonly [fault: string, weight: number])[];
  readonly fade: number;
  readonly fastStart: number;
  readonly loadKg: number;
  readonly lineM: number;
  /** Sets a week at each station. */
  readonly throwsAWeek: number;
  readonly jumpsAWeek: number;
}

const usual = {
  nickname: '',
  metresPerJump: 1.7,
  keeps: 0.5,
  fade: 0.12,
  fastStart: 0.06,
  loadKg: 6,
  lineM: 2.7,
  throwsAWeek: 1.5,
  jumpsAWeek: 0.7,
} as const;

const depth = [
  ['depth', 3],
  ['line', 1],
  ['stand', 1],
] as const;
const line = [
  ['line', 3],
  ['aim', 1],
  ['depth', 1],
] as const;
const mixed = [
  ['stand', 2],
  ['depth', 2],
  ['line', 1],
  ['bounce', 0.5],
] as const;
const creep = [
  ['creep', 3],
  ['off', 1],
  ['chest', 1],
] as const;
const hands = [
  ['hands', 3],
  ['over', 1],
  ['on', 1],
  ['start', 0.2],
] as const;

export const demoAthletes: readonly DemoAthlete[] = [
  {
    ...usual,
    name: 'Ines Marrow',
    throwS: 2.2,
    jumpS: 4.1,
    rate: 0.13,
    keeps: 0.3,
    throwFaults: depth,
    jumpFaults: creep,
    throwsAWeek: 2.5,
    jumpsAWeek: 1,
  },
  {
    ...usual,
    name: 'Odo Fennick',
    nickname: 'Fen',
    throwS: 2.5,
    jumpS: 4.8,
    rate: 0.1,
    throwFaults: line,
    jumpFaults: hands,
    loadKg: 9,
    lineM: 3.05,
  },
  {
    ...usual,
    name: 'Carys Holloway-Venn',
    throwS: 2.1,
    jumpS: 3.9,
    rate: 0.05,
    throwFaults: mixed,
    jumpFaults: creep,
    fastStart: 0.02,
  },
  {
    ...usual,
    name: 'Bram Tolliver',
    throwS: 2.7,
    jumpS: 5.2,
    rate: 0.18,
    keeps: 0.7,
    throwFaults: depth,
    jumpFaults: hands,
    fade: 0.25,
    fastStart: 0.14,
    loadKg: 9,
    lineM: 3.05,
  },
  {
    ...usual,
    name: 'Mirela Dusk',
    throwS: 2.3,
    jumpS: 4.3,
    rate: 0.07,
    throwFaults: line,
    jumpFaults: creep,
    loadKg: 4,
  },
  {
    ...usual,
    name: 'Yusuf Karras',
    throwS: 2.4,
    jumpS: 4.4,
    rate: 0.09,
    keeps: 1,
    throwFaults: mixed,
    jumpFaults: hands,
    loadKg: 9,
    lineM: 3.05,
  },
  {
    ...usual,
    name: 'Petra Longfield',
    throwS: 2.6,
    jumpS: 5,
    rate: 0.15,
    keeps: 0.4,
    throwFaults: line,
    jumpFaults: creep,
    fade: 0.2,
  },
  {
    ...usual,
    name: 'Sol Abernathy',
    throwS: 2.2,
    jumpS: 4,
    rate: 0.06,
    throwFaults: depth,
    jumpFaults: hands,
    throwsAWeek: 1,
  },
  {
    ...usual,
    name: 'Ngaio Pell',
    throwS: 2.35,
    jumpS: 4.6,
    rate: 0.11,
    throwFaults: mixed,
    jumpFaults: creep,
    jumpsAWeek: 1.2,
  },
  {
    ...usual,
    name: 'Henrik Oss',
    throwS: 2.5,
    jumpS: 4.7,
    rate: 0.08,
    keeps: 1.3,
    throwFaults: depth,
    jumpFaults: hands,
    loadKg: 9,
    lineM: 3.05,
  },
  {
    ...usual,
    name: 'Leonor Vass',
    throwS: 2.3,
    jumpS: 4.2,
    rate: 0.12,
    throwFaults: line,
    jumpFaults: creep,
    throwsAWeek: 1,
  },
  {
    ...usual,
    name: 'Tam Whitlock',
    throwS: 2.8,
    jumpS: 5.4,
    rate: 0.2,
    keeps: 0.6,
    throwFaults: mixed,
    jumpFaults: hands,
    fade: 0.3,
    fastStart: 0.1,
    throwsAWeek: 1,
  },
];

const attentive: JudgeModel = {
  lenience: 0.06,
  severity: 0.004,
  lag: 180,
  jitter: 60,
  caution: 0.02,
  slip: 0.002,
  reversal: 0.01,
  wordless: 0.05,
  forgetsBreakEnd: 0.1,
};

export const demoJudges: readonly { readonly name: string; readonly model: JudgeModel }[] = [
  { name: 'Tobias Quill', model: attentive },
  { name: 'Wanda Strick', model: { ...attentive, lenience: 0.01, severity: 0.02, caution: 0.04 } },
  { name: 'Milo Hart', model: { ...attentive, lenience: 0.35, severity: 0.001, wordless: 0.15 } },
  { name: 'Adaeze Brook', model: { ...attentive, jitter: 120, slip: 0.01, reversal: 0.03 } },
];

/** How an athlete moves at a station `weeks` weeks into the demonstration, of `allWeeks`. */
export function movesAt(athlete: DemoAthlete, station: 'throw' | 'jump', share: number): AthleteModel {
  const faults = station === 'throw' ? athlete.throwFaults : athlete.jumpFaults;
  const rate = athlete.rate * athlete.keeps ** share;
  const sum = faults.reduce((total, [, weight]) => total + weight, 0);
  const cycle = station === 'throw' ? athlete.throwS : athlete.jumpS;
  return {
    pace: {
      // Those who learn to move well also get a little quicker.
      cycle: cycle * (1 - 0.05 * share),
      fade: athlete.fade,
      fastStart: athlete.fastStart,
      noise: 0.06,
      autocorrelation: 0.3,
      rhythm: { share: 0.02, period: 5 },
    },
    faults: faults.map(([fault, weight]) => faultModel(fault, (rate * weight) / sum)),
    breaks: {
      every: { mean: station === 'throw' ? 35 : 18, deviation: 8 },
      seconds: { mean: 6, deviation: 2 },
      recovery: 0.3,
    },
    start: { mean: cycle + 0.8, deviation: 0.3 },
    pause: { chance: 0.004, seconds: { mean: 3, deviation: 1 } },
    metresPerJump: station === 'jump' ? { mean: athlete.metresPerJump, deviation: 0.15 } : { mean: 0, deviation: 0 },
  };
}

/** Depth costs a whole rep and a reset; a low ball is over sooner. */
function faultModel(fault: string, rate: number): FaultModel {
  const isDear = fault === 'depth' || fault === 'chest' || fault === 'bounce';
  return {
    fault,
    rate,
    fatigue: fault === 'depth' || fault === 'line' ? 1 : 0.5,
    hurry: 0.25,
    attempt: isDear ? 1 : 0.9,
    reset: { mean: isDear ? 1.6 : 0.8, deviation: 0.6 },
  };
}
