import { lazy, Suspense, useEffect, useEffectEvent, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import { useLocation } from 'wouter';
import { advisedPlace } from '../../../../shared-types/drills/places.ts';
import { progressOf, soleFault } from '../../../../shared-types/drills/plan.ts';
import type { Verdict } from '../../../../shared-types/log/events.ts';
import type { FaultCode } from '../../../../shared-types/motion/specification.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Button, LinkButton } from '../../../parts/controls/button.tsx';
import { useConfirm } from '../../../parts/controls/confirm.tsx';
import { useSettings } from '../../../parts/desk/settings.tsx';
import { faultIndex } from '../../../parts/keys/actions.ts';
import { keyMap } from '../../../parts/keys/bindings.ts';
import { useWords } from '../../../parts/words/words.tsx';
import { placeView, type SpotName, spotView, stoodAt } from '../places.ts';
import { moved } from '../viewpoint.ts';
import { CallPanel } from './call-panel.tsx';
import type { DrillRun } from './drill-run.ts';
import { FeedbackPanel } from './feedback-panel.tsx';
import { KeyHints } from './key-hints.tsx';
import styles from './run-view.module.css';
import { Status } from './status.tsx';
import { useReplay } from './use-replay.ts';
import { useRunKeys } from './use-run-keys.ts';
import { useShown } from './use-subject.ts';
import { useView } from './use-view.ts';
import { ViewControls } from './view-controls.tsx';

const FigureView = lazy(() => import('../figure-view.tsx'));

const TICK_MS = 40;
const none: readonly never[] = [];

interface RunViewProps {
  readonly run: DrillRun;
  readonly sheet: StandardSheet;
  readonly judge: string;
}

/** The drill itself: the athlete, where the judge stands, and the zones to call with. */
export function RunView({ run, sheet, judge }: RunViewProps) {
  const words = useWords().eye;
  const { settings } = useSettings();
  const confirm = useConfirm();
  const [, go] = useLocation();
  const { drill } = run.log;
  const phase = useSyncExternalStore(run.phase.subscribe, run.phase.get);
  const state = useSyncExternalStore(run.log.state.subscribe, run.log.state.get);
  const shown = useShown(drill, phase);
  const frame = useRef<HTMLElement>(null);
  const { task, movement } = drill;
  const fault = soleFault(drill);
  const fixed = task.kind === 'line' || task.kind === 'place';
  const given = phase.kind === 'rep' ? phase.shown.body.place : task.kind === 'place' ? task.advised : task.place;
  const { view, put, walkTo } = useView(placeView(given));
  const [judged, setJudged] = useState(view);
  const free = !fixed || phase.kind === 'feedback';
  const initials = sheet.faults.map((item) => item.initial);
  const keys = keyMap(settings.keys, initials);
  const faults = fault === null ? sheet.faults : sheet.faults.filter((item) => item.code === fault);
  const calling = phase.kind === 'stream' || (phase.kind === 'rep' && phase.call === null);
  const canSlip = phase.kind === 'stream' ? phase.calls.length > 0 : phase.kind === 'rep' && phase.call !== null;

  useEffect(() => frame.current?.focus(), []);
  const tick = useEffectEvent(() => run.tick(performance.now()));
  useEffect(() => {
    const timer = setInterval(() => tick(), TICK_MS);
    return () => clearInterval(timer);
  }, []);
  useEffect(() => {
    const seen = (): void => run.visible(document.visibilityState === 'visible', performance.now());
    document.addEventListener('visibilitychange', seen);
    return () => document.removeEventListener('visibilitychange', seen);
  }, [run]);
  useEffect(() => {
    if (phase.kind !== 'making') return;
    // After the screen has said so.
    const timer = setTimeout(() => run.make(() => performance.now()), 60);
    return () => clearTimeout(timer);
  }, [phase.kind, run]);

  const looked = phase.kind === 'feedback' ? phase.shown : null;
  const replay = useReplay(drill, looked, phase.kind === 'feedback' ? phase.call.faults : none);
  // Where a place is given, the judge is led there; to see the truth, where it is seen best; then back to their own place.
  const lead = useEffectEvent(() => {
    if (phase.kind === 'feedback') walkTo(replay.best);
    if (phase.kind === 'rep') put(fixed ? placeView(phase.shown.body.place) : judged);
  });
  const round = phase.kind === 'feedback' ? 'feedback' : phase.kind === 'rep' ? phase.shown.body.trial : null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: at each new rep, not whenever the place changes.
  useEffect(() => lead(), [round]);

  const call = (verdict: Verdict, codes: readonly string[], timeStamp: number): boolean =>
    run.call(verdict, codes, timeStamp, fixed ? null : stoodAt(view, given, movement, fault));
  /** Walking while the truth is looked at does not change where the judge stands for the next rep. */
  const walk = (next: typeof view): void => {
    put(next);
    if (looked === null) setJudged(next);
  };
  const spot = (name: SpotName): void => {
    const next = spotView(name, movement, looked === null ? fault : replay.code);
    walkTo(next);
    if (looked === null) setJudged(next);
  };
  const show = (code: FaultCode): void => {
    replay.show(code);
    walkTo(placeView(advisedPlace(movement, code)));
  };
  const begin = (): void => run.begin(performance.now(), Date.now());
  const next = (): void => run.next(performance.now());
  const stop = async (): Promise<void> => {
    run.pause(performance.now());
    const sure = await confirm({
      title: words.drill.stopAsk,
      text: words.drill.stopText,
      deed: words.drill.stopYes,
      stay: words.drill.stopNo,
    });
    if (sure) run.stop();
  };
  const result = (): void => go(`/result/${drill.id}`);
  /** The key that counts also goes on, wherever there is nothing to call. */
  const goOn = (): boolean => {
    if (phase.kind === 'ready') begin();
    else if (phase.kind === 'feedback') next();
    else if (phase.kind === 'paused') run.resume(performance.now());
    else if (phase.kind === 'done') result();
    else return false;
    return true;
  };
  useRunKeys(keys, {
    onAction: (action, timeStamp) => {
      const index = faultIndex(action);
      if (index !== null) {
        const code = sheet.faults[index]?.code;
        return code !== undefined && faults.some((item) => item.code === code) && call('no-rep', [code], timeStamp);
      }
      if (action === 'count') return call('counted', [], timeStamp) || goOn();
      if (action === 'caution') return call('caution', [], timeStamp);
      if (action === 'no-rep-later') return call('no-rep', [], timeStamp);
      return action === 'slip' && run.slip();
    },
    onMove: free ? (by) => walk(moved(view, by)) : null,
    onSpot: free ? spot : null,
  });

  const plan = progressOf(drill, state);
  // The reps of a stream are all in its log from the beginning: what has come of it is the calls.
  const progress = phase.kind === 'stream' ? { ...plan, done: phase.calls.length } : plan;
  const fine = looked === null || replay.code === null ? null : replay.measured(replay.code);
  const label = fine ?? words.drill.label(words.movements[movement], words.drill.seenFrom[given.name]);
  const subject = useMemo(
    () => (looked === null || replay.code === null ? shown.subject : { ...shown.subject, fault: replay.code }),
    [shown.subject, looked, replay.code],
  );
  return (
    <section
      ref={frame}
      className={styles.screen}
      tabIndex={-1}
      aria-label={words.kinds[task.kind]}
      data-phase={phase.kind}
    >
      <header className={styles.head}>
        <div className={styles.who}>
          <h1 className={styles.title}>
            {words.kinds[task.kind]}, {sheet.station}
          </h1>
          <p className={styles.under}>
            <bdi>{judge}</bdi>
          </p>
        </div>
        <p className={styles.progress} data-testid="progress">
          {(task.kind === 'line' ? words.drill.progressMost : words.drill.progress)(progress.done, progress.of)}
        </p>
        {phase.kind === 'ready' || phase.kind === 'done' ? (
          <LinkButton href="/" weight="quiet">
            {words.drill.leave}
          </LinkButton>
        ) : (
          <Button weight="quiet" onClick={() => void stop()}>
            {words.drill.stop}
          </Button>
        )}
      </header>
      <div className={styles.picture}>
        <Suspense fallback={null}>
          <FigureView
            subject={subject}
            timeAt={looked === null ? shown.timeAt : replay.timeAt}
            poseAt={shown.poseAt}
            view={view}
            onView={free ? walk : undefined}
            marks={looked === null ? none : replay.marks}
            labelOf={(mark) => replay.measured(mark.code) ?? ''}
            label={label}
            onFrame={(gap, now) => run.frame(gap, now)}
          />
        </Suspense>
      </div>
      <div className={styles.side}>
        {phase.kind === 'feedback' ? (
          <FeedbackPanel drill={drill} sheet={sheet} rep={phase.shown} call={phase.call} replay={replay} onShow={show}>
            <Button weight="main" large onClick={next}>
              {progress.done >= progress.of ? words.drill.feedback.last : words.drill.feedback.next}
            </Button>
          </FeedbackPanel>
        ) : (
          <Status run={run} phase={phase} sheet={sheet} onBegin={begin} onResume={() => goOn()} onResult={result} />
        )}
        {phase.kind === 'ready' ? <KeyHints sheet={sheet} faults={faults} /> : null}
        {phase.kind === 'rep' || phase.kind === 'stream' ? (
          <CallPanel
            faults={faults}
            disabled={!calling}
            canSlip={canSlip}
            onCall={(verdict, codes, timeStamp) => call(verdict, codes, timeStamp)}
            onSlip={() => run.slip()}
          />
        ) : null}
      </div>
      <div className={styles.walk}>
        {free ? (
          <ViewControls
            view={view}
            onMove={walk}
            onSpot={spot}
            keyOf={(index) => (keys.has(`Digit${index + 1}`) ? null : String(index + 1))}
          />
        ) : (
          <p className={styles.under}>{words.drill.fixedPlace}</p>
        )}
      </div>
    </section>
  );
}
