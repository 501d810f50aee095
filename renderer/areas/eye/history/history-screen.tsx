import { useLocation } from 'wouter';
import type { JudgeDrills } from '../../../../shared-types/contract/drills.ts';
import { shownMovement } from '../../../../shared-types/drills/numbers.ts';
import type { MovementName } from '../../../../shared-types/motion/specification.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { LinkButton } from '../../../parts/controls/button.tsx';
import { Card, EmptyState } from '../../../parts/controls/card.tsx';
import { Figure } from '../../../parts/controls/figure.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { Segmented } from '../../../parts/controls/segmented.tsx';
import { useCall } from '../../../parts/desk/use-call.ts';
import { numberAxis, timeAxis } from '../../../parts/figure/axis.ts';
import { LineWithIntervals } from '../../../parts/figure/curves.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { shownSheets } from '../home/choice.ts';
import { useVerdictText } from '../ready/use-verdict-text.ts';
import { useFaultWords } from '../result/fault-words.ts';
import { ScoreFacts } from '../result/score-facts.tsx';
import { useLineText } from '../result/use-line-text.ts';
import styles from './history-screen.module.css';

/** One judge on one station, over all drills that count. */
export function HistoryScreen({ judge, sheet }: { judge: string; sheet: string }) {
  const words = useWords().eye;
  const [, go] = useLocation();
  const reading = useCall(`eye history ${judge} ${sheet}`, async (client, signal) => {
    const [drills, sheets] = await Promise.all([
      client.drills.judge({ judge, sheet }, { signal }),
      client.standards.list(undefined, { signal }),
    ]);
    return { drills, sheets: shownSheets(sheets) };
  });
  const data = reading.data;
  return (
    <Page
      title={
        data === undefined
          ? words.home.history
          : words.result.history.title(data.drills.judge.name, data.drills.sheet.station)
      }
      help={words.result.history.help}
      above={
        <LinkButton href="/" weight="quiet">
          {words.result.back}
        </LinkButton>
      }
    >
      <Loaded reading={reading}>
        {({ drills, sheets }) => (
          <>
            <Segmented
              label={words.result.history.station}
              value={sheet}
              options={sheets.map((item) => ({ value: item.id, label: item.station }))}
              onChange={(id) => go(`/judge/${judge}/${id}`)}
            />
            <History drills={drills} sheet={sheets.find((item) => item.id === sheet)} />
          </>
        )}
      </Loaded>
    </Page>
  );
}

function History({ drills, sheet }: { drills: JudgeDrills; sheet: StandardSheet | undefined }) {
  const words = useWords().eye;
  const movement = sheet === undefined ? null : shownMovement(sheet);
  if (drills.drills === 0 || movement === null) return <EmptyState title={words.result.history.none} />;
  return (
    <>
      <Card title={drills.ready ? words.result.history.ready : words.result.history.notReady}>
        <p>{words.result.history.over(drills.drills, drills.trials)}</p>
        <ScoreFacts detection={drills.detection} reasons={drills.reasons} reaction={drills.reaction} counts={null} />
      </Card>
      <div className={styles.faults}>
        {drills.faults.map((fault) => (
          <FaultHistory key={fault.score.code} fault={fault} movement={movement} />
        ))}
      </div>
    </>
  );
}

function FaultHistory({ fault, movement }: { fault: JudgeDrills['faults'][number]; movement: MovementName }) {
  const words = useWords().eye;
  const formats = useFormats();
  const sentence = useFaultWords(movement);
  const verdictText = useVerdictText();
  const { score, points, verdict } = fault;
  const text = useLineText(score);
  const shown = points.flatMap(({ at, score: { strictness } }) => (strictness === null ? [] : [{ at, ...strictness }]));
  const amount = (value: number): string => words.result.signed(value, words.margins.amount(value, score.unit));
  const say = (point: (typeof shown)[number]): string =>
    words.result.history.point(formats.date(point.at), words.result.amount(amount, point));
  return (
    <Card title={score.name}>
      <p className={styles.sentence}>{sentence(score)}</p>
      <p className={styles.soft}>
        {words.result.strictness} {text.strictness}, {words.result.precision} {text.precision}. {verdictText(verdict)}.
      </p>
      {shown.length < 2 ? null : (
        <Figure
          title={words.result.history.chart(score.name)}
          how={<p>{words.result.how.line}</p>}
          table={{
            columns: [
              { key: 'at', head: words.result.history.chartX, cell: (point) => formats.date(point.at) },
              {
                key: 'value',
                head: words.result.strictness,
                cell: (point) => words.result.amount(amount, point),
                figures: true,
              },
            ],
            rows: shown,
            rowKey: (point) => String(point.at),
          }}
        >
          <LineWithIntervals
            label={words.result.history.chart(score.name)}
            xLabel={words.result.history.chartX}
            yLabel={words.result.history.chartY(words.result.units[score.unit])}
            xAxis={(range) =>
              timeAxis(
                shown.map((point) => point.at),
                range,
                formats.shortDate,
              )
            }
            yAxis={(range) =>
              numberAxis([0, ...shown.flatMap((point) => [point.low, point.high])], range, (value) =>
                formats.plain(value),
              )
            }
            height={200}
            points={shown.map((point) => ({
              x: point.at,
              y: point.value,
              low: point.low,
              high: point.high,
              text: say(point),
            }))}
          />
        </Figure>
      )}
    </Card>
  );
}
