import type { Estimate } from '../../../../shared-types/contract/reports.ts';
import type { Comparison } from '../../../../shared-types/contract/review/plans.ts';
import { IntervalBars } from '../../../parts/figure/interval-bars.tsx';
import { IntervalRows } from '../../../parts/figure/interval-rows.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { Evidence } from '../view/evidence.tsx';
import { SetLinks } from '../view/set-links.tsx';
import viewStyles from '../view/view.module.css';
import styles from './plans.module.css';

interface ComparisonFiguresProps {
  readonly comparison: Comparison;
  readonly names: { readonly a: string; readonly b: string };
  readonly repsName: string;
  /** Go of the sets that are known, milliseconds since 1970 UTC. */
  readonly days: ReadonlyMap<string, number>;
}

const sides = ['a', 'b'] as const;

/** The answer of a comparison, then its figures side by side. */
export function ComparisonFigures({ comparison, names, repsName, days }: ComparisonFiguresProps) {
  const words = useWords().review;
  const { number, plain, seconds } = useFormats();
  const texts = words.plans.compare;
  const { dash } = words.figures;
  const { difference, per100S } = comparison;
  const apart = comparison.verdict.kind === 'fewer-in-a' || comparison.verdict.kind === 'fewer-in-b';
  const rows: readonly Measure[] = [
    ...sidesOf('sets', texts.sets, (side) => number(comparison[side].totals.sets)),
    ...sidesOf('attempts', texts.attempts, (side) => number(comparison[side].totals.attempts)),
    {
      key: 'rate',
      name: texts.rates,
      ...both((side) => {
        const { rate } = comparison[side].totals;
        return rate === null ? dash : words.figures.rateOf(rate);
      }),
      difference: difference === null ? dash : texts.differenceOf(difference),
    },
    {
      key: 'lost',
      name: texts.costs(repsName),
      ...both((side) => {
        const lost = comparison[side].cost.per100S;
        return lost === null ? dash : words.figures.secondsOf(lost);
      }),
      difference: per100S === null ? dash : words.figures.secondsOf(per100S),
    },
    ...sidesOf('pace', texts.pace, (side) => {
      const { cleanS } = comparison[side];
      return cleanS === null ? dash : seconds(cleanS, 2);
    }),
  ];
  return (
    <>
      <section data-testid="answer">
        <p className={viewStyles.sentence}>
          <Verdict comparison={comparison} names={names} />
        </p>
      </section>
      <div className={viewStyles.grid}>
        <Evidence
          title={texts.rates}
          size="pair"
          how={words.how.compare}
          testId="figure-rates"
          table={{
            columns: [
              { key: 'measure', head: texts.columns.measure, cell: (row: Measure) => row.name },
              { key: 'a', head: names.a, figures: true, cell: (row) => row.a },
              { key: 'b', head: names.b, figures: true, cell: (row) => row.b },
              { key: 'difference', head: texts.columns.difference, figures: true, cell: (row) => row.difference },
            ],
            rows,
            rowKey: (row) => row.key,
          }}
        >
          <IntervalBars
            label={texts.rates}
            scale={{ label: texts.rates, tick: plain }}
            bars={sides.map((side) => ({
              key: side,
              name: names[side],
              remark: words.filters.size(comparison[side].totals.sets, comparison[side].totals.attempts),
              value: inHundred(comparison[side].totals.rate),
              text: comparison[side].totals.rate === null ? dash : number(comparison[side].totals.rate.value * 100, 1),
            }))}
          />
          {difference === null ? null : (
            <IntervalRows
              label={texts.difference}
              scaleLabel={texts.rates}
              tick={plain}
              rows={[
                {
                  key: 'difference',
                  name: texts.difference,
                  value: inHundred(difference),
                  text: texts.differenceOf(difference),
                  apart,
                },
              ]}
            />
          )}
        </Evidence>
        <Evidence title={texts.costs(repsName)} size="pair" how={words.how.compare} testId="figure-costs">
          <IntervalBars
            label={texts.costs(repsName)}
            scale={{ label: words.figures.reasons.axis, tick: plain }}
            bars={sides.map((side) => {
              const { cost, cleanS } = comparison[side];
              return {
                key: side,
                name: names[side],
                ...(cleanS === null ? {} : { remark: texts.paceOf(seconds(cleanS, 2)) }),
                value: cost.per100S,
                text: cost.per100S === null ? words.figures.reasons.unknown : seconds(cost.per100S.value),
              };
            })}
          />
          {per100S === null ? null : (
            <IntervalRows
              label={texts.difference}
              scaleLabel={words.figures.reasons.axis}
              tick={plain}
              rows={[
                {
                  key: 'difference',
                  name: texts.difference,
                  value: per100S,
                  text: words.figures.secondsOf(per100S),
                  apart: per100S.low > 0 || per100S.high < 0,
                },
              ]}
            />
          )}
        </Evidence>
      </div>
      <div className={`${styles.behind} no-print`}>
        {sides.map((side) => (
          <section key={side} aria-label={texts.behind(names[side])}>
            <h2>{texts.behind(names[side])}</h2>
            <SetLinks
              sets={comparison[side].latest.map((id, index) => ({
                id,
                text: dayText(days.get(id), index),
              }))}
            />
          </section>
        ))}
      </div>
    </>
  );

  function dayText(at: number | undefined, index: number): string {
    return at === undefined ? words.figures.reasons.nth(index + 1) : words.figures.date(at);
  }
}

interface Measure {
  readonly key: string;
  readonly name: string;
  readonly a: string;
  readonly b: string;
  readonly difference: string;
}

function both(text: (side: 'a' | 'b') => string): Pick<Measure, 'a' | 'b'> {
  return { a: text('a'), b: text('b') };
}

function sidesOf(key: string, name: string, text: (side: 'a' | 'b') => string): readonly Measure[] {
  return [{ key, name, ...both(text), difference: '' }];
}

function inHundred(share: Estimate | null): Estimate | null {
  return share === null ? null : { value: share.value * 100, low: share.low * 100, high: share.high * 100 };
}

function Verdict({ comparison, names }: Pick<ComparisonFiguresProps, 'comparison' | 'names'>) {
  const words = useWords().review;
  const texts = words.plans.compare;
  const { verdict, difference } = comparison;
  switch (verdict.kind) {
    case 'fewer-in-a':
    case 'fewer-in-b': {
      const [less, more] = verdict.kind === 'fewer-in-a' ? [names.a, names.b] : [names.b, names.a];
      return `${texts.fewer(less, more, Math.abs(difference?.value ?? 0))} ${texts.real}`;
    }
    case 'unclear':
      return texts.unclear(verdict.stillNeeded, names.b);
    case 'shared-sets':
      return texts.shared;
    case 'too-few':
      return texts.tooFew(names[verdict.side], words.answer.why[verdict.why]);
  }
}
