import type { Place } from '../../../../shared-types/contract/review/figures.ts';
import { numberAxis } from '../../../parts/figure/axis.ts';
import { LineWithIntervals } from '../../../parts/figure/curves.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { Evidence } from '../view/evidence.tsx';
import { rateAxis, rateTop } from './rate-axis.ts';

/** Where in the set the no-reps fall: tenths of the set, and a fitted curve with its band. */
export function PlaceFigure({ place }: { place: Place }) {
  const words = useWords().review;
  const { number, plain, percent } = useFormats();
  const figure = words.figures.place;
  const { fitted, verdict, curve } = place;
  const telling = (): string => {
    switch (verdict.kind) {
      case 'rises':
        return figure.rises(fitted?.from.value ?? 0, fitted?.to.value ?? 0);
      case 'falls':
        return figure.falls(fitted?.from.value ?? 0, fitted?.to.value ?? 0);
      case 'flat':
        return figure.flat;
      case 'unclear':
        return figure.unclear(verdict.stillNeeded);
      case 'too-few':
        return words.figures.cannotTell(verdict.why);
    }
  };
  const bins = place.bins.flatMap((bin) => (bin.rate === null ? [] : [{ ...bin, rate: bin.rate, to: bin.to ?? 1 }]));
  const top = rateTop(
    bins,
    curve.map((point) => point.high),
  );
  return (
    <Evidence
      title={figure.title}
      size="half"
      telling={telling()}
      how={words.how.place}
      testId="figure-place"
      table={{
        columns: [
          {
            key: 'part',
            head: figure.columns.part,
            cell: (bin) => `${number(bin.from * 100)}–${percent(bin.to ?? 1)}`,
          },
          { key: 'attempts', head: figure.columns.attempts, figures: true, cell: (bin) => number(bin.attempts) },
          { key: 'noReps', head: figure.columns.noReps, figures: true, cell: (bin) => number(bin.noReps) },
          {
            key: 'rate',
            head: figure.columns.rate,
            figures: true,
            cell: (bin) => (bin.rate === null ? words.figures.dash : words.figures.rateOf(bin.rate)),
          },
        ],
        rows: place.bins,
        rowKey: (bin) => String(bin.from),
      }}
    >
      {bins.length === 0 ? null : (
        <LineWithIntervals
          fitted
          height={240}
          hint={words.figures.walk}
          label={figure.label}
          xLabel={figure.x}
          yLabel={figure.y}
          xAxis={(range) => numberAxis([0, 100], range, (value) => percent(value / 100), { count: 4 })}
          yAxis={(range) => rateAxis(top, range, plain)}
          points={bins.map((bin) => ({
            x: 50 * (bin.from + bin.to),
            y: bin.rate.value * 100,
            low: bin.rate.low * 100,
            high: bin.rate.high * 100,
            text: figure.bin(bin.from, bin.to, bin.noReps, bin.attempts, bin.rate),
          }))}
          band={curve.map(({ x, value, low, high }) => ({
            x: x * 100,
            y: value * 100,
            low: low * 100,
            high: high * 100,
          }))}
        />
      )}
    </Evidence>
  );
}
