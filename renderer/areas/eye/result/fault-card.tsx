import type { FaultScore } from '../../../../shared-types/contract/drills/scores.ts';
import type { MovementName } from '../../../../shared-types/motion/specification.ts';
import { Figure } from '../../../parts/controls/figure.tsx';
import { numberAxis } from '../../../parts/figure/axis.ts';
import { BandCurve } from '../../../parts/figure/curves.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import styles from './fault-card.module.css';
import { useFaultWords } from './fault-words.ts';
import { useLineText } from './use-line-text.ts';

/** One fault: what the calls say in a sentence, strictness and precision, and the picture of it. */
export function FaultCard({ score, movement }: { score: FaultScore; movement: MovementName }) {
  const words = useWords().eye;
  const formats = useFormats();
  const sentence = useFaultWords(movement);
  const { strictness, precision } = useLineText(score);
  const unit = words.result.units[score.unit];
  const bins = score.bins.filter((bin) => bin.calls > 0);
  const seen = bins.map(({ from, to, calls, noReps }) => {
    const share = noReps / calls;
    const spread = Math.sqrt((share * (1 - share)) / calls);
    const margin = (from + to) / 2;
    return {
      x: margin,
      y: share,
      low: Math.max(0, share - spread),
      high: Math.min(1, share + spread),
      text: words.result.curveAt(formats.number(margin, 1), formats.percent(share)),
    };
  });
  const band = score.curve.map(({ margin, chance }) => ({ x: margin, y: chance, low: chance, high: chance }));
  const place = score.place === null ? null : words.result.fromPlace[score.place];
  return (
    <article className={styles.card} data-testid={`fault-${score.code}-${score.place ?? 'all'}`}>
      <h3>
        {score.name}
        {place === null ? null : <span className={styles.soft}>, {place}</span>}
      </h3>
      <p className={styles.sentence}>{sentence(score)}</p>
      <dl className={styles.facts}>
        <div>
          <dt>{words.result.strictness}</dt>
          <dd>{strictness}</dd>
        </div>
        <div>
          <dt>{words.result.precision}</dt>
          <dd>{precision}</dd>
        </div>
        <div>
          <dt>{words.result.told}</dt>
          <dd>{words.result.trials(score.trials)}</dd>
        </div>
      </dl>
      {band.length === 0 ? null : (
        <Figure
          title={words.result.curve(score.name)}
          how={<p>{words.result.how.line}</p>}
          table={{
            columns: [
              {
                key: 'margin',
                head: words.result.margin,
                cell: (bin) => formats.number((bin.from + bin.to) / 2, 1),
                figures: true,
              },
              { key: 'share', head: words.result.curveY, cell: (bin) => `${bin.noReps}/${bin.calls}`, figures: true },
            ],
            rows: bins,
            rowKey: (bin) => String(bin.from),
          }}
        >
          <BandCurve
            label={words.result.curveLabel(score.name, strictness)}
            xLabel={words.result.curveX(unit)}
            yLabel={words.result.curveY}
            xAxis={(range) =>
              numberAxis(
                [...band, ...seen].map((point) => point.x),
                range,
                (value) => formats.plain(value),
              )
            }
            yAxis={(range) => numberAxis([0, 1], range, (value) => formats.percent(value))}
            height={220}
            band={band}
            seen={seen}
            tell={(point) => words.result.curveAt(formats.number(point.x, 1), formats.percent(point.y))}
          />
        </Figure>
      )}
    </article>
  );
}
