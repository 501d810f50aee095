import type { NightPlan } from './night.ts';

/** Two judges on one lane, whichever of them is the main judge. */
export interface JudgePair {
  readonly judges: readonly [string, string];
  readonly times: number;
}

export function pairKey(one: string, other: string): string {
  return one < other ? `${one} ${other}` : `${other} ${one}`;
}

/** How often each two judges stand on one lane, in the order of their first time. */
export function judgePairs(heats: NightPlan): JudgePair[] {
  const times = new Map<string, JudgePair>();
  for (const { judge, shadow } of heats.flat()) {
    if (shadow === null) continue;
    const key = pairKey(judge, shadow);
    const judges: readonly [string, string] = times.get(key)?.judges ?? [judge, shadow];
    times.set(key, { judges, times: (times.get(key)?.times ?? 0) + 1 });
  }
  return [...times.values()];
}

/** How many heats each judges, as main judge or as shadow. */
export function judgeLoads(heats: NightPlan): Map<string, number> {
  const loads = new Map<string, number>();
  for (const { judge, shadow } of heats.flat()) {
    for (const id of shadow === null ? [judge] : [judge, shadow]) loads.set(id, (loads.get(id) ?? 0) + 1);
  }
  return loads;
}

/**
 * Groups of judges that can be compared with each other, directly or over others: the connected parts of the graph whose
 * edges are the pairs. One group: every judge's strictness can be told from every other's.
 */
export function comparedGroups(judges: Iterable<string>, pairs: readonly JudgePair[]): string[][] {
  const parent = new Map([...judges].map((id) => [id, id]));
  const find = (id: string): string => {
    let root = id;
    for (let next = parent.get(root); next !== undefined && next !== root; next = parent.get(root)) root = next;
    parent.set(id, root);
    return root;
  };
  for (const {
    judges: [one, other],
  } of pairs) {
    for (const id of [one, other]) if (!parent.has(id)) parent.set(id, id);
    parent.set(find(one), find(other));
  }
  return [...Map.groupBy(parent.keys(), find).values()];
}

/** The fewest times that the most frequent pair must stand together when `lanes` lanes have two of `judges` judges each. */
export function fewestRepeats(judges: number, lanes: number): number {
  const possible = (judges * (judges - 1)) / 2;
  return possible === 0 ? lanes : Math.ceil(lanes / possible);
}
