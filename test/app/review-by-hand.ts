// What the Review area should show, summed anew from an exported file in as few lines as it takes: nothing here comes from
// the program's own sums, nor from its fold of a log.

interface Ref {
  readonly pad: string;
  readonly seq: number;
}

interface LoggedEvent extends Ref {
  readonly kind: string;
  readonly at: number;
  readonly verdict?: string;
  readonly faults?: readonly string[];
  readonly of?: Ref;
  readonly wallClock?: number;
}

export interface SetsFile {
  readonly people: readonly { readonly id: string; readonly name: string; readonly nickname: string }[];
  readonly sheets: readonly {
    readonly id: string;
    readonly version: number;
    readonly faults: readonly { readonly code: string; readonly name: string }[];
  }[];
  readonly sets: readonly {
    readonly setup: {
      readonly id: string;
      readonly athlete: string;
      readonly judge: string;
      readonly sheet: { readonly id: string };
      readonly before: string;
      readonly loadKg: number | null;
      readonly tags: readonly string[];
      readonly goal: { readonly kind: string; readonly reps?: number };
    };
    readonly events: readonly LoggedEvent[];
  }[];
}

export interface Attempt {
  readonly at: number;
  readonly verdict: string;
  readonly faults: readonly string[];
}

export interface SetByHand {
  readonly id: string;
  readonly setup: SetsFile['sets'][number]['setup'];
  /** Go, milliseconds since 1970 UTC; the clock, milliseconds. */
  readonly goAt: number;
  readonly clockMs: number;
  readonly attempts: readonly Attempt[];
  readonly counted: number;
  readonly noReps: number;
  readonly slips: number;
  readonly reversals: number;
  /** Breaks from their begin to their end, milliseconds since go. */
  readonly breaks: readonly (readonly [from: number, to: number])[];
  /** The judge ended every break; one that the next call ended holds a rep too. */
  readonly breaksEnded: boolean;
}

const key = (ref: Ref): string => `${ref.pad} ${ref.seq}`;

/** The ended sets of a file, oldest first. A correction made after the set has ended keeps its place by `seq`. */
export function setsByHand(file: SetsFile): readonly SetByHand[] {
  return file.sets
    .map(({ setup, events }) => setByHand(setup, events))
    .filter((set) => set !== null)
    .toSorted((a, b) => a.goAt - b.goAt);
}

function setByHand(setup: SetByHand['setup'], log: readonly LoggedEvent[]): SetByHand | null {
  const events = log.toSorted((a, b) => a.at - b.at || a.seq - b.seq);
  const slips = events.filter((event) => event.kind === 'slip');
  const withdrawn = new Set<string>();
  for (const slip of slips.toReversed()) if (slip.of && !withdrawn.has(key(slip))) withdrawn.add(key(slip.of));
  const standing = events.filter((event) => !withdrawn.has(key(event)));
  const go = standing.find((event) => event.kind === 'go');
  const end = standing.find((event) => event.kind === 'finish' || event.kind === 'abandon');
  if (go?.wallClock === undefined || end === undefined) return null;
  const words = (kind: string) => standing.filter((event) => event.kind === kind);
  const attempts = words('call').map((call): Attempt => {
    const about = (event: LoggedEvent) => event.of !== undefined && key(event.of) === key(call);
    const attempt = { at: call.at, verdict: call.verdict ?? '', faults: call.faults ?? [] };
    for (const word of standing.filter(about)) {
      if (word.kind === 'reverse') attempt.verdict = word.verdict ?? '';
      if (word.kind === 'reverse' || word.kind === 'explain') attempt.faults = word.faults ?? [];
    }
    return attempt;
  });
  const counted = attempts.filter((attempt) => attempt.verdict !== 'no-rep').length;
  return {
    id: setup.id,
    setup,
    goAt: go.wallClock,
    clockMs: end.at,
    attempts,
    counted,
    noReps: attempts.length - counted,
    slips: slips.filter((slip) => !withdrawn.has(key(slip))).length,
    reversals: words('reverse').length,
    breaksEnded: words('break-start').length === words('break-end').length,
    breaks: words('break-start').map((start) => {
      const ends = [...words('break-end'), ...words('call'), end]
        .map((event) => event.at)
        .filter((at) => at > start.at);
      return [start.at, Math.min(...ends)] as const;
    }),
  };
}

export function total(sets: readonly SetByHand[], of: (set: SetByHand) => number): number {
  return sets.reduce((sum, set) => sum + of(set), 0);
}

/** No-reps of attempts, in per cent as the screens write it: one decimal, a narrow gap before the sign. */
export function rateText(noReps: number, attempts: number): string {
  return `${((100 * noReps) / attempts).toFixed(1)} %`;
}

/** No-reps by fault, the commonest first; one with two faults is half for each, one without a fault is '' . */
export function reasonsByHand(sets: readonly SetByHand[]): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const attempt of sets.flatMap((set) => set.attempts)) {
    if (attempt.verdict !== 'no-rep') continue;
    const faults = attempt.faults.length === 0 ? [''] : attempt.faults;
    for (const fault of faults) found.set(fault, (found.get(fault) ?? 0) + 1 / faults.length);
  }
  return new Map([...found].sort(([, a], [, b]) => b - a));
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(middle)] ?? Number.NaN) + (sorted[Math.ceil(middle)] ?? Number.NaN)) / 2;
}

/** Seconds from counted rep to counted rep with neither a no-rep nor a break between. */
export function cleanCycles({ attempts, breaks }: SetByHand): readonly number[] {
  return attempts.slice(1).flatMap((attempt, index) => {
    const former = attempts[index];
    if (former === undefined || former.verdict === 'no-rep' || attempt.verdict === 'no-rep') return [];
    const rested = breaks.some(([from, to]) => from < attempt.at && to > former.at);
    return rested ? [] : [(attempt.at - former.at) / 1_000];
  });
}

/**
 * Seconds that the no-reps of a set cost, roughly: the time between the counted reps around each run of no-reps, less the
 * set's median clean cycle and the breaks. The program fits the clean cycle to the place in the set, so the two differ by
 * a few per cent, and runs at either end of a set are left out here.
 */
export function roughCost(set: SetByHand): number {
  const clean = median(cleanCycles(set));
  const counted = set.attempts.filter((attempt) => attempt.verdict !== 'no-rep');
  return counted.slice(1).reduce((sum, attempt, index) => {
    const from = counted[index]?.at ?? 0;
    const failed = set.attempts.some(({ at, verdict }) => verdict === 'no-rep' && at > from && at < attempt.at);
    if (!failed) return sum;
    const rested = set.breaks
      .map(([start, end]) => Math.max(0, Math.min(end, attempt.at) - Math.max(start, from)))
      .reduce((all, part) => all + part, 0);
    return sum + (attempt.at - from - rested) / 1_000 - clean;
  }, 0);
}

/** Wilson's score interval (Wilson 1927, Journal of the American Statistical Association 22:209-212), 0 to 1. */
export function wilson(count: number, of: number): readonly [low: number, high: number] {
  const z = 1.959964;
  const rate = count / of;
  const middle = rate + (z * z) / (2 * of);
  const half = z * Math.sqrt((rate * (1 - rate)) / of + (z * z) / (4 * of * of));
  return [(middle - half) / (1 + (z * z) / of), (middle + half) / (1 + (z * z) / of)];
}
