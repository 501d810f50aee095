// One set of a hundred throws at race pace, whose every figure can be computed by hand.

/**
 * What the judge does and how long after the deed before, milliseconds. `keep` are deeds that decide nothing: they only
 * take time. Every attempt takes 2.000 s, a no-rep called at once 3.000 s.
 */
export type Deed =
  | { readonly wait: number; readonly do: 'count' | 'caution' | 'no-rep-later' | 'reverse' | 'slip' | 'break' }
  | { readonly wait: number; readonly do: 'fault'; readonly fault: Fault }
  | { readonly wait: number; readonly do: 'explain'; readonly fault: Fault }
  | { readonly wait: number; readonly do: 'reload' };

/** Names as they stand on the shipped wall throw sheet. */
export const faults = {
  line: 'Below the line',
  aim: 'Beside the target',
  stand: 'Not standing tall',
  depth: 'Not deep enough',
  bounce: 'Off the bounce',
} as const;
export type Fault = keyof typeof faults;

const clean = 2_000;
const noRep = 3_000;

function counted(times: number): Deed[] {
  return Array.from({ length: times }, () => ({ wait: clean, do: 'count' }) as const);
}

/**
 * The set. 108 attempts stand: 100 counted, two of them with caution, and 8 no-reps (depth 3, line 2 in one run, aim,
 * stand named afterwards, bounce by a reversal); beside them one slip, one break of 10 s, one reload.
 */
export const race: readonly Deed[] = [
  { wait: 3_000, do: 'count' }, // 1
  ...counted(11), // 12
  { wait: noRep, do: 'fault', fault: 'depth' },
  ...counted(10), // 22
  { wait: noRep, do: 'fault', fault: 'line' },
  { wait: noRep, do: 'fault', fault: 'line' },
  ...counted(8), // 30
  { wait: clean, do: 'caution' }, // 31
  ...counted(4), // 35
  // A press by mistake 0.7 s after a rep, taken back 0.3 s later; the next rep comes 2 s after the last one all the same.
  { wait: 700, do: 'count' },
  { wait: 300, do: 'slip' },
  { wait: 1_000, do: 'count' }, // 36
  ...counted(9), // 45
  { wait: noRep, do: 'no-rep-later' },
  ...counted(1), // 46
  // Named while the set runs on: 0.5 s after a rep, and the next rep 1.5 s later.
  { wait: 500, do: 'explain', fault: 'stand' },
  { wait: 1_500, do: 'count' }, // 47
  ...counted(5), // 52
  { wait: 400, do: 'reload' },
  { wait: 1_600, do: 'count' }, // 53
  ...counted(7), // 60
  { wait: 500, do: 'break' },
  { wait: 10_000, do: 'break' },
  { wait: 1_500, do: 'count' }, // 61
  ...counted(9), // 70
  { wait: noRep, do: 'fault', fault: 'aim' },
  ...counted(6), // 76
  { wait: clean, do: 'caution' }, // 77
  ...counted(4), // 81, turned into a no-rep 0.6 s later and named 0.4 s after that: 80 are left
  { wait: 600, do: 'reverse' },
  { wait: 400, do: 'explain', fault: 'bounce' },
  { wait: 1_000, do: 'count' }, // 81
  ...counted(9), // 90
  { wait: noRep, do: 'fault', fault: 'depth' },
  ...counted(5), // 95
  { wait: noRep, do: 'fault', fault: 'depth' },
  ...counted(5), // 100
];

/**
 * By hand, from the list above.
 *
 * Clock: the first attempt at 3.0 s, then 107 more at 2.0 s each = 214.0 s, 1.0 s more for each of the 7 no-reps called at
 * once, 10.0 s of break: 3 + 214 + 7 + 10 = 234.0 s = 3:54.0.
 *
 * Cost: every clean cycle is 2.0 s, so a clean rep's time is 2.0 s everywhere. A single no-rep called at once lies between
 * two counted reps 5.0 s apart: 5 - 2 = 3.0 s, of it 2.0 s repeat and 1.0 s disruption. The two in a row: 8 - 2 = 6.0 s, of
 * it 4.0 s and 2.0 s. The reversed one: 4 - 2 = 2.0 s, all of it repeat. In all 5 x 3 + 6 + 2 = 23.0 s: 16.0 s repeat and
 * 7.0 s disruption. By fault: depth 9.0 s, line 6.0 s, aim 3.0 s, stand 3.0 s, bounce 2.0 s; depth is 9 / 23 = 39 %.
 *
 * Ledger: start 3.0 s, break 10.0 s, no-reps 23.0 s, work 99 x 2.0 = 198.0 s; 3 + 10 + 23 + 198 = 234.
 *
 * Rate: 8 of 108 = 7.4 %; Wilson's interval (1927) at 95 %, z = 1.959964: centre (0.074074 + 0.017785) / 1.035569 =
 * 0.088704, half-width 1.959964 x 0.026784 / 1.035569 = 0.050693, so 3.8 % to 13.9 %.
 */
export const byHand = {
  time: '3:54.0',
  counted: '100',
  cautions: '2 of them with caution',
  noReps: '8',
  rate: '7.4 % of attempts (3.8 to 13.9 %)',
  cost: '23.0 s',
  train: 'Train “Not deep enough” first: its 3 no-reps cost 9.0 s, 39 % of the time lost.',
  split: '16.0 s for the attempts done again, 7.0 s for the rest around them',
  reasons: [
    'Not deep enough 9.0 s',
    'Below the line 6.0 s',
    'Beside the target 3.0 s',
    'Not standing tall 3.0 s',
    'Off the bounce 2.0 s',
  ],
  ledger: { Work: '3:18.0', 'No-reps': '0:23.0', Breaks: '0:10.0', Start: '0:03.0' },
  history: '1 slip, 1 reversal, 0 lines without effect.',
} as const;
