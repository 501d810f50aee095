import type { Debrief, TalkingPoint } from '../../../shared-types/contract/nights/debrief.ts';
import { refKey } from '../../../shared-types/log/events.ts';
import { isNoRep, type JudgedAttempt, type JudgedCall } from '../../analysis/agreement/judges-together.ts';
import type { JudgedLane, JudgedNight } from './lanes.ts';

const MOST = 3;

interface Candidate {
  readonly point: TalkingPoint;
  readonly weight: number;
  readonly judges: string;
}

/**
 * The attempts most worth talking about: an appeal that the judges saw differently first, then differing verdicts, then
 * differing reasons, then calls that one of them missed; among equals those of the fault that divides the night most. A second
 * attempt of the same two judges comes only after those of others.
 */
export function talkingPoints(
  night: JudgedNight,
  lanes: readonly JudgedLane[],
  faults: Debrief['faults'],
): TalkingPoint[] {
  const dividing = new Map(faults.map(({ sheet, code, one }) => [`${sheet} ${code}`, one]));
  const most = Math.max(1, ...dividing.values());
  const candidates = lanes
    .flatMap((lane) => {
      const appealed = new Set(lane.main?.appeals.map(({ event }) => refKey(event.of)) ?? []);
      return lane.attempts.flatMap((attempt) => candidate(night, lane, attempt, appealed, dividing, most));
    })
    .toSorted((one, other) => other.weight - one.weight);
  const chosen: Candidate[] = [];
  for (let round = 0; chosen.length < MOST && round < MOST; round += 1) {
    for (const next of candidates) {
      if (chosen.length === MOST) break;
      if (chosen.includes(next) || chosen.filter(({ judges }) => judges === next.judges).length > round) continue;
      chosen.push(next);
    }
  }
  return chosen.map(({ point }) => point);
}

function candidate(
  night: JudgedNight,
  lane: JudgedLane,
  attempt: JudgedAttempt,
  appealed: ReadonlySet<string>,
  dividing: ReadonlyMap<string, number>,
  most: number,
): Candidate[] {
  const { place, sheet, heat } = lane;
  const { first, second } = attempt;
  if (place.set === null || place.shadowSet === null || place.shadow === null) return [];
  const told = whyTold(attempt, appealed);
  if (told === null) return [];
  const named = new Set([...(first?.faults ?? []), ...(second?.faults ?? [])]);
  const divides = Math.max(0, ...[...named].map((code) => dividing.get(`${sheet.id} ${code}`) ?? 0)) / most;
  const { athlete, judge, shadow } = place;
  const point: TalkingPoint = {
    heat,
    lane: place.lane,
    athlete: night.who(athlete),
    station: sheet.station,
    set: place.set,
    shadowSet: place.shadowSet,
    main: asCall(night, judge, first),
    shadow: asCall(night, shadow, second),
    why: told.why,
  };
  // A named reason is something to talk about; the fault's own weight only decides between equals.
  return [{ point, weight: told.weight + (named.size > 0 ? 0.5 : 0) + 0.4 * divides, judges: `${judge} ${shadow}` }];
}

function whyTold(
  { first, second }: JudgedAttempt,
  appealed: ReadonlySet<string>,
): { readonly why: TalkingPoint['why']; readonly weight: number } | null {
  const differ = first !== null && second !== null && isNoRep(first) !== isNoRep(second);
  const disputed = first !== null && appealed.has(refKey(first.ref));
  if (disputed) return { why: 'appealed', weight: differ ? 4 : 2.5 };
  if (differ) return { why: 'verdicts-differ', weight: 3 };
  if (first === null || second === null) return { why: 'missed', weight: 1 };
  const same = first.faults.length === 0 || second.faults.length === 0;
  if (same || first.faults.some((code) => second.faults.includes(code))) return null;
  return { why: 'reasons-differ', weight: 2 };
}

function asCall(night: JudgedNight, judge: string, call: JudgedCall | null) {
  return call === null ? null : { judge: night.who(judge), ...call, faults: [...call.faults] };
}
