import type { FaultCode } from '../../../../shared-types/motion/specification.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Check } from '../../../parts/controls/field.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { faultName } from '../use-call-text.ts';
import styles from './drill-form.module.css';

interface FaultChoiceProps {
  readonly sheet: StandardSheet;
  readonly shown: readonly FaultCode[];
  /** Empty for all. */
  readonly chosen: readonly FaultCode[];
  readonly onChange: (chosen: readonly FaultCode[]) => void;
}

/** Which faults may come: all, or some. */
export function FaultChoice({ sheet, shown, chosen, onChange }: FaultChoiceProps) {
  const words = useWords().eye.setup;
  const all = chosen.length === 0;
  const toggle = (code: FaultCode, on: boolean): void => {
    const next = on ? [...chosen, code] : chosen.filter((item) => item !== code);
    onChange(shown.filter((item) => next.includes(item)));
  };
  return (
    <fieldset className={styles.faults}>
      <legend className={styles.legend}>{words.faults}</legend>
      <Check label={words.allFaults} checked={all} onChange={(on) => onChange(on ? [] : shown.slice(0, 1))} />
      {shown.map((code) => (
        <Check
          key={code}
          label={faultName(sheet, code)}
          checked={chosen.includes(code)}
          onChange={(on) => toggle(code, on)}
        />
      ))}
    </fieldset>
  );
}
