import type { SetReport } from '../../../../shared-types/contract/reports.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Card } from '../../../parts/controls/card.tsx';
import { type Column, Table } from '../../../parts/controls/table.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import styles from './cost-table.module.css';

type Run = SetReport['cost']['runs'][number];

/** What each run of no-reps cost, and the whole set, with intervals and the method in words. */
export function CostTable({ report, sheet }: { report: SetReport; sheet: StandardSheet }) {
  const words = useWords().judge.finished;
  const { seconds, list } = useFormats();
  const { cost } = report;
  if (cost.runs.length === 0) return null;
  const faultsOf = (run: Run): string => {
    const codes = report.attempts
      .filter((line) => line.number !== null && run.attempts.includes(line.number))
      .flatMap((line) => line.faults);
    const names = [...new Set(codes)].map((code) => sheet.faults.find((fault) => fault.code === code)?.name ?? code);
    return names.length === 0 ? words.unexplained : list(names);
  };
  const orDash = (value: number | null): string => (value === null ? '–' : seconds(value));
  const columns: readonly Column<Run>[] = [
    {
      key: 'attempts',
      head: words.columns.attempts,
      cell: (run) => (
        <>
          {words.costOf(run.attempts)}
          <span className={styles.fault}>{faultsOf(run)}</span>
          <Remarks run={run} />
        </>
      ),
    },
    {
      key: 'cost',
      head: words.columns.cost,
      figures: true,
      cell: (run) =>
        run.cost === null ? (
          words.notEstimable
        ) : (
          <>
            {words.secondsValue(run.cost.value)}
            <span className={styles.span}>{words.spanValue(run.cost.low, run.cost.high)}</span>
          </>
        ),
    },
    { key: 'repeat', head: words.columns.repeat, figures: true, cell: (run) => orDash(run.repeatS) },
    { key: 'disruption', head: words.columns.disruption, figures: true, cell: (run) => orDash(run.disruptionS) },
  ];
  return (
    <Card title={words.costTitle}>
      <p className={styles.method}>
        {cost.total === null
          ? words.how.methods['not-estimable']()
          : words.costSentence(cost.total, cost.repeatS, cost.disruptionS)}
      </p>
      <div className={styles.table}>
        <Table
          caption={words.costCaption}
          columns={columns}
          rows={cost.runs}
          rowKey={(run, index) => `${run.where} ${run.attempts[0] ?? index}`}
        />
      </div>
    </Card>
  );
}

/** What a reader should know of a run, in words. */
function Remarks({ run }: { run: Run }) {
  const words = useWords().judge.finished;
  const remarks = [
    run.where === 'within' ? '' : words.where[run.where],
    run.unmarkedPauseS > 0 ? words.pause(run.unmarkedPauseS) : '',
    ...run.flags.filter((flag) => flag !== 'long-pause').map((flag) => words.flags[flag]),
  ].filter((remark) => remark !== '');
  if (remarks.length === 0) return null;
  return <span className={styles.remark}>{remarks.join('; ')}</span>;
}
