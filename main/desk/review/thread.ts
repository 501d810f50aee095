import { z } from 'zod';
import type { Subjects } from '../../../shared-types/contract/review/filter.ts';
import type { GymView, JudgeView } from '../../../shared-types/contract/review/judges.ts';
import {
  type Comparison,
  compareInput,
  type Forecast,
  forecastInput,
  type RaceCard,
  raceCardInput,
} from '../../../shared-types/contract/review/plans.ts';
import {
  type AthleteView,
  athleteInput,
  exportInput,
  gymInput,
  judgeInput,
  type ReviewExport,
} from '../../../shared-types/contract/review.ts';
import type { threadOs } from '../reports/thread-os.ts';
import { athleteView } from './athlete.ts';
import { comparisonOf } from './comparison.ts';
import { exportText } from './export.ts';
import { forecastOf } from './forecast.ts';
import { gymView } from './gym.ts';
import { judgeView } from './judge.ts';
import { raceCardOf } from './race-card.ts';
import type { ReviewLedger } from './selection.ts';
import { subjectsOf } from './subjects.ts';

/** The sums of the Review area, inside the thread of the reports. */
export function reviewThreadCalls(calls: typeof threadOs, ledger: ReviewLedger) {
  return {
    subjects: calls.handler((): Subjects => subjectsOf(ledger)),
    athlete: calls.input(athleteInput).handler(({ input }): AthleteView => athleteView(ledger, input)),
    judge: calls.input(judgeInput).handler(({ input }): JudgeView => judgeView(ledger, input)),
    gym: calls.input(gymInput).handler(({ input }): GymView => gymView(ledger, input)),
    compare: calls.input(compareInput).handler(({ input }): Comparison => comparisonOf(ledger, input)),
    forecast: calls.input(forecastInput).handler(({ input }): Forecast => forecastOf(ledger, input)),
    raceCard: calls.input(raceCardInput).handler(({ input }): RaceCard => raceCardOf(ledger, input)),
    export: calls
      .input(z.object({ asked: exportInput, now: z.number() }))
      .handler(({ input }) => exportText(input.asked, figuresOf(ledger, input.asked.of), input.now)),
  };
}

function figuresOf(ledger: ReviewLedger, of: ReviewExport['of']): object {
  switch (of.view) {
    case 'athlete':
      return athleteView(ledger, of);
    case 'judge':
      return judgeView(ledger, of);
    case 'gym':
      return gymView(ledger, of);
    case 'comparison':
      return comparisonOf(ledger, of);
    case 'forecast':
      return forecastOf(ledger, of);
    case 'race-card':
      return raceCardOf(ledger, of);
  }
}
