import { useEffect, useMemo, useRef, useState } from 'react';
import type { SetState } from '../../../../shared-types/log/state.ts';
import { calledName } from '../../../../shared-types/people.ts';
import { eventTime, type SetClock } from '../../../link/clock.ts';
import type { SetLog, SetView } from '../../../link/set-log.ts';
import type { SetStart } from '../../../link/store.ts';
import { IconButton } from '../../../parts/controls/button.tsx';
import { useSettings } from '../../../parts/desk/settings.tsx';
import { faultAction } from '../../../parts/keys/actions.ts';
import { heldKeys, keyMap } from '../../../parts/keys/bindings.ts';
import { useKeyLabels } from '../../../parts/keys/use-key-labels.ts';
import { Lines } from '../../../parts/look/signs.tsx';
import { ribbonMarks } from '../../../parts/ribbon/marks.ts';
import { Ribbon } from '../../../parts/ribbon/ribbon.tsx';
import { useFloor } from '../../../parts/shell/floor.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { useMatches } from '../use-matches.ts';
import { useWakeLock } from '../use-wake-lock.ts';
import { CallRow } from './call-row.tsx';
import type { Intent } from './decide.ts';
import { EndedPanel } from './ended-panel.tsx';
import { FaultZones } from './fault-zones.tsx';
import { keyWish } from './key-intent.ts';
import { LinkState } from './link-state.tsx';
import styles from './live-screen.module.css';
import { MarkRow } from './mark-row.tsx';
import { nextMark } from './marks.ts';
import { type Asking, MorePanel } from './more-panel.tsx';
import { ownPads } from './own-pads.ts';
import { PressButton } from './press-button.tsx';
import { Score } from './score.tsx';
import { attemptNumber, toExplain } from './to-explain.ts';
import { lastSlip } from './undo.ts';
import { useKeyList } from './use-key-list.ts';
import { useLastWords } from './use-last-words.ts';
import { useLiveKeys } from './use-live-keys.ts';
import { useLiveSet } from './use-live-set.ts';

interface LiveScreenProps {
  readonly start: SetStart;
  readonly view: SetView;
  readonly state: SetState;
  readonly log: SetLog;
  readonly clock: SetClock;
  readonly pad: string;
  readonly onSummary: () => void;
}

