import type { ReadyBounds, ReadyCriteria } from '../../../../shared-types/drills/ready.ts';
import type { MarginUnit } from '../../../../shared-types/motion/specification.ts';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { Segmented } from '../../../parts/controls/segmented.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './criteria-form.module.css';

const units: readonly MarginUnit[] = ['cm', 'ms', 'degrees'];

interface CriteriaFormProps {
  readonly criteria: ReadyCriteria;
  readonly onChange: (criteria: ReadyCriteria) => void;
}

/** The bounds of a gym, by the unit of the faults' margins. An empty field asks nothing. */
export function CriteriaForm({ criteria, onChange }: CriteriaFormProps) {
  const words = useWords().eye.ready;
  const whole = (value: number | null, before: number): number =>
    value === null ? before : Math.min(10_000, Math.max(1, Math.round(value)));
  const bound = (unit: MarginUnit, part: Partial<ReadyBounds>): void =>
    onChange({ ...criteria, units: { ...criteria.units, [unit]: { ...criteria.units[unit], ...part } } });
  const limited = (value: number | null, most: number): number | null =>
    value === null ? null : Math.min(most, Math.max(0, value));
  return (
    <div className={styles.form}>
      <div className={styles.pair}>
        <NumberField
          label={words.leastTrials}
          value={criteria.leastTrials}
          onChange={(value) => onChange({ ...criteria, leastTrials: whole(value, criteria.leastTrials) })}
        />
        <NumberField
          label={words.days}
          value={criteria.days}
          onChange={(value) => onChange({ ...criteria, days: whole(value, criteria.days) })}
        />
      </div>
      <Segmented
        label={words.by}
        value={criteria.by}
        options={(['estimate', 'interval'] as const).map((by) => ({ value: by, label: words.byChoice[by] }))}
        onChange={(by) => onChange({ ...criteria, by })}
      />
      {units.map((unit) => {
        const bounds = criteria.units[unit];
        return (
          <fieldset key={unit} className={styles.unit}>
            <legend className={styles.legend}>{words.units[unit]}</legend>
            <div className={styles.pair}>
              <NumberField
                label={words.leastDPrime}
                value={bounds.leastDPrime}
                onChange={(value) => bound(unit, { leastDPrime: limited(value, 10) })}
              />
              <NumberField
                label={words.mostCriterion}
                value={bounds.mostCriterion}
                onChange={(value) => bound(unit, { mostCriterion: limited(value, 10) })}
              />
              <NumberField
                label={words.mostStrictness}
                unit={unit === 'degrees' ? '°' : unit}
                value={bounds.mostStrictness}
                onChange={(value) => bound(unit, { mostStrictness: limited(value, 1_000) })}
              />
              <NumberField
                label={words.mostPrecision}
                unit={unit === 'degrees' ? '°' : unit}
                value={bounds.mostPrecision}
                onChange={(value) => bound(unit, { mostPrecision: limited(value, 1_000) })}
              />
            </div>
          </fieldset>
        );
      })}
    </div>
  );
}
