/**
 * A largest matching in a bipartite graph by augmenting paths (Kuhn 1955's method for unit weights). `options[i]` lists the
 * right-hand numbers that left `i` may have. `partner[i]` is the right of left `i`, -1 without. Where a left stays alone, `short`
 * holds lefts that have fewer rights among them than they are (Hall's theorem); empty when all have a partner.
 */
export function matchAll(options: readonly (readonly number[])[]): {
  readonly partner: readonly number[];
  readonly short: readonly number[];
} {
  const partner = options.map(() => -1);
  const owner = new Map<number, number>();
  for (const start of options.keys()) {
    const seen = new Set<number>();
    const tried = new Set<number>();
    const augment = (left: number): boolean => {
      tried.add(left);
      for (const right of options[left] ?? []) {
        if (seen.has(right)) continue;
        seen.add(right);
        const other = owner.get(right);
        if (other === undefined || augment(other)) {
          owner.set(right, left);
          partner[left] = right;
          return true;
        }
      }
      return false;
    };
    if (!augment(start)) return { partner, short: [...tried] };
  }
  return { partner, short: [] };
}
