import { useLocation } from 'wouter';
import type { Pacing, SetPace } from '../../../../shared-types/contract/review/pacing.ts';
import { numberAxis, timeAxis } from '../../../parts/figure/axis.ts';
import { LineWithIntervals } from '../../../parts/figure/curves.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { setPlace } from '../address/places.ts';
import { Evidence } from '../view/evidence.tsx';
import { useDayText } from './use-day-text.ts';

/** How evenly the sets were paced, and whether no-reps follow a fast start. */
export function PacingFigure({ pacing }: { pacing: Pacing }) {
  const words = useWords().review;
  const { percent, seconds } = useFormats();
  const [, go] = useLocation();
  const figure = words.figures.pacing;
  const shown = pacing.sets.flatMap((set) => (set.change === null ? [] : [{ ...set, change: set.change }]));
  const day = useDayText(shown.map((set) => set.at));
  const second = (value: number | null): string => (value === null ? words.figures.dash : seconds(value, 2));
  return (
    <Evidence
      title={figure.title}
      size="half"
      telling={<PaceWords pacing={pacing} />}
      how={words.how.pacing}
      note={figure.practice}
      testId="figure-pacing"
      table={{
        columns: [
          { key: 'day', head: figure.columns.day, cell: (set: SetPace) => words.figures.date(set.at) },
          { key: 'first', head: figure.columns.first, figures: true, cell: (set) => second(set.firstQuarterS) },
          { key: 'last', head: figure.columns.last, figures: true, cell: (set) => second(set.lastQuarterS) },
          {
            key: 'change',
            head: figure.columns.change,
            figures: true,
            cell: (set) => (set.change === null ? words.figures.dash : percent(set.change.value)),
          },
          {
            key: 'breaks',
            head: figure.columns.breaks,
            figures: true,
            cell: (set) => figure.breaks(set.breaks, set.breakMs),
          },
          { key: 'verdict', head: figure.columns.verdict, cell: (set) => figure.verdicts[set.verdict.kind] },
        ],
        rows: pacing.sets.toReversed(),
        rowKey: (set) => set.id,
      }}
    >
      {shown.length === 0 ? null : (
        <LineWithIntervals
          height={240}
          hint={words.figures.rate.hint}
          label={figure.label}
          xLabel={figure.x}
          yLabel={figure.y}
          xAxis={(range) =>
            timeAxis(
              shown.map((set) => set.at),
              range,
              day,
            )
          }
          yAxis={(range) =>
            numberAxis(
              // A tenth at least: a perfectly even set is no reason to magnify nothing.
              [10, ...shown.flatMap((set) => [set.change.low * 100, set.change.high * 100])],
              range,
              (value) => percent(value / 100),
              { fromZero: true },
            )
          }
          points={shown.map((set) => ({
            x: set.at,
            y: set.change.value * 100,
            low: set.change.low * 100,
            high: set.change.high * 100,
            text: figure.point(words.figures.date(set.at), set.change),
          }))}
          onPick={(index) => {
            const set = shown[index];
            if (set !== undefined) go(setPlace(set.id));
          }}
        />
      )}
    </Evidence>
  );
}

function PaceWords({ pacing: { overall, fastStart } }: { pacing: Pacing }) {
  const words = useWords().review;
  const figure = words.figures.pacing;
  const change = overall.change?.value ?? 0;
  const pace = (): string => {
    switch (overall.verdict.kind) {
      case 'even':
      case 'fading':
      case 'rising':
        return figure[overall.verdict.kind](change);
      case 'unclear':
        return figure.unclear;
      case 'too-few':
        return words.figures.cannotTell(overall.verdict.why);
    }
  };
  const start = (): string => {
    switch (fastStart.verdict.kind) {
      case 'follow':
        return figure.follow;
      case 'do-not-follow':
        return figure.doNotFollow;
      case 'unclear':
        return figure.startUnclear;
      case 'too-few':
        return '';
    }
  };
  const { fast, others } = fastStart;
  return (
    <>
      {[pace(), start()].filter((part) => part !== '').join(' ')}
      {fast.sets > 0 && others.sets > 0 ? <span className="no-print"> {figure.sides(fast, others)}</span> : null}
    </>
  );
}
