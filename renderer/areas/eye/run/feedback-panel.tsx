import type { ReactNode } from 'react';
import type { Drill } from '../../../../shared-types/drills/drill.ts';
import { brokenFaults } from '../../../../shared-types/drills/fold.ts';
import type { Verdict } from '../../../../shared-types/log/events.ts';
import { FAULTS, type FaultCode } from '../../../../shared-types/motion/specification.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { faultName, useCallText } from '../use-call-text.ts';
import styles from './feedback-panel.module.css';
import { ReplayControls } from './replay-controls.tsx';
import type { LookedAt, Replayed } from './use-replay.ts';

interface FeedbackPanelProps {
  readonly drill: Drill;
  readonly sheet: StandardSheet;
  readonly rep: LookedAt;
  /** Null where the rep was not called. */
  readonly call: { readonly verdict: Verdict; readonly faults: readonly string[] } | null;
  readonly replay: Replayed;
  readonly onShow: (code: FaultCode) => void;
  /** The way on. */
  readonly children?: ReactNode;
}

/** What was true of a rep, in words, each measured margin, and how to look at it. */
export function FeedbackPanel({ drill, sheet, rep, call, replay, onShow, children }: FeedbackPanelProps) {
  const words = useWords().eye.drill.feedback;
  const { list } = useFormats();
  const say = useCallText(sheet);
  const broken = brokenFaults(drill, rep.body.margins);
  const isBroken = (code: string): boolean => broken.some((one) => one === code);
  const right = call === null || (call.verdict === 'no-rep') === broken.length > 0;
  const reasonWrong = right && broken.length > 0 && (call?.faults ?? []).some((code) => !isBroken(code));
  const listed = FAULTS[drill.movement].filter((code) => sheet.faults.some((fault) => fault.code === code));
  return (
    <div className={styles.panel} data-testid="feedback">
      <div className={styles.verdict} role="status" data-right={right}>
        {call === null ? null : (
          <p className={styles.mine}>
            <strong>{right ? words.right : words.wrong}.</strong> {words.youSaid(say(call))}
          </p>
        )}
        <h2>
          {broken.length === 0
            ? words.truthCounted
            : words.truthNoRep(list(broken.map((code) => faultName(sheet, code))))}
        </h2>
        {reasonWrong ? <p>{words.reason}</p> : null}
      </div>
      {children}
      <ul className={styles.margins} aria-label={words.margins}>
        {listed.map((code) => {
          const text = replay.measured(code);
          return (
            <li key={code}>
              <button
                type="button"
                className={styles.margin}
                aria-pressed={code === replay.code}
                disabled={text === null}
                data-broken={isBroken(code)}
                onClick={() => onShow(code)}
              >
                <span>{faultName(sheet, code)}</span>
                <span className={styles.text}>{text ?? words.none}</span>
              </button>
            </li>
          );
        })}
      </ul>
      <ReplayControls duration={rep.motion.duration} replay={replay} />
    </div>
  );
}
