import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Check } from '../../../parts/controls/field.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './correct-dialog.module.css';

interface FaultChecksProps {
  readonly sheet: Pick<StandardSheet, 'faults'>;
  readonly faults: readonly string[];
  readonly onChange: (faults: readonly string[]) => void;
}

/** One or more faults of a call. */
export function FaultChecks({ sheet, faults, onChange }: FaultChecksProps) {
  const words = useWords().judge.finished.correct;
  return (
    <fieldset>
      <legend className={styles.legend}>{words.faults}</legend>
      <div className={styles.checks}>
        {sheet.faults.map((fault) => (
          <Check
            key={fault.code}
            label={fault.name}
            checked={faults.includes(fault.code)}
            onChange={(on) => onChange(on ? [...faults, fault.code] : faults.filter((code) => code !== fault.code))}
          />
        ))}
      </div>
    </fieldset>
  );
}
