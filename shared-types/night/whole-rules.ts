import type { Breach } from './breach.ts';
import type { NightPlan } from './night.ts';
import { comparedGroups, fewestRepeats, judgeLoads, judgePairs } from './pairs.ts';
import type { Roster } from './roster.ts';

/** Rules of the night as a whole: its length, the judges' loads, and the pairs of judges. */
export function nightRules(roster: Roster, plan: NightPlan, nameOf: (person: string) => string): Breach[] {
  const { arrangement } = roster;
  const breaches: Breach[] = [];
  const most = arrangement.mostHeats ?? 60;
  if (plan.length > most) {
    breaches.push(whole('too-many-heats', [], `The plan has ${plan.length} heats; there may be ${most}.`));
  }
  for (const { less, more, difference } of unevenLoads(roster, plan)) {
    const message = `${nameOf(more)} judges ${difference} heats more than ${nameOf(less)}, who is here as long.`;
    breaches.push(whole('loads-differ', [less, more], message));
  }
  if (!arrangement.shadows) return breaches;
  const pairs = judgePairs(plan);
  const judges = new Set(judgeLoads(plan).keys());
  const groups = comparedGroups(judges, pairs);
  if (groups.length > fewestGroups(roster, plan)) {
    const told = groups.map((group) => group.map(nameOf).join(', ')).join(' / ');
    const message = `The judges fall into ${groups.length} groups that never stand together: ${told}.`;
    breaches.push(whole('judges-not-compared', groups.flat(), message));
  }
  const lanes = pairs.reduce((sum, { times }) => sum + times, 0);
  const allowed = fewestRepeats(judges.size, lanes);
  for (const { judges: pair, times } of pairs) {
    if (times <= allowed) continue;
    const message = `${nameOf(pair[0])} and ${nameOf(pair[1])} stand together ${times} times; ${allowed} would do.`;
    breaches.push({ ...whole('pair-repeated', pair, message), aim: true });
  }
  return breaches;
}

/**
 * Into how few groups of judges compared with each other the plan's shadows could join them at best: a lane joins two at most,
 * and those never here together cannot be joined.
 */
function fewestGroups(roster: Roster, plan: NightPlan): number {
  const judges = [...judgeLoads(plan).keys()];
  const lanes = plan.flat().filter(({ shadow }) => shadow !== null).length;
  const heats = plan.map((_, index) => index);
  const together = judges.flatMap((one, at) =>
    judges
      .slice(at + 1)
      .filter((other) => heats.some((heat) => roster.here(one, heat) && roster.here(other, heat)))
      .map((other) => ({ judges: [one, other] as const, times: 1 })),
  );
  return Math.max(1, judges.length - lanes, comparedGroups(judges, [...together, ...judgePairs(plan)]).length);
}

/**
 * Judges' loads differ by at most one: nobody who is here for as many heats as another judges two heats fewer than the
 * other. Who is here for fewer heats may judge less, never more than one heat more. One entry for each judge who has too few.
 */
function unevenLoads(
  roster: Roster,
  plan: NightPlan,
): { readonly less: string; readonly more: string; readonly difference: number }[] {
  const loads = judgeLoads(plan);
  const judges = roster.arrangement.people
    .filter(({ judge }) => judge)
    .map(({ id }) => ({
      id,
      load: loads.get(id) ?? 0,
      heats: heatsHere(roster, id, plan.length),
      stays: roster.stays(id),
    }));
  return judges
    .filter(({ stays, heats }) => stays && heats > 0)
    .flatMap((less) => {
      const more = judges
        .filter(({ heats }) => heats <= less.heats)
        .reduce((most, other) => (other.load > most.load ? other : most), less);
      const difference = more.load - less.load;
      return difference > 1 ? [{ less: less.id, more: more.id, difference }] : [];
    });
}

/** For how many of the first `heats` heats a person is here. */
export function heatsHere(roster: Roster, person: string, heats: number): number {
  return Array.from({ length: heats }, (_, index) => roster.here(person, index)).filter(Boolean).length;
}

function whole(rule: Breach['rule'], people: readonly string[], message: string): Breach {
  return { rule, heat: null, lane: null, people, message, aim: false };
}
