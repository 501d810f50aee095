import type { Fault, StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { useSettings } from '../../../parts/desk/settings.tsx';
import { type Action, faultAction } from '../../../parts/keys/actions.ts';
import { heldKeys } from '../../../parts/keys/bindings.ts';
import { KeyCap } from '../../../parts/keys/key-cap.tsx';
import { useKeyLabels } from '../../../parts/keys/use-key-labels.ts';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './key-hints.module.css';

interface KeyHintsProps {
  readonly sheet: StandardSheet;
  /** Those that may be called in this drill. */
  readonly faults: readonly Fault[];
}

/** The keys of the Judge area, as they are bound, before the drill begins. */
export function KeyHints({ sheet, faults }: KeyHintsProps) {
  const words = useWords().eye.drill;
  const { settings } = useSettings();
  const label = useKeyLabels();
  const initials = sheet.faults.map((fault) => fault.initial);
  const row = (name: string, action: Action | null) => {
    const codes = action === null ? [] : heldKeys(action, settings.keys, initials);
    return codes.length === 0 ? null : (
      <li key={name} className={styles.row}>
        <span>{name}</span>
        <span className={styles.caps}>
          {codes.slice(0, 2).map((code) => (
            <KeyCap key={code}>{label(code)}</KeyCap>
          ))}
        </span>
      </li>
    );
  };
  return (
    <section className={styles.hints} aria-label={words.keysTitle}>
      <h2 className={styles.title}>{words.keysTitle}</h2>
      <ul>
        {row(words.counted, 'count')}
        {faults.map((fault) => row(fault.name, faultAction(sheet.faults.indexOf(fault))))}
        {row(words.noRep, 'no-rep-later')}
        {row(words.caution, 'caution')}
        {row(words.slip, 'slip')}
      </ul>
      <p className={styles.soft}>{words.walkHint}</p>
    </section>
  );
}
