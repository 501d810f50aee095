import { useState } from 'react';
import type { AthleteFilter } from '../../../../shared-types/contract/review/filter.ts';
import type { Forecast, Scenario } from '../../../../shared-types/contract/review/plans.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { IntervalBars } from '../../../parts/figure/interval-bars.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { put } from '../address/choice.ts';
import { readGoal, writeGoal } from '../address/goal.ts';
import type { Chosen } from '../address/use-choice.ts';
import { Evidence } from '../view/evidence.tsx';
import { useReview } from '../view/use-review.ts';
import { GoalFields } from './goal-fields.tsx';
import { endingKinds, useGoalPhrase, usualGoal } from './goal-text.ts';
import styles from './plans.module.css';

interface ForecastFigureProps {
  readonly filter: AthleteFilter;
  readonly chosen: Chosen;
  readonly sheet: StandardSheet | undefined;
  readonly repsName: string;
}

/** What a goal will cost at the present rate, at half of it, and at any other; the goal stands in the address. */
export function ForecastFigure({ filter, chosen, sheet, repsName }: ForecastFigureProps) {
  const words = useWords().review;
  const phrase = useGoalPhrase();
  const { percent } = useFormats();
  const texts = words.plans.forecast;
  const { params, edit } = chosen;
  const [first] = endingKinds(sheet);
  const goal = readGoal(params.get('goal')) ?? usualGoal(first ?? 'reps');
  const asked = rateOf(params.get('rate'));
  const [wrong, setWrong] = useState<{ readonly value: number | null } | null>(null);
  const input = { filter, goal, ...(asked === null ? {} : { rate: asked }) };
  const forecast = useReview(`forecast ${JSON.stringify(input)}`, (client, signal) =>
    client.review.forecast(input, { signal }),
  );
  const scenarios = forecast.data?.kind === 'forecast' ? forecast.data.scenarios : [];
  const figureOf = (scenario: Scenario) => scenario.repsLost ?? scenario.seconds ?? scenario.noReps;
  const inReps = scenarios.some((scenario) => scenario.repsLost !== null);
  const inSeconds = !inReps && scenarios.some((scenario) => scenario.seconds !== null);
  const nameOf = ({ name, rate }: Scenario): string => (name === 'given' ? texts.given(rate.value) : texts[name]);
  const textOf = (scenario: Scenario): string =>
    inSeconds ? texts.text(figureOf(scenario)) : texts.textReps(figureOf(scenario));
  return (
    <Evidence
      title={texts.title}
      size="half"
      how={words.how.forecast}
      testId="figure-forecast"
      table={{
        columns: [
          { key: 'scenario', head: texts.columns.scenario, cell: nameOf },
          { key: 'rate', head: texts.columns.rate, figures: true, cell: ({ rate }) => percent(rate.value, 1) },
          { key: 'noReps', head: texts.columns.noReps, figures: true, cell: ({ noReps }) => texts.textReps(noReps) },
          {
            key: 'seconds',
            head: texts.columns.seconds,
            figures: true,
            cell: ({ seconds }) => (seconds === null ? words.figures.dash : texts.text(seconds)),
          },
          {
            key: 'reps',
            head: texts.columns.reps,
            figures: true,
            cell: ({ repsLost }) => (repsLost === null ? words.figures.dash : texts.textReps(repsLost)),
          },
        ],
        rows: scenarios,
        rowKey: (scenario) => scenario.name,
      }}
    >
      <div className={`${styles.fields} no-print`}>
        <GoalFields goal={goal} sheet={sheet} onChange={(next) => edit((all) => put(all, 'goal', writeGoal(next)))} />
        <NumberField
          label={texts.rate}
          optional
          unit="%"
          value={wrong === null ? (asked === null ? null : Math.round(asked * 1_000) / 10) : wrong.value}
          error={wrong === null ? undefined : texts.badRate}
          onChange={(value) => {
            const fits = value === null || (value >= 0 && value <= 95);
            setWrong(fits ? null : { value });
            if (fits) edit((all) => put(all, 'rate', value === null ? '' : String(value)));
          }}
        />
      </div>
      <Loaded reading={forecast}>
        {(data) => (
          <>
            <p className={styles.telling}>{<ForecastWords forecast={data} goal={phrase(goal, repsName)} />}</p>
            {data.kind === 'too-few' ? null : (
              <IntervalBars
                label={texts.title}
                scale={{
                  label: inReps ? texts.axisReps : inSeconds ? texts.axis : texts.axisNoReps,
                  tick: String,
                }}
                bars={data.scenarios.map((scenario) => ({
                  key: scenario.name,
                  name: nameOf(scenario),
                  remark: texts.remark(scenario.rate, scenario.noReps),
                  value: figureOf(scenario),
                  text: textOf(scenario),
                }))}
              />
            )}
          </>
        )}
      </Loaded>
    </Evidence>
  );
}

/** Per cent in the address; a share of attempts here; null where none is asked for. */
function rateOf(text: string | null): number | null {
  if (text === null || text.trim() === '') return null;
  const value = Number(text);
  return Number.isFinite(value) && value >= 0 && value <= 95 ? value / 100 : null;
}

/** The forecast as a sentence: "100 throws at this rate: +38 s (21 to 60); at half the rate: +18 s". */
export function ForecastWords({ forecast, goal }: { forecast: Forecast; goal: string }) {
  const words = useWords().review;
  const texts = words.plans.forecast;
  if (forecast.kind === 'too-few') return texts.none(words.answer.why[forecast.why]);
  const at = (name: Scenario['name']) => forecast.scenarios.find((scenario) => scenario.name === name);
  const [present, half] = [at('present'), at('half')];
  if (present === undefined) return null;
  if (present.repsLost !== null) return texts.repsSentence(goal, present.repsLost, half?.repsLost ?? null);
  if (present.seconds !== null) return texts.sentence(goal, present.seconds, half?.seconds ?? null);
  return texts.noRepsOnly(goal, present.noReps);
}
