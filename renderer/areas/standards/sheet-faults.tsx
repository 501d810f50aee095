import type { Fault } from '../../../shared-types/sheets/sheet.ts';
import { useWords } from '../../parts/words/words.tsx';
import { FaultLetter } from './fault-letter.tsx';
import styles from './sheet-faults.module.css';
import { byHeight } from './sheet-order.ts';

/** The faults along the plumb line, from overhead to the floor. */
export function SheetFaults({ faults }: { faults: readonly Fault[] }) {
  const words = useWords().standards;
  return (
    <section>
      <h2>{words.faults}</h2>
      <ol className={styles.faults}>
        {byHeight(faults).map((fault) => (
          <li key={fault.code} className={styles.fault}>
            <FaultLetter initial={fault.initial} large />
            <FaultText fault={fault} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function FaultText({ fault }: { fault: Fault }) {
  const words = useWords().standards;
  const { margin } = fault;
  return (
    <div className={styles.text}>
      <h3 className={styles.name}>{fault.name}</h3>
      <p className={styles.standard}>{fault.standard}</p>
      <dl className={styles.how}>
        <dt>{words.stand}</dt>
        <dd>{fault.stand}</dd>
        <dt>{words.look}</dt>
        <dd>{fault.look}</dd>
        <dt>{words.cue}</dt>
        <dd className={styles.cue}>{fault.cue}</dd>
        <dt>{words.remedy}</dt>
        <dd>{fault.remedy}</dd>
        {margin === null ? null : (
          <>
            <dt>{words.margin}</dt>
            <dd className={styles.soft}>
              {words.marginText(margin.quantity, words.units[margin.unit], margin.direction, margin.tolerance)}
            </dd>
          </>
        )}
      </dl>
    </div>
  );
}
