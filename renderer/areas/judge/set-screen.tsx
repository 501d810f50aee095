import { useState } from 'react';
import { useLocation } from 'wouter';
import type { SetLog, SetView } from '../../link/set-log.ts';
import type { SetStart } from '../../link/store.ts';
import { useLink } from '../../parts/desk/link.ts';
import { useFloor } from '../../parts/shell/floor.tsx';
import { NotFound } from '../../parts/shell/not-found.tsx';
import { useWords } from '../../parts/words/words.tsx';
import { LiveScreen } from './live/live-screen.tsx';
import { PickUpScreen } from './live/pick-up-screen.tsx';
import { stateOf } from './live/state-of.ts';
import { beginClock, clockOf, justBegun } from './set-clocks.ts';
import { BeforeGo } from './start/before-go.tsx';
import { FinishedScreen } from './summary/finished-screen.tsx';
import { useSetLog } from './use-set-log.ts';

/** One set by its address, whatever it has come to: before go, running, ended. */
export function SetScreen({ id }: { id: string }) {
  const { log, view } = useSetLog(id);
  const words = useWords().common;
  const [begun] = useState(() => justBegun(id));
  // From go to the running set no other look shows in between.
  useFloor(begun && view.start === null);
  if (view.status === 'not-found') return <NotFound />;
  if (log === null || view.start === null) return begun ? null : <p role="status">{words.reading}</p>;
  return <OpenSet id={id} start={view.start} view={view} log={log} />;
}

interface OpenSetProps {
  readonly id: string;
  readonly start: SetStart;
  readonly view: SetView;
  readonly log: SetLog;
}

/** A set that stood still for longer than this is not simply gone on with: the judge is asked, milliseconds. */
const stoodStillMs = 10 * 60_000;

function OpenSet({ id, start, view, log }: OpenSetProps) {
  const { outbox } = useLink();
  const [, go] = useLocation();
  const state = stateOf(id, view.events);
  const clock = clockOf(id, state);
  const ended = state.phase === 'finished' || state.phase === 'abandoned';
  // A set that was running when this screen opened, or began on it, keeps the live screen until the judge leaves it.
  const [watched, setWatched] = useState(!ended);
  const [asked, setAsked] = useState(false);
  if (state.phase === 'ready' || clock === null) {
    // The log may still be on its way from the desk: a set that has begun there must not be begun again here.
    if (!view.live && outbox.pending(id).get() === 0) return null;
    return (
      <BeforeGo
        start={start}
        onBack={() => go('/')}
        onGo={(timeStamp) => {
          const { wallClock } = beginClock(id, timeStamp);
          outbox.put({ kind: 'go', set: id, at: 0, wallClock });
        }}
      />
    );
  }
  if (state.phase === 'running' && !asked && clock.resumed && clock.now() - state.lastAt > stoodStillMs) {
    return (
      <PickUpScreen
        start={start}
        clock={clock}
        lastAt={state.lastAt}
        onGoOn={() => setAsked(true)}
        onEnd={() => outbox.put({ kind: 'finish', set: id, at: state.lastAt })}
      />
    );
  }
  if (ended && !watched) {
    return <FinishedScreen start={start} view={view} state={state} clock={clock} log={log} />;
  }
  return (
    <LiveScreen
      start={start}
      view={view}
      state={state}
      log={log}
      clock={clock}
      pad={outbox.pad}
      onSummary={() => setWatched(false)}
    />
  );
}
