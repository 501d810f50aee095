import type { Trend } from '../../../../shared-types/contract/review/figures.ts';
import type { GymView } from '../../../../shared-types/contract/review/judges.ts';
import { timeAxis } from '../../../parts/figure/axis.ts';
import { LineWithIntervals } from '../../../parts/figure/curves.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { Evidence } from '../view/evidence.tsx';
import { rateAxis, rateTop } from './rate-axis.ts';
import { useDayText } from './use-day-text.ts';

interface SpanRateFigureProps {
  readonly points: GymView['points'];
  readonly span: GymView['span'];
  readonly trend: Trend;
  /** Narrows the view to a span. */
  readonly onPick: (point: GymView['points'][number]) => void;
}

/** The rate of everyone over time, a point a day, week, month or quarter. */
export function SpanRateFigure({ points, span, trend, onPick }: SpanRateFigureProps) {
  const words = useWords().review;
  const { number, plain, seconds } = useFormats();
  const figure = words.figures.rate;
  const shown = points.flatMap((point) =>
    point.rate === null ? [] : [{ ...point, rate: point.rate, middle: (point.from + point.to) / 2 }],
  );
  const tick = useDayText(shown.map((point) => point.from));
  const top = rateTop(
    shown,
    trend.curve.map((place) => place.value),
  );
  return (
    <Evidence
      title={figure.title}
      size="wide"
      how={words.how.rate}
      note={figure.key(span, trend.curve.length > 0)}
      testId="figure-rate"
      table={{
        columns: [
          { key: 'day', head: figure.xSpan[span], cell: (point) => words.figures.date(point.from) },
          { key: 'sets', head: figure.columns.sets, figures: true, cell: (point) => number(point.sets) },
          { key: 'attempts', head: figure.columns.attempts, figures: true, cell: (point) => number(point.attempts) },
          { key: 'noReps', head: figure.columns.noReps, figures: true, cell: (point) => number(point.noReps) },
          {
            key: 'rate',
            head: figure.columns.rate,
            figures: true,
            cell: (point) => (point.rate === null ? words.figures.dash : words.figures.rateOf(point.rate)),
          },
          {
            key: 'lost',
            head: figure.columns.lost,
            figures: true,
            cell: (point) => (point.per100S === null ? words.figures.dash : seconds(point.per100S)),
          },
        ],
        rows: points.toReversed(),
        rowKey: (point) => String(point.from),
      }}
    >
      <LineWithIntervals
        label={figure.spanLabel(span, shown.length)}
        xLabel={figure.xSpan[span]}
        yLabel={figure.y}
        xAxis={(range) =>
          timeAxis([...shown.map((point) => point.middle), ...trend.curve.map((place) => place.x)], range, tick)
        }
        yAxis={(range) => rateAxis(top, range, plain)}
        hint={figure.spanHint}
        points={shown.map(({ from, middle, rate, noReps, attempts, outside }) => ({
          x: middle,
          y: rate.value * 100,
          low: rate.low * 100,
          high: rate.high * 100,
          out: outside,
          text: figure.point(words.figures.date(from), rate, noReps, attempts, outside),
        }))}
        band={trend.curve.map(({ x, value, low, high }) => ({ x, y: value * 100, low: low * 100, high: high * 100 }))}
        limits={shown.flatMap(({ middle, limits }) =>
          limits === null ? [] : [{ x: middle, low: limits.low * 100, high: limits.high * 100 }],
        )}
        onPick={(index) => {
          const point = shown[index];
          if (point !== undefined) onPick(point);
        }}
      />
    </Evidence>
  );
}
