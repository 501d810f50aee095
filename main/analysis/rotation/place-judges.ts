import type { NightPlan } from '../../../shared-types/night/night.ts';
import { comparedGroups, judgePairs, pairKey } from '../../../shared-types/night/pairs.ts';
import type { RandomGenerator } from '../random/generator.ts';
import { matchAll } from './matching.ts';

/** Who competes and who is on duty in one heat; `judges` has one or two for every athlete. */
export interface Duty {
  readonly athletes: readonly string[];
  readonly judges: readonly string[];
}

/** The judges of each athlete of a heat, in the athletes' order. */
export type Placed = string[][];

/** Judges to athletes by Hall's theorem; `short`: athletes that have too few of these judges among them. */
export function placeHeat(
  duty: Duty,
  banned: ReadonlySet<string>,
): { readonly placed: Placed; readonly short: readonly string[] } {
  const each = duty.athletes.length === 0 ? 0 : Math.round(duty.judges.length / duty.athletes.length);
  const slots = duty.athletes.flatMap((athlete) => Array.from({ length: each }, () => athlete));
  const options = slots.map((athlete) =>
    [...duty.judges.keys()].filter((index) => !banned.has(`${duty.judges[index]} ${athlete}`)),
  );
  const { partner, short } = matchAll(options);
  const placed = duty.athletes.map((_, athlete) =>
    Array.from({ length: each }, (_slot, slot) => duty.judges[partner[athlete * each + slot] ?? -1] ?? ''),
  );
  return { placed, short: [...new Set(short.map((slot) => slots[slot] ?? ''))] };
}

/**
 * Mixes the pairs of two judges over the night: from a valid placing, exchanges of two judges of one heat (never against
 * `banned`) by simulated annealing (Kirkpatrick, Gelatt & Vecchi 1983), so that all judges hang together and no pair stands
 * together more often than it must. `past`: lanes of heats that have begun.
 */
export function mixPairs(
  duties: readonly Duty[],
  placed: Placed[],
  banned: ReadonlySet<string>,
  past: NightPlan,
  random: RandomGenerator,
): Placed[] {
  const mixer = new Mixer(duties, placed, banned, past);
  return mixer.run(random);
}

const STEPS_A_JUDGE = 400;
const APART = 1_000;

class Mixer {
  private readonly times = new Map<string, number>();
  private readonly heats: Placed[];
  private readonly duties: readonly Duty[];
  private readonly banned: ReadonlySet<string>;
  private readonly everyone: ReadonlySet<string>;
  private groups = 0;
  private squares = 0;
  private edgesChanged = false;

  constructor(duties: readonly Duty[], placed: readonly Placed[], banned: ReadonlySet<string>, past: NightPlan) {
    this.duties = duties;
    this.banned = banned;
    this.heats = placed.map((heat) => heat.map((lane) => [...lane]));
    const before = judgePairs(past);
    for (const { judges, times } of before) this.times.set(pairKey(...judges), times);
    for (const lane of this.heats.flat()) this.add(lane, 1);
    this.everyone = new Set([...before.flatMap(({ judges }) => judges), ...this.heats.flat(2)]);
    this.groups = this.countGroups();
  }

  run(random: RandomGenerator): Placed[] {
    const open = [...this.heats.keys()].filter((heat) => (this.heats[heat]?.length ?? 0) > 1);
    if (open.length === 0) return this.heats;
    const steps = STEPS_A_JUDGE * this.heats.flat(2).length;
    let cost = this.cost();
    let best = cost;
    let kept = this.copy();
    for (let step = 0; step < steps; step += 1) {
      const heat = open[Math.floor(random.uniform() * open.length)] ?? 0;
      const undo = this.exchange(heat, random);
      if (undo === null) continue;
      const next = this.cost();
      const heatOfSearch = 2 * (1 - step / steps) + 1e-9;
      if (next > cost && random.uniform() >= Math.exp((cost - next) / heatOfSearch)) {
        undo();
        continue;
      }
      cost = next;
      if (cost < best) {
        best = cost;
        kept = this.copy();
      }
    }
    return kept;
  }

  /** Exchanges two judges of two lanes of a heat; null where they must not change. */
  private exchange(heat: number, random: RandomGenerator): (() => void) | null {
    const lanes = this.heats[heat] ?? [];
    const one = Math.floor(random.uniform() * lanes.length);
    const other = (one + 1 + Math.floor(random.uniform() * (lanes.length - 1))) % lanes.length;
    const here = lanes[one];
    const there = lanes[other];
    const athletes = this.duties[heat]?.athletes ?? [];
    if (here === undefined || there === undefined) return null;
    const at = Math.floor(random.uniform() * here.length);
    const to = Math.floor(random.uniform() * there.length);
    const mine = here[at] ?? '';
    const theirs = there[to] ?? '';
    if (this.banned.has(`${mine} ${athletes[other]}`) || this.banned.has(`${theirs} ${athletes[one]}`)) return null;
    const groups = this.groups;
    const put = (first: string, second: string) => {
      this.add(here, -1);
      this.add(there, -1);
      here[at] = first;
      there[to] = second;
      this.add(here, 1);
      this.add(there, 1);
    };
    this.edgesChanged = false;
    put(theirs, mine);
    if (this.edgesChanged) this.groups = this.countGroups();
    return () => {
      put(mine, theirs);
      this.groups = groups;
    };
  }

  private add(lane: readonly string[], by: 1 | -1): void {
    const [one, other] = lane;
    if (one === undefined || other === undefined) return;
    const key = pairKey(one, other);
    const before = this.times.get(key) ?? 0;
    this.squares += (before + by) ** 2 - before ** 2;
    // Groups can only part where a pair vanishes, and only join where one is new and they are more than one.
    if (before + by === 0 || (before === 0 && this.groups > 1)) this.edgesChanged = true;
    if (before + by === 0) this.times.delete(key);
    else this.times.set(key, before + by);
  }

  private countGroups(): number {
    const pairs = [...this.times.keys()].map((key) => {
      const [one = '', other = ''] = key.split(' ');
      return { judges: [one, other] as const, times: 1 };
    });
    return comparedGroups(this.everyone, pairs).length;
  }

  /** Sum of squares favours even numbers; a group that cannot be compared with the rest outweighs any of it. */
  private cost(): number {
    return this.squares + APART * (this.groups - 1);
  }

  private copy(): Placed[] {
    return this.heats.map((heat) => heat.map((lane) => [...lane]));
  }
}
