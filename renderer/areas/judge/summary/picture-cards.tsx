import type { SetReport } from '../../../../shared-types/contract/reports.ts';
import { Card } from '../../../parts/controls/card.tsx';
import { IntervalBars } from '../../../parts/figure/interval-bars.tsx';
import { LedgerBar } from '../../../parts/figure/ledger-bar.tsx';
import { ribbonMarks } from '../../../parts/ribbon/marks.ts';
import { Ribbon } from '../../../parts/ribbon/ribbon.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './picture-cards.module.css';
import type { SetDeeds } from './set-deeds.ts';

interface RibbonCardProps {
  readonly deeds: SetDeeds;
  readonly picked: number | null;
  readonly onPick: (index: number) => void;
}

/** Every attempt as one mark; picking one opens it to be put right. */
export function RibbonCard({ deeds, picked, onPick }: RibbonCardProps) {
  const words = useWords().judge.finished;
  const attempts = deeds.state.attempts.map((attempt) => ({
    ...attempt,
    reversed: attempt.changes.some((change) => change.event.kind === 'reverse' && !change.withdrawn),
  }));
  return (
    <Card title={words.ribbonTitle}>
      <Ribbon marks={ribbonMarks(attempts, deeds.start.sheet.faults)} onPick={onPick} picked={picked} />
    </Card>
  );
}

/** Reasons in the order of the time they cost, each with its interval. */
export function ReasonsCard({ report }: { report: SetReport }) {
  const words = useWords().judge.finished;
  if (report.reasons.length === 0) return null;
  return (
    <Card title={words.reasonsTitle}>
      <IntervalBars
        label={words.reasonsTitle}
        bars={report.reasons.map((reason) => ({
          key: reason.code,
          name: reason.code === '' ? words.unexplained : reason.name,
          remark: words.howMany(reason.noReps),
          value: reason.seconds,
          text: reason.seconds === null ? words.notEstimable : words.secondsValue(reason.seconds.value),
        }))}
      />
    </Card>
  );
}

/** Where the clock went; the lines add up to it. */
export function LedgerCard({ report }: { report: SetReport }) {
  const words = useWords().judge.finished;
  return (
    <Card title={words.ledgerTitle(words.clockAt(report.clockMs))}>
      <LedgerBar ledger={report.ledger} />
    </Card>
  );
}

/** How the figures above come about, in words. */
export function HowComputed({ report }: { report: SetReport }) {
  const words = useWords().judge.finished.how;
  const { method, cleanCycles } = report.cost;
  return (
    <details className={styles.how}>
      <summary>{words.title}</summary>
      <div>
        {report.counts.noReps === 0 ? null : <p>{words.methods[method](cleanCycles)}</p>}
        <p>{words.cost}</p>
        <p>{words.interval}</p>
        <p>{words.ledger}</p>
        <p>{words.shared}</p>
        <p>{words.corrected}</p>
      </div>
    </details>
  );
}
