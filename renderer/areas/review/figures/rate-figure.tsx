import { useLocation } from 'wouter';
import type { SetPoint, Trend } from '../../../../shared-types/contract/review/figures.ts';
import { timeAxis } from '../../../parts/figure/axis.ts';
import { LineWithIntervals } from '../../../parts/figure/curves.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { setPlace } from '../address/places.ts';
import { Evidence } from '../view/evidence.tsx';
import { rateAxis, rateTop } from './rate-axis.ts';
import { useDayText } from './use-day-text.ts';

interface RateFigureProps {
  readonly points: readonly SetPoint[];
  readonly trend: Pick<Trend, 'curve'> | null;
  readonly sets: number;
  readonly size: 'wide' | 'full' | 'half';
}

/** The rate of each set over time, with the trend's band and the limits of chance. */
export function RateFigure({ points, trend, sets, size }: RateFigureProps) {
  const words = useWords().review;
  const { number, plain, seconds } = useFormats();
  const [, go] = useLocation();
  const figure = words.figures;
  const shown = points.flatMap((point) => (point.rate === null ? [] : [{ ...point, rate: point.rate }]));
  const tick = useDayText(shown.map((point) => point.at));
  const curve = trend?.curve ?? [];
  const top = rateTop(
    shown,
    curve.map((place) => place.value),
  );
  const limits = shown.flatMap(({ at, limits: own }) =>
    own === null ? [] : [{ x: at, low: own.low * 100, high: own.high * 100 }],
  );
  return (
    <Evidence
      title={figure.rate.title}
      size={size}
      how={words.how.rate}
      note={points.length < sets ? figure.rate.latestOnly(points.length) : figure.rate.key('set', curve.length > 0)}
      testId="figure-rate"
      table={{
        columns: [
          { key: 'day', head: figure.rate.columns.day, cell: (point) => figure.date(point.at) },
          {
            key: 'attempts',
            head: figure.rate.columns.attempts,
            figures: true,
            cell: (point) => number(point.attempts),
          },
          { key: 'noReps', head: figure.rate.columns.noReps, figures: true, cell: (point) => number(point.noReps) },
          {
            key: 'rate',
            head: figure.rate.columns.rate,
            figures: true,
            cell: (point) => (point.rate === null ? figure.dash : figure.rateOf(point.rate)),
          },
          {
            key: 'lost',
            head: figure.rate.columns.lost,
            figures: true,
            cell: (point) => (point.per100S === null ? figure.dash : seconds(point.per100S)),
          },
        ],
        rows: points.toReversed(),
        rowKey: (point) => point.id,
      }}
    >
      <LineWithIntervals
        label={figure.rate.label(shown.length)}
        xLabel={figure.rate.x}
        yLabel={figure.rate.y}
        xAxis={(range) => timeAxis([...shown.map((point) => point.at), ...curve.map((place) => place.x)], range, tick)}
        yAxis={(range) => rateAxis(top, range, plain)}
        hint={figure.rate.hint}
        points={shown.map(({ at, rate, noReps, attempts, outside }) => ({
          x: at,
          y: rate.value * 100,
          low: rate.low * 100,
          high: rate.high * 100,
          out: outside,
          text: figure.rate.point(figure.date(at), rate, noReps, attempts, outside),
        }))}
        band={curve.map(({ x, value, low, high }) => ({ x, y: value * 100, low: low * 100, high: high * 100 }))}
        limits={limits}
        onPick={(index) => {
          const point = shown[index];
          if (point !== undefined) go(setPlace(point.id));
        }}
      />
    </Evidence>
  );
}
