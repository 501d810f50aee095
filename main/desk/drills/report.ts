import type { FaultScore, TrialLine } from '../../../shared-types/contract/drills/scores.ts';
import type { DrillRecord, DrillReport } from '../../../shared-types/contract/drills.ts';
import { faultsNamed } from '../../../shared-types/drills/drill.ts';
import { soleFault } from '../../../shared-types/drills/plan.ts';
import { toleranceOf } from '../../../shared-types/drills/range.ts';
import { openFaults } from '../../../shared-types/drills/single.ts';
import type { FaultCode } from '../../../shared-types/motion/specification.ts';
import { calledName } from '../../../shared-types/people.ts';
import { countsOf } from '../../analysis/drills/answers.ts';
import { detectionScore } from '../../analysis/drills/detection-score.ts';
import { type FaultNamed, faultScore } from '../../analysis/drills/fault-score.ts';
import { answered, calledRight, type JudgedTrial } from '../../analysis/drills/outcomes.ts';
import { placeGain } from '../../analysis/drills/place-gain.ts';
import { reactionScore } from '../../analysis/drills/reaction.ts';
import { reasonScore } from '../../analysis/drills/reasons.ts';
import { faultsOf, judgedRecord } from './record.ts';

/** The report of one drill, every figure as the contract says. */
export function drillReportOf(record: DrillRecord): DrillReport {
  const { drill, sheet, judge } = record;
  const { state, trials, extraCalls } = judgedRecord(record);
  const called = trials.filter(answered);
  const count = (outcome: JudgedTrial['outcome']) => trials.filter((one) => one.outcome === outcome).length;
  const sole = soleFault(drill);
  const open = new Set<FaultCode>(sole === null ? openFaults(drill, faultsNamed(drill.task)) : [sole]);
  const faults = faultsOf(sheet).filter(({ code }) => open.has(code));
  const [fault] = faults;
  return {
    drill,
    judge: { id: judge.id, name: calledName(judge) },
    station: sheet.station,
    phase: state.phase,
    endedBecause: state.endedBecause,
    counts: {
      shown: trials.length - count('spoilt'),
      called: called.length,
      unanswered: count('unanswered'),
      spoilt: count('spoilt'),
      extraCalls: extraCalls.length,
      slips: state.slips,
    },
    right: { count: called.filter(calledRight).length, of: called.length },
    detection: detectionScore(countsOf(trials)),
    reasons: reasonScore(trials),
    reaction: {
      all: reactionScore(called),
      hits: reactionScore(called.filter((one) => one.outcome === 'hit')),
      wrong: reactionScore(called.filter((one) => !calledRight(one))),
    },
    faults: faults.flatMap((one) => scoresOf(trials, one)),
    gain: drill.task.kind === 'place' && fault !== undefined ? placeGain(trials, fault) : null,
    trials: trials.map(trialLine),
    clashes: state.clashes.map((clash) => clash.message),
  };
}

/** From all places together and, where the judge stood in several, from each. */
function scoresOf(trials: readonly JudgedTrial[], fault: FaultNamed): FaultScore[] {
  const places = [...new Set(trials.filter(answered).map((one) => one.place))].sort();
  const apart = places.length > 1 ? places.map((place) => faultScore(trials, fault, place)) : [];
  return [faultScore(trials, fault, null), ...apart];
}

function trialLine(one: JudgedTrial): TrialLine {
  const { trial, call, drill } = one;
  const margins = Object.entries(trial.margins) as [FaultCode, number | null][];
  return {
    trial: trial.trial,
    place: call?.place ?? trial.place,
    margins: Object.fromEntries(
      margins.map(([code, margin]) => [code, margin === null ? null : margin + toleranceOf(drill, code)]),
    ),
    truth: [...trial.broken],
    dueMs: trial.dueMs,
    call: call === null ? null : { afterMs: call.afterMs, verdict: call.verdict, faults: [...call.faults] },
    reactionMs: one.reaction,
    outcome: one.outcome,
    reasonRight: one.reasonRight,
  };
}
