import type { Assignment, NightPlan } from '../../../../shared-types/night/night.ts';
import type { Roster } from '../../../../shared-types/night/roster.ts';

export type Part = 'athlete' | 'judge' | 'shadow';

/** Somebody's place in a plan, or somebody with none in a heat. Heats are counted from 0 here. */
export type Pick =
  | { readonly kind: 'place'; readonly heat: number; readonly lane: string; readonly part: Part }
  | { readonly kind: 'free'; readonly heat: number; readonly person: string };

export function samePick(one: Pick, other: Pick): boolean {
  return keyOf(one) === keyOf(other);
}

export function keyOf(pick: Pick): string {
  return pick.kind === 'place' ? `${pick.heat} ${pick.lane} ${pick.part}` : `${pick.heat} free ${pick.person}`;
}

/** Who a pick is about; null where the plan has no such place. */
export function personAt(plan: NightPlan, pick: Pick): string | null {
  if (pick.kind === 'free') return pick.person;
  return plan[pick.heat]?.find(({ lane }) => lane === pick.lane)?.[pick.part] ?? null;
}

/**
 * The plan with two picks exchanged. Two athletes take their stations with them; somebody free takes the other's place. Null
 * where there is nothing to exchange: the same person, two without a place, a place that is not there. Rules are not asked.
 */
export function exchanged(plan: NightPlan, one: Pick, other: Pick): NightPlan | null {
  const [first, second] = [personAt(plan, one), personAt(plan, other)];
  if (first === null || second === null || samePick(one, other)) return null;
  if (one.kind === 'free' && other.kind === 'free') return null;
  if (first === second && !(bothAthletes(one, other) && stationAt(plan, one) !== stationAt(plan, other))) return null;
  const stations = bothAthletes(one, other) ? [stationAt(plan, one), stationAt(plan, other)] : [];
  return put(put(plan, one, second, stations[1]), other, first, stations[0]);
}

function bothAthletes(one: Pick, other: Pick): boolean {
  return [one, other].every((pick) => pick.kind === 'place' && pick.part === 'athlete');
}

function stationAt(plan: NightPlan, pick: Pick): string | undefined {
  return pick.kind === 'free' ? undefined : plan[pick.heat]?.find(({ lane }) => lane === pick.lane)?.station;
}

function put(plan: NightPlan, pick: Pick, person: string, station: string | undefined): NightPlan {
  if (pick.kind === 'free') return plan;
  return plan.map((heat, index) =>
    index !== pick.heat
      ? heat
      : heat.map((item): Assignment => {
          if (item.lane !== pick.lane) return item;
          return { ...item, [pick.part]: person, station: station ?? item.station };
        }),
  );
}

/** Judges who are here in a heat and have no place in it, in the night's order. */
export function freeJudges(roster: Roster, plan: NightPlan, heat: number): readonly string[] {
  const busy = new Set((plan[heat] ?? []).flatMap(({ athlete, judge, shadow }) => [athlete, judge, shadow]));
  return roster.arrangement.people
    .filter(({ id, judge }) => judge && !busy.has(id) && roster.here(id, heat))
    .map(({ id }) => id);
}
