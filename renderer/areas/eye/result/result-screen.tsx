import { useState } from 'react';
import { useLocation } from 'wouter';
import type { DrillRecord, DrillReport } from '../../../../shared-types/contract/drills.ts';
import { Button, LinkButton } from '../../../parts/controls/button.tsx';
import { Card } from '../../../parts/controls/card.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { saveFile } from '../../../parts/controls/save-file.ts';
import { failureOf } from '../../../parts/desk/failure.ts';
import { useLink } from '../../../parts/desk/link.ts';
import { newId } from '../../../parts/desk/new-id.ts';
import { useCall } from '../../../parts/desk/use-call.ts';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { faultName } from '../use-call-text.ts';
import { FaultCard } from './fault-card.tsx';
import { useFaultWords } from './fault-words.ts';
import { GainCard } from './gain-card.tsx';
import { RepLook } from './rep-look.tsx';
import styles from './result-screen.module.css';
import { ScoreFacts } from './score-facts.tsx';
import { TrialTable } from './trial-table.tsx';

/** What a drill says of the judge's eye: sentences, figures, fault by fault, rep by rep. */
export function ResultScreen({ id }: { id: string }) {
  const words = useWords().eye;
  const reading = useCall(`drill result ${id}`, async (client, signal) => {
    const [report, record] = await Promise.all([
      client.drills.report({ id }, { signal }),
      client.drills.get({ id }, { signal }),
    ]);
    return { report, record };
  });
  const data = reading.data;
  const title =
    data === undefined
      ? words.title
      : words.result.title(words.kinds[data.report.drill.task.kind], data.report.station);
  return (
    <Page
      title={title}
      intro={data === undefined ? undefined : <When report={data.report} />}
      help={words.result.help}
      above={
        <LinkButton href="/" weight="quiet">
          {words.result.back}
        </LinkButton>
      }
      actions={data === undefined ? null : <Deeds report={data.report} />}
    >
      <Loaded reading={reading}>{({ report, record }) => <Result report={report} record={record} />}</Loaded>
    </Page>
  );
}

function When({ report }: { report: DrillReport }) {
  const words = useWords().eye.result;
  const { dateTime } = useFormats();
  return (
    <>
      <bdi>{report.judge.name}</bdi>, {dateTime(report.drill.createdAt)}
      {report.drill.practice ? `. ${words.practice}` : ''}
    </>
  );
}

function Deeds({ report }: { report: DrillReport }) {
  const words = useWords().eye.result;
  const link = useLink();
  const { tell, tellFailure } = useNotices();
  const [, go] = useLocation();
  const again = async (): Promise<void> => {
    const [seed = 0] = crypto.getRandomValues(new Uint32Array(1));
    const drill = { ...report.drill, id: newId(), seed, createdAt: Date.now() };
    try {
      await link.client.drills.create(drill);
      go(`/drill/${drill.id}`);
    } catch (error) {
      tellFailure(failureOf(error));
    }
  };
  const save = async (format: 'csv' | 'json'): Promise<void> => {
    try {
      const file = await link.client.drills.export({
        filter: { practice: 'with' },
        ids: [report.drill.id],
        format,
      });
      saveFile(file);
      tell(words.saved(file.fileName));
    } catch (error) {
      tellFailure(failureOf(error));
    }
  };
  return (
    <>
      <Button onClick={() => void save('csv')}>{words.export.csv}</Button>
      <Button onClick={() => void save('json')}>{words.export.json}</Button>
      <Button weight="main" onClick={() => void again()}>
        {words.again}
      </Button>
    </>
  );
}

function Result({ report, record }: { report: DrillReport; record: DrillRecord }) {
  const words = useWords().eye;
  const { movement } = report.drill;
  const [looked, setLooked] = useState<number | null>(null);
  const whole = report.faults.filter((score) => score.place === null);
  const single = report.gain === null;
  return (
    <>
      {report.phase === 'ended' ? null : (
        <p className={styles.note}>
          {words.result.unfinished}{' '}
          <LinkButton href={`/drill/${report.drill.id}`} weight="quiet">
            {words.result.goOn}
          </LinkButton>
        </p>
      )}
      {single ? <Sentences report={report} /> : null}
      {report.gain === null ? null : <GainCard gain={report.gain} movement={movement} />}
      <Card title={words.result.rightOf(report.right.count, report.right.of)}>
        <ScoreFacts
          detection={report.detection}
          reasons={report.reasons}
          reaction={report.reaction.all}
          counts={report.counts}
        />
        <p className={styles.soft}>
          {words.result.how.detection} {words.result.how.reaction}
        </p>
        <Confusions report={report} record={record} />
      </Card>
      {whole.length === 0 ? null : (
        <section className={styles.faults} aria-label={words.result.faultsTitle}>
          <h2>{words.result.faultsTitle}</h2>
          <div className={styles.cards}>
            {(single ? whole : []).map((score) => (
              <FaultCard key={score.code} score={score} movement={movement} />
            ))}
            {single
              ? null
              : [report.gain?.advised, report.gain?.poor].map((score) =>
                  score === undefined ? null : <FaultCard key={score.place} score={score} movement={movement} />,
                )}
          </div>
        </section>
      )}
      <div className={styles.faults}>
        <h2>{words.result.trialsTitle}</h2>
        <TrialTable trials={report.trials} movement={movement} sheet={record.sheet} onLook={setLooked} />
      </div>
      {report.clashes.length === 0 ? null : (
        <details>
          <summary>{words.result.clashes}</summary>
          <ul>
            {report.clashes.map((clash) => (
              <li key={clash}>{clash}</li>
            ))}
          </ul>
        </details>
      )}
      <RepLook
        record={record}
        trial={report.trials.find((trial) => trial.trial === looked) ?? null}
        onClose={() => setLooked(null)}
      />
    </>
  );
}

/** The answer first: what this eye lets through and takes away, the surest first. */
function Sentences({ report }: { report: DrillReport }) {
  const sentence = useFaultWords(report.drill.movement);
  const order = ['lenient', 'strict', 'on-the-line', 'unclear', 'cannot-tell'];
  const scores = report.faults
    .filter((score) => score.place === null)
    .toSorted((one, other) => order.indexOf(one.verdict.kind) - order.indexOf(other.verdict.kind));
  return (
    <ul className={styles.answers} data-testid="sentences">
      {scores.slice(0, 4).map((score) => (
        <li key={score.code}>{sentence(score)}</li>
      ))}
    </ul>
  );
}

function Confusions({ report, record }: { report: DrillReport; record: DrillRecord }) {
  const words = useWords().eye.result;
  const { confusions } = report.reasons;
  if (confusions.length === 0) return null;
  const name = (code: string): string => (code === '' ? words.noReason : faultName(record.sheet, code));
  return (
    <div>
      <h3>{words.confusions}</h3>
      <ul>
        {confusions.map(({ truth, named, count }) => (
          <li key={`${truth} ${named}`}>{words.confusion(name(truth), name(named), count)}</li>
        ))}
      </ul>
    </div>
  );
}
