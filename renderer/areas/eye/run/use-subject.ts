import { useMemo } from 'react';
import type { Drill } from '../../../../shared-types/drills/drill.ts';
import { soleFault } from '../../../../shared-types/drills/plan.ts';
import type { Motion } from '../../../../shared-types/motion/motion.ts';
import type { Pose } from '../../../../shared-types/motion/pose.ts';
import { makeRep } from '../../../../shared-types/motion/rep.ts';
import { specify } from '../../../../shared-types/motion/specification.ts';
import type { Subject } from '../figure-view.tsx';
import type { Phase } from './drill-run.ts';

export interface Shown {
  readonly subject: Subject;
  readonly poseAt: (seconds: number) => Pose;
  /** Seconds into the motion at a time stamp. */
  readonly timeAt: (timeStamp: number) => number;
}

function subjectOf(drill: Drill, motion: Motion, look: number, around: Motion['scene']): Subject {
  return {
    body: motion.body,
    look,
    around,
    numbers: drill.numbers,
    travels: drill.movement === 'jump-burpee',
    movement: drill.movement,
    fault: soleFault(drill),
  };
}

/** An athlete who stands there before the first rep, so that the drawing is warm when it begins. */
function waiting(drill: Drill): Motion {
  const athlete = drill.athlete ?? { stature: 1.75, build: 'medium' as const };
  return makeRep(specify({ movement: drill.movement, sheet: drill.numbers, athlete, seed: drill.seed, first: true }));
}

/** Who is to be drawn in a phase, and how they move. */
export function useShown(drill: Drill, phase: Phase): Shown {
  const still = useMemo(() => waiting(drill), [drill]);
  const shown = phase.kind === 'rep' || phase.kind === 'feedback' || phase.kind === 'stream' ? phase.shown : null;
  const startAt = phase.kind === 'rep' || phase.kind === 'stream' ? phase.startAt : null;
  return useMemo(() => {
    if (shown === null) {
      const pose = still.at(0);
      return { subject: subjectOf(drill, still, drill.seed, still.scene), poseAt: () => pose, timeAt: () => 0 };
    }
    const since = (length: number) => (timeStamp: number) =>
      startAt === null ? 0 : Math.min(length, Math.max(0, (timeStamp - startAt) / 1_000));
    if ('stream' in shown) {
      const { stream } = shown;
      const first = stream.reps[0]?.motion ?? still;
      return {
        subject: subjectOf(drill, first, drill.seed, stream.scene),
        poseAt: stream.at,
        timeAt: since(stream.duration),
      };
    }
    const { motion } = shown;
    return {
      subject: subjectOf(drill, motion, shown.body.specification.styleSeed, motion.scene),
      poseAt: motion.at,
      timeAt: since(motion.duration),
    };
  }, [drill, still, shown, startAt]);
}
