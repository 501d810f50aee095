import { useCallback, useMemo, useState } from 'react';
import type { Drill } from '../../../../shared-types/drills/drill.ts';
import { advisedPlace } from '../../../../shared-types/drills/places.ts';
import { toleranceOf } from '../../../../shared-types/drills/range.ts';
import type { ShownRep } from '../../../../shared-types/drills/show.ts';
import { type FaultCode, unitOf } from '../../../../shared-types/motion/specification.ts';
import { useWords } from '../../../parts/words/words.tsx';
import { type Mark, markOf } from '../figure/margin-marks.ts';
import { placeView } from '../places.ts';
import type { Viewpoint } from '../viewpoint.ts';
import { replayAround, replayTime, tellingFault } from './replay.ts';

export type LookedAt = Pick<ShownRep, 'motion' | 'truth' | 'body'>;

export interface Replayed {
  /** The fault whose margin is drawn in; null where none was measured. */
  readonly code: FaultCode | null;
  readonly marks: readonly Mark[];
  /** Where its margin is seen best. */
  readonly best: Viewpoint;
  readonly timeAt: (timeStamp: number) => number;
  readonly playing: boolean;
  readonly speed: number;
  /** Whether the user asked for less motion: then a still stands first. */
  readonly still: boolean;
  /** A margin in words; null where the rep gave no occasion. */
  readonly measured: (code: FaultCode) => string | null;
  readonly show: (code: FaultCode) => void;
  readonly play: () => void;
  readonly stand: (seconds: number) => void;
  readonly setSpeed: (speed: number) => void;
}

interface Standing {
  readonly rep: LookedAt | null;
  readonly code: FaultCode | null;
  /** Playing since a time stamp, or standing at a time of the rep. */
  readonly at: { readonly since: number } | { readonly stand: number };
}

/** A rep looked at again: slowly around the moment at which a margin is measured, or standing where one likes. */
export function useReplay(drill: Drill, rep: LookedAt | null, named: readonly string[]): Replayed {
  const words = useWords().eye.margins;
  const [still] = useState(() => window.matchMedia('(prefers-reduced-motion: reduce)').matches);
  const [speed, setSpeed] = useState(0.25);
  const begin = useCallback(
    (of: LookedAt | null, code: FaultCode | null): Standing => {
      const mark = of === null || code === null ? null : markOf(of.motion, drill.numbers, code, of.truth);
      return { rep: of, code, at: still ? { stand: mark?.t ?? 0 } : { since: performance.now() } };
    },
    [drill, still],
  );
  const first = (): Standing => begin(rep, rep === null ? null : tellingFault(drill, rep.truth, named));
  const [held, setHeld] = useState(first);
  let state = held;
  if (held.rep !== rep) {
    state = first();
    setHeld(state);
  }
  const { code, at } = state;
  const marks = useMemo(() => {
    const mark = rep === null || code === null ? null : markOf(rep.motion, drill.numbers, code, rep.truth);
    return mark === null ? [] : [mark];
  }, [rep, code, drill]);
  const duration = rep?.motion.duration ?? 0;
  const replay = replayAround(marks[0]?.t ?? 0, duration, speed);
  return {
    code,
    marks,
    best: placeView(advisedPlace(drill.movement, code)),
    timeAt: (now) => ('stand' in at ? at.stand : replayTime(replay, (now - at.since) / 1_000)),
    playing: 'since' in at,
    speed,
    still,
    measured: (one) => {
      const margin = rep?.body.margins[one];
      if (margin === null || margin === undefined) return null;
      return words.measured(drill.movement, one, margin + toleranceOf(drill, one), unitOf(drill.movement, one));
    },
    show: (next) => setHeld(begin(rep, next)),
    play: () => setHeld({ ...state, at: { since: performance.now() } }),
    stand: (seconds) => setHeld({ ...state, at: { stand: Math.min(duration, Math.max(0, seconds)) } }),
    setSpeed,
  };
}
