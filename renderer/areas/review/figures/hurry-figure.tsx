import type { Hurry } from '../../../../shared-types/contract/review/figures.ts';
import { numberAxis } from '../../../parts/figure/axis.ts';
import { LineWithIntervals } from '../../../parts/figure/curves.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { Evidence } from '../view/evidence.tsx';
import { rateAxis, rateTop } from './rate-axis.ts';

/** Beyond this share of a clean cycle the open last bin is drawn. */
const lastBinAt = 1.55;

/** Whether hurried attempts fail more: the rate by the attempt's own pace. */
export function HurryFigure({ hurry }: { hurry: Hurry }) {
  const words = useWords().review;
  const { number, plain, percent } = useFormats();
  const figure = words.figures.hurry;
  const { fitted, verdict } = hurry;
  const telling = (): string => {
    switch (verdict.kind) {
      case 'hurried':
      case 'slow':
        return fitted === null
          ? ''
          : figure[verdict.kind](fitted.from.value, fitted.fromX, fitted.to.value, fitted.toX);
      case 'flat':
        return figure.flat;
      case 'unclear':
        return figure.unclear(verdict.stillNeeded);
      case 'too-few':
        return words.figures.cannotTell(verdict.why);
    }
  };
  const bins = hurry.bins.flatMap((bin) => (bin.rate === null ? [] : [{ ...bin, rate: bin.rate }]));
  const middle = (bin: (typeof bins)[number]): number =>
    bin.to === null ? lastBinAt : bin.from === 0 ? bin.to - 0.05 : (bin.from + bin.to) / 2;
  const places = bins.map(middle);
  const [from, to] = [Math.min(0.75, ...places), Math.max(1.25, ...places)];
  // Where nobody was ever seen the curve is a guess, and is not drawn.
  const curve = hurry.curve.filter((point) => point.x >= from && point.x <= to);
  const top = rateTop(
    bins,
    curve.map((point) => point.value),
  );
  return (
    <Evidence
      title={figure.title}
      size="half"
      telling={telling()}
      how={words.how.hurry}
      testId="figure-hurry"
      table={{
        columns: [
          { key: 'pace', head: figure.columns.pace, cell: (bin) => figure.span(bin.from, bin.to) },
          { key: 'attempts', head: figure.columns.attempts, figures: true, cell: (bin) => number(bin.attempts) },
          { key: 'noReps', head: figure.columns.noReps, figures: true, cell: (bin) => number(bin.noReps) },
          {
            key: 'rate',
            head: figure.columns.rate,
            figures: true,
            cell: (bin) => (bin.rate === null ? words.figures.dash : words.figures.rateOf(bin.rate)),
          },
        ],
        rows: hurry.bins,
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
          xAxis={(range) => numberAxis([from * 100, to * 100], range, (value) => percent(value / 100), { count: 4 })}
          yAxis={(range) => rateAxis(top, range, plain)}
          points={bins.map((bin) => ({
            x: middle(bin) * 100,
            y: bin.rate.value * 100,
            low: bin.rate.low * 100,
            high: bin.rate.high * 100,
            text: figure.bin(figure.span(bin.from, bin.to), bin.noReps, bin.attempts, bin.rate),
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
