import type { JudgeView } from '../../../../shared-types/contract/review/judges.ts';
import { numberAxis } from '../../../parts/figure/axis.ts';
import { LineWithIntervals } from '../../../parts/figure/curves.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { rateAxis, rateTop } from '../figures/rate-axis.ts';
import { Evidence } from '../view/evidence.tsx';

/** Whether a judge's calls drift over a session. */
export function DriftFigure({ drift }: { drift: JudgeView['drift'] }) {
  const words = useWords().review;
  const texts = words.judge;
  const { number, plain } = useFormats();
  const { verdict, sessions, curve } = drift;
  const telling = (): string => {
    switch (verdict.kind) {
      case 'rises':
      case 'falls':
      case 'flat':
        return texts[verdict.kind](sessions);
      case 'unclear':
        return texts.driftUnclear(sessions);
      case 'too-few':
        return words.figures.cannotTell(verdict.why);
    }
  };
  const last = curve.at(-1)?.x ?? 0;
  const bins = drift.bins.flatMap((bin) =>
    bin.rate === null ? [] : [{ ...bin, rate: bin.rate, middle: bin.to === null ? bin.from : (bin.from + bin.to) / 2 }],
  );
  const top = rateTop(
    bins,
    curve.map((point) => point.high),
  );
  return (
    <Evidence
      title={texts.driftTitle}
      size="alone"
      telling={telling()}
      how={words.how.drift}
      testId="figure-drift"
      table={{
        columns: [
          { key: 'hours', head: texts.hours, cell: (bin) => texts.hourSpan(bin.from, bin.to) },
          {
            key: 'attempts',
            head: words.figures.place.columns.attempts,
            figures: true,
            cell: (bin) => number(bin.attempts),
          },
          { key: 'noReps', head: words.figures.place.columns.noReps, figures: true, cell: (bin) => number(bin.noReps) },
          {
            key: 'rate',
            head: words.figures.place.columns.rate,
            figures: true,
            cell: (bin) => (bin.rate === null ? words.figures.dash : words.figures.rateOf(bin.rate)),
          },
        ],
        rows: drift.bins,
        rowKey: (bin) => String(bin.from),
      }}
    >
      {bins.length === 0 ? null : (
        <LineWithIntervals
          fitted
          height={240}
          hint={words.figures.walk}
          label={texts.driftLabel}
          xLabel={texts.driftX}
          yLabel={texts.driftY}
          xAxis={(range) => numberAxis([0, last, ...bins.map((bin) => bin.middle)], range, plain, { count: 4 })}
          yAxis={(range) => rateAxis(top, range, plain)}
          points={bins.map((bin) => ({
            x: bin.middle,
            y: bin.rate.value * 100,
            low: bin.rate.low * 100,
            high: bin.rate.high * 100,
            text: texts.driftBin(bin.from, bin.to, bin.noReps, bin.attempts, words.figures.rateOf(bin.rate)),
          }))}
          band={curve.map(({ x, value, low, high }) => ({ x, y: value * 100, low: low * 100, high: high * 100 }))}
        />
      )}
    </Evidence>
  );
}
