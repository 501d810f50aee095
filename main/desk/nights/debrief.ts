import type { Agreement, Debrief } from '../../../shared-types/contract/nights/debrief.ts';
import type { Estimate } from '../../../shared-types/contract/reports.ts';
import { pairKey } from '../../../shared-types/night/pairs.ts';
import {
  agreementOfTwo,
  alphaOfNight,
  exchanged,
  type JudgedAttempt,
} from '../../analysis/agreement/judges-together.ts';
import type { EstimateWithInterval } from '../../analysis/interval.ts';
import type { Computed } from '../../analysis/result.ts';
import { dividedFaults } from './divided-faults.ts';
import { type JudgedLane, type NightLedger, readJudgedNight } from './lanes.ts';
import { resultsOf } from './results.ts';
import { talkingPoints } from './talking-points.ts';

/** Everything that is told after a night. Errors: `unknown-night`, `damaged`. */
export function debriefOf(ledger: NightLedger, id: string): Debrief {
  const night = readJudgedNight(ledger, id);
  const { name, date } = ledger.nights.get(id);
  const shadowed = night.lanes.filter(({ attempts }) => attempts.length > 0);
  const all = shadowed.flatMap(({ attempts }) => attempts);
  const alpha = alphaOfNight(all);
  const faults = dividedFaults(shadowed);
  return {
    night: { id, name, date },
    results: resultsOf(ledger, night),
    overall: agreement(shadowed.length, all),
    alpha: {
      verdicts: alpha.verdicts.ok ? alpha.verdicts.value.alpha : null,
      withMisses: alpha.withMisses.ok ? alpha.withMisses.value.alpha : null,
      why: alpha.verdicts.ok ? '' : alpha.verdicts.error.message,
    },
    pairs: matrix(shadowed, night.who),
    judges: judges(night.lanes, night.who),
    faults,
    talk: talkingPoints(night, shadowed, faults),
  };
}

type Who = (person: string) => { id: string; name: string };

function matrix(lanes: readonly JudgedLane[], who: Who): Debrief['pairs'] {
  const groups = Map.groupBy(lanes, ({ place }) => pairKey(place.judge, place.shadow ?? ''));
  return [...groups].map(([key, group]) => {
    const [first = '', second = ''] = key.split(' ');
    const attempts = group.flatMap((lane) => asSeenBy(lane, first));
    return { first: who(first), second: who(second), agreement: agreement(group.length, attempts) };
  });
}

function judges(lanes: readonly JudgedLane[], who: Who): Debrief['judges'] {
  const ids = new Set(
    lanes.flatMap(({ place }) => (place.shadow === null ? [place.judge] : [place.judge, place.shadow])),
  );
  return [...ids].map((id) => {
    const own = lanes.filter(({ place }) => place.judge === id || place.shadow === id);
    const shadowed = own.filter(({ attempts }) => attempts.length > 0);
    const attempts = shadowed.flatMap((lane) => asSeenBy(lane, id));
    return {
      judge: who(id),
      asMain: own.filter(({ place }) => place.judge === id).length,
      asShadow: own.filter(({ place }) => place.shadow === id).length,
      against: agreement(shadowed.length, attempts),
    };
  });
}

/** The attempts of a lane with this judge as the first. */
function asSeenBy({ place, attempts }: JudgedLane, judge: string): readonly JudgedAttempt[] {
  return place.judge === judge ? attempts : exchanged(attempts);
}

function agreement(sets: number, attempts: readonly JudgedAttempt[]): Agreement {
  const { agreed, kappa, ac1, stricter, lag, ...counts } = agreementOfTwo(attempts);
  return {
    sets,
    ...counts,
    agreed: orNull(agreed),
    kappa: { value: orNull(kappa), why: kappa.ok ? '' : kappa.error.message },
    ac1: { value: orNull(ac1), why: ac1.ok ? '' : ac1.error.message },
    stricter: orNull(stricter),
    lagS: lag,
  };
}

function orNull(given: Computed<EstimateWithInterval>): Estimate | null {
  if (!given.ok) return null;
  const { estimate, lower, upper } = given.value;
  return { value: estimate, low: lower, high: upper };
}
