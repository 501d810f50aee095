import { useEffect, useRef, useState } from 'react';
import type { SetState } from '../../../../shared-types/log/state.ts';
import type { SetClock } from '../../../link/clock.ts';
import type { SetLog } from '../../../link/set-log.ts';
import type { SetStart } from '../../../link/store.ts';
import { useLink } from '../../../parts/desk/link.ts';
import { useWords } from '../../../parts/words/words.tsx';
import { soundOf } from '../sound/sounds.ts';
import { useSounds } from '../sound/use-sounds.ts';
import { type Decision, decide, finishByClock, type Intent, type Moment, type Nothing } from './decide.ts';
import { ownPads } from './own-pads.ts';
import { stateOf } from './state-of.ts';

/** Which button answered last, and how often any did: what makes it flash. */
export interface Hit {
  readonly place: string;
  readonly turn: number;
}

export interface LivePresses {
  /** Adds to the log what the press means; `timeStamp` of the input on the page's clock. Answers what it did. */
  readonly press: (intent: Intent, timeStamp: number) => Decision;
  readonly hit: Hit;
  /** Why the last press did nothing; null where it did something. */
  readonly nothing: Nothing | null;
}

/** How long a press made before the time was up may still be on its way when the clock ends a set, milliseconds. */
const graceMs = 250;

/** The place on the screen that a press belongs to. */
function placeOf(intent: Intent): string {
  if (intent.kind === 'no-rep') return intent.faults[0] === undefined ? 'no-rep' : `fault ${intent.faults[0]}`;
  return intent.kind === 'explain' ? `why ${intent.fault}` : intent.kind;
}

/** Ties presses to the log, the clock, the sounds. Presses read the log itself, never what was painted of it. */
export function useLiveSet(start: SetStart, log: SetLog, clock: SetClock, painted: SetState): LivePresses {
  const { outbox } = useLink();
  const sounds = useSounds();
  const words = useWords().judge.live;
  const [own] = useState(() => ownPads(outbox.pad));
  const [hit, setHit] = useState<Hit>({ place: '', turn: 0 });
  const [nothing, setNothing] = useState<Nothing | null>(null);
  const { setup, sheet } = start;

  const moment = (): Moment => {
    const { events } = log.get();
    return { goal: setup.goal, sheet, state: stateOf(setup.id, events), log: events, own };
  };

  const press = (intent: Intent, timeStamp: number): Decision => {
    const decision = decide(intent, clock.at(timeStamp), moment());
    for (const draft of decision.drafts) outbox.put({ ...draft, set: setup.id });
    const { outcome, ended } = decision;
    sounds.play(soundOf(outcome, ended));
    if (outcome.kind === 'counted') sounds.say(words.say.counted(outcome.count));
    else if (outcome.kind === 'caution') sounds.say(words.say.caution(outcome.count));
    else if (outcome.kind === 'no-rep' || outcome.kind === 'reversed') sounds.say(words.say.noRep);
    else if (outcome.kind === 'withdrawn') sounds.say(words.say.withdrawn);
    setHit(({ turn }) => ({ place: placeOf(intent), turn: turn + 1 }));
    setNothing(outcome.kind === 'nothing' ? outcome.why : null);
    return decision;
  };

  const endByClock = useRef(() => {});
  useEffect(() => {
    endByClock.current = () => {
      const finish = finishByClock(clock.now(), moment());
      if (finish === null) return;
      outbox.put({ ...finish, set: setup.id });
      sounds.play('finish');
    };
  });
  const { goal } = setup;
  const runs = painted.phase === 'running';
  useEffect(() => {
    if (goal.kind !== 'clock' || !runs) return;
    const timer = setTimeout(() => endByClock.current(), Math.max(0, goal.milliseconds - clock.now()) + graceMs);
    return () => clearTimeout(timer);
  }, [goal, runs, clock]);

  return { press, hit, nothing };
}