/** A running set: count, clock, faults on the body, calls, ribbon. */
export function LiveScreen({ start, view, state, log, clock, pad, onSummary }: LiveScreenProps) {
  const words = useWords().judge;
  const { settings } = useSettings();
  const sayLast = useLastWords();
  const { press, hit, nothing } = useLiveSet(start, log, clock, state);
  const [asking, setAsking] = useState<Asking>(null);
  const asked = useRef(0);
  const frame = useRef<HTMLElement>(null);
  const { setup, sheet } = start;
  const { goal } = setup;
  const running = state.phase === 'running';
  useFloor();
  const awake = useWakeLock(running);
  const wide = useMatches('(min-width: 56.25rem) and (min-height: 32.5rem)');
  // A closed panel gives the focus back to the button that opened it, and the space bar would open it again.
  useEffect(() => {
    if (asking === null) frame.current?.focus({ preventScroll: true });
  }, [asking]);
  const athlete = calledName(start.athlete);
  useEffect(() => {
    document.title = words.live.title(sheet.station, athlete);
  }, [words, sheet.station, athlete]);

  const initials = useMemo(() => sheet.faults.map((fault) => fault.initial), [sheet]);
  const keys = useMemo(() => keyMap(settings.keys, initials), [settings.keys, initials]);
  const keyLabel = useKeyLabels();
  const keyList = useKeyList(sheet);
  const marked = state.marks.at(-1)?.metres ?? 0;
  const mark = nextMark(sheet, goal, marked);
  const ask = (what: Asking, timeStamp: number): void => {
    asked.current = timeStamp;
    setAsking(what);
  };
  const run = (intent: Intent, timeStamp: number): void => void press(intent, timeStamp);
  useLiveKeys(keys, asking === null, (action, timeStamp, shift) => {
    const wish = keyWish(action, { sheet, nextMark: mark, shift });
    if (wish === null) return;
    if (wish.kind === 'ask-finish') {
      if (goal.kind === 'open') run({ kind: 'finish' }, timeStamp);
      else if (running) ask('finish', timeStamp);
    } else if (wish.kind === 'ask-abandon') {
      if (running) ask('abandon', timeStamp);
    } else if (wish.kind === 'ask-menu') {
      ask('menu', timeStamp);
    } else {
      run(wish, timeStamp);
    }
  });

  const attempt = toExplain(state);
  const number = attempt === null ? null : attemptNumber(state, attempt);
  const open = attempt === null || number === null ? null : { attempt, number };
  const keyOf = (code: string): string => {
    const index = sheet.faults.findIndex((fault) => fault.code === code);
    const action = faultAction(index);
    const first = action === null ? undefined : heldKeys(action, settings.keys, initials)[0];
    return first === undefined ? '' : keyLabel(first);
  };
  const own = useMemo(() => ownPads(pad), [pad]);
  const canPutBack = useMemo(() => lastSlip(view.events, own) !== null, [view.events, own]);
  const marks = useMemo(() => ribbonMarks(state.attempts, sheet.faults), [state.attempts, sheet.faults]);
  const conditions = words.conditions(setup.loadKg, setup.heightM);

  return (
    <section
      ref={frame}
      className={styles.screen}
      aria-label={words.live.title(sheet.station, athlete)}
      tabIndex={-1}
      data-marks={mark !== null}
      data-ended={!running}
      onContextMenu={(event) => event.preventDefault()}
    >
      <header className={styles.head}>
        <div className={styles.who}>
          <h1 className={styles.title}>
            <bdi>{athlete}</bdi>
          </h1>
          <p className={styles.under}>{[sheet.station, conditions].filter((part) => part !== '').join(', ')}</p>
        </div>
        <LinkState log={log} awake={awake} />
        <IconButton label={words.live.menu} onClick={(event) => ask('menu', event.timeStamp)}>
          <Lines />
        </IconButton>
      </header>
      <Score start={start} state={state} clock={clock} />
      {running ? (
        <FaultZones sheet={sheet} open={open} hit={hit} keyOf={keyOf} onPress={run} />
      ) : (
        <EndedPanel
          goal={goal}
          state={state}
          onSummary={onSummary}
          onSlip={(timeStamp) => run({ kind: 'slip' }, eventTime({ timeStamp }))}
          onLastNoRep={(timeStamp) => run({ kind: 'last-was-no-rep' }, eventTime({ timeStamp }))}
        />
      )}
      {running ? (
        <>
          <div className={styles.last}>
            <p role="status" className={styles.said}>
              {nothing === null ? sayLast(view.events, state, sheet) : words.live.nothing[nothing]}
            </p>
            {canPutBack ? (
              <PressButton
                className={styles.slip}
                onPress={(timeStamp) => run({ kind: 'put-back' }, timeStamp)}
                turn={hit.place === 'put-back' ? hit.turn : 0}
              >
                {words.live.putBack}
              </PressButton>
            ) : null}
            <PressButton
              className={styles.slip}
              title={words.live.slipHint}
              turn={hit.place === 'slip' ? hit.turn : 0}
              onPress={(timeStamp) => run({ kind: 'slip' }, timeStamp)}
            >
              {words.live.slip}
            </PressButton>
          </div>
          {mark === null ? null : <MarkRow next={mark} reached={marked} hit={hit} onPress={run} />}
          <CallRow state={state} clock={clock} hit={hit} canFinish={goal.kind === 'open'} onPress={run} />
          <PressButton
            className={styles.counted}
            turn={hit.place === 'count' ? hit.turn : 0}
            onPress={(timeStamp) => run({ kind: 'count' }, timeStamp)}
          >
            {words.live.counted}
          </PressButton>
        </>
      ) : null}
      <div className={styles.ribbon}>
        <Ribbon
          marks={marks}
          slots={goal.kind === 'reps' ? Math.ceil(goal.reps * 1.1) : 60}
          height={wide ? 40 : 26}
          live
        />
      </div>
      <MorePanel
        asking={asking}
        onAsk={(next) => (next === null || asking === null ? setAsking(next) : ask(next, performance.now()))}
        canFinish={running && goal.kind !== 'open'}
        onFinish={() => {
          setAsking(null);
          run({ kind: 'finish' }, asked.current);
        }}
        onAbandon={(reason) => run({ kind: 'abandon', reason }, asked.current)}
        keys={keyList}
      />
    </section>
  );
}
