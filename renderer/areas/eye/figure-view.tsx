import { type ReactNode, useEffect, useEffectEvent, useRef, useState } from 'react';
import type { Pose } from '../../../shared-types/motion/pose.ts';
import type { FaultCode, MovementName } from '../../../shared-types/motion/specification.ts';
import { useWords } from '../../parts/words/words.tsx';
import type { Mark } from './figure/margin-marks.ts';
import { QualityWatch } from './figure/quality.ts';
import { NoDrawing, type RoomName, Stage, type StageSetup } from './figure/stage.ts';
import styles from './figure-view.module.css';
import { type Follow, followed } from './follow.ts';
import { useOrbit } from './use-orbit.ts';
import { eyesOf, framingOf, type Viewpoint } from './viewpoint.ts';

/** Who is drawn where; a new object is another athlete or another place. */
export interface Subject extends StageSetup {
  readonly movement: MovementName;
  /** Nearer, where only one fault can come. */
  readonly fault: FaultCode | null;
}

export interface FigureViewProps {
  readonly subject: Subject;
  /** Seconds into the motion at a time stamp of the page's clock. */
  readonly timeAt: (timeStamp: number) => number;
  readonly poseAt: (seconds: number) => Pose;
  readonly view: Viewpoint;
  /** The judge walks; left out, the place is fixed. */
  readonly onView?: ((view: Viewpoint) => void) | undefined;
  readonly marks?: readonly Mark[];
  /** What stands at a mark, by the code of its fault. */
  readonly labelOf?: (mark: Mark) => string;
  /** What is seen, in a sentence, for those who do not see it. */
  readonly label: string;
  /** Every frame, with the milliseconds since the one before. */
  readonly onFrame?: (gap: number, timeStamp: number) => void;
  readonly children?: ReactNode;
}

const none: readonly Mark[] = [];

/** The figure on a canvas that fills its place. The pose is always that of the clock, however slow the drawing is. */
export default function FigureView(props: FigureViewProps) {
  const { subject, view, onView, marks = none, labelOf, label, children } = props;
  const words = useWords().eye.figure;
  const canvas = useRef<HTMLCanvasElement>(null);
  const labels = useRef<HTMLDivElement>(null);
  const stage = useRef<Stage | null>(null);
  const fresh = useRef(true);
  const follow = useRef<Follow | null>(null);
  const [state, setState] = useState<'good' | 'software' | 'spare' | 'nothing'>('good');
  useOrbit(canvas, view, onView);

  const placeLabels = useEffectEvent((drawn: Stage) => {
    for (const [i, element] of [...(labels.current?.children ?? [])].entries()) {
      const at = marks[i] === undefined ? null : drawn.project(marks[i].label);
      if (!(element instanceof HTMLElement)) continue;
      element.hidden = at === null;
      if (at !== null) element.style.translate = `${at.x * 100}cqw ${at.y * 100}cqh`;
    }
  });
  const drawFrame = useEffectEvent(
    (drawn: Stage, now: number, gap: number, last: { t: number; view: Viewpoint | null }) => {
      props.onFrame?.(gap, now);
      const t = props.timeAt(now);
      const pose = props.poseAt(t);
      const framing = framingOf(subject.movement, subject.fault, subject.numbers.lineHeight);
      const settled = follow.current?.settled ?? false;
      if (t === last.t && view === last.view && settled && !fresh.current) return false;
      follow.current = followed(follow.current, subject, pose, framing.middle, fresh.current ? null : gap / 1_000);
      fresh.current = false;
      last.t = t;
      last.view = view;
      drawn.setField(framing.field);
      drawn.show(pose, eyesOf(view, follow.current.focus, subject.around));
      drawn.render();
      placeLabels(drawn);
      return true;
    },
  );

  useEffect(() => {
    const element = canvas.current;
    if (element === null) return;
    const room: RoomName = document.documentElement.dataset.theme === 'paper' ? 'paper' : 'hall';
    let drawn: Stage;
    try {
      drawn = new Stage(element, room);
    } catch (error) {
      if (!(error instanceof NoDrawing)) throw error;
      setState('nothing');
      return;
    }
    stage.current = drawn;
    if (drawn.software) setState('software');
    const watch = new QualityWatch(drawn.software ? 'spare' : 'full');
    const last: { t: number; view: Viewpoint | null } = { t: Number.NaN, view: null };
    let before = performance.now();
    let frame = requestAnimationFrame(function loop() {
      const now = performance.now();
      const painted = drawFrame(drawn, now, now - before, last);
      if (painted && watch.frame(now - before)) {
        drawn.use(watch.quality);
        fresh.current = true;
        if (watch.quality !== 'plain') setState((known) => (known === 'good' ? 'spare' : known));
      }
      before = now;
      frame = requestAnimationFrame(loop);
    });
    const sizes = new ResizeObserver(() => {
      drawn.resize(element.clientWidth, element.clientHeight);
      fresh.current = true;
    });
    sizes.observe(element);
    drawn.resize(element.clientWidth, element.clientHeight);
    return () => {
      cancelAnimationFrame(frame);
      sizes.disconnect();
      stage.current = null;
      drawn.dispose();
    };
  }, []);

  useEffect(() => {
    stage.current?.dress(subject);
    follow.current = null;
    fresh.current = true;
  }, [subject]);

  useEffect(() => {
    stage.current?.setMarks(marks);
    fresh.current = true;
  }, [marks]);

  return (
    <div className={styles.view}>
      <canvas
        ref={canvas}
        className={styles.canvas}
        role="img"
        aria-label={state === 'nothing' ? words.nothing : label}
        data-free={onView !== undefined}
      />
      <div ref={labels} className={styles.labels} aria-hidden="true">
        {marks.map((mark) => (
          <span key={mark.code} className={styles.label} data-met={mark.met}>
            {labelOf?.(mark)}
          </span>
        ))}
      </div>
      {state === 'good' ? null : (
        <p className={styles.note} role="status">
          {words[state]}
        </p>
      )}
      {children}
    </div>
  );
}
