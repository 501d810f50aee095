import type { Verdict } from '../../../../shared-types/log/events.ts';
import type { Fault } from '../../../../shared-types/sheets/sheet.ts';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './call-panel.module.css';
import { PressButton } from './press-button.tsx';

interface CallPanelProps {
  /** Those that may be called, in any order: they stand from high to low as the body breaks them. */
  readonly faults: readonly Fault[];
  readonly disabled: boolean;
  /** Whether a call can be withdrawn now. */
  readonly canSlip: boolean;
  readonly onCall: (verdict: Verdict, faults: readonly string[], timeStamp: number) => void;
  readonly onSlip: () => void;
}

/** The zones of the Judge screen: faults from high to low, the big zone for counted at the foot. */
export function CallPanel({ faults, disabled, canSlip, onCall, onSlip }: CallPanelProps) {
  const words = useWords().eye.drill;
  const order = faults.toSorted((one, other) => other.bodyHeight - one.bodyHeight);
  return (
    <section className={styles.panel} aria-label={words.calls} data-many={order.length > 5}>
      <section className={styles.faults} aria-label={words.faults}>
        {order.map((fault) => (
          <PressButton
            key={fault.code}
            className={styles.zone}
            disabled={disabled}
            title={fault.standard}
            onPress={(timeStamp) => onCall('no-rep', [fault.code], timeStamp)}
          >
            <span className={styles.name}>{fault.name}</span>
            <span className={styles.notch} aria-hidden="true">
              <svg viewBox="0 0 32 36" preserveAspectRatio="none" aria-hidden="true">
                <path d="M2 34V2L16 9L30 2V34" />
              </svg>
              <span>{fault.initial}</span>
            </span>
          </PressButton>
        ))}
      </section>
      <div className={styles.row}>
        <PressButton
          className={styles.call}
          disabled={disabled}
          onPress={(timeStamp) => onCall('no-rep', [], timeStamp)}
        >
          {words.noRep}
        </PressButton>
        <PressButton
          className={styles.call}
          disabled={disabled}
          onPress={(timeStamp) => onCall('caution', [], timeStamp)}
        >
          {words.caution}
        </PressButton>
        <PressButton className={styles.call} disabled={!canSlip} onPress={onSlip}>
          {words.slip}
        </PressButton>
      </div>
      <PressButton
        className={styles.counted}
        disabled={disabled}
        onPress={(timeStamp) => onCall('counted', [], timeStamp)}
      >
        {words.counted}
      </PressButton>
    </section>
  );
}
