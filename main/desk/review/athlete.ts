import type { AthleteFilter } from '../../../shared-types/contract/review/filter.ts';
import type { AthleteView } from '../../../shared-types/contract/review.ts';
import { calledName } from '../../../shared-types/people.ts';
import { hurryOf, placeOf } from './dependence.ts';
import { Stations } from './names.ts';
import { pacingOf } from './pacing.ts';
import { pictureOf } from './picture.ts';
import { chartOf, setPoints } from './points.ts';
import { reasonsOf } from './reasons.ts';
import { type ReviewLedger, readSelection } from './selection.ts';
import { costOf, totalsOf } from './totals.ts';
import { trainOf } from './train.ts';
import { trendOf } from './trend.ts';

/** One athlete at one station. `rows`: latest sets whose attempts are read. Errors: `unknown-person`, `unknown-sheet`. */
export function athleteView(
  ledger: ReviewLedger,
  { filter, rows }: { readonly filter: AthleteFilter; readonly rows: number },
): AthleteView {
  const athlete = ledger.people.get(filter.athlete);
  const stations = new Stations(ledger);
  const texts = stations.of(filter.sheet);
  const selection = readSelection(ledger, filter);
  const { sets } = selection;
  const { chart, points } = chartOf(sets);
  const reasons = reasonsOf(ledger, stations, selection);
  const shown = sets.slice(-rows);
  const ids = ledger.reports.setIds(shown.map((set) => set.n));
  const factsOf = new Map(shown.flatMap((set) => [[ids.get(set.n) ?? '', set] as const]));
  const attempts = ledger.reports.attempts(selection.filter, rows);
  const startOf = new Map([...factsOf].map(([id, set]) => [id, set.at]));
  return {
    athlete: { id: athlete.id, name: calledName(athlete) },
    station: stations.name(filter.sheet),
    totals: totalsOf(sets),
    cost: costOf(sets),
    points: setPoints(ledger, sets, points),
    trend: trendOf(sets, chart),
    reasons,
    place: placeOf(ledger, selection),
    hurry: hurryOf(ledger, selection),
    picture: pictureOf(attempts, startOf, texts),
    pacing: pacingOf(attempts, factsOf),
    train: trainOf(ledger, selection, reasons),
  };
}
