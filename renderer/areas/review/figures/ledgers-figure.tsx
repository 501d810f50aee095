import { useLocation } from 'wouter';
import type { SetPoint } from '../../../../shared-types/contract/review/figures.ts';
import { LedgerRows } from '../../../parts/figure/ledger-rows.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { setPlace } from '../address/places.ts';
import { Evidence } from '../view/evidence.tsx';
import { useDayText } from './use-day-text.ts';

/** So many sets side by side are still told apart. */
const most = 20;

/** Where the clock of the latest sets went, side by side. */
export function LedgersFigure({ points }: { points: readonly SetPoint[] }) {
  const words = useWords().review;
  const { duration } = useFormats();
  const [, go] = useLocation();
  const figure = words.figures.ledgers;
  const shown = points
    .flatMap((point) => (point.ledger === null ? [] : [{ ...point, ledger: point.ledger }]))
    .slice(-most);
  const day = useDayText(shown.map((point) => point.at));
  return (
    <Evidence
      title={figure.title}
      size="slim"
      tall
      how={words.how.ledgers}
      testId="figure-ledgers"
      table={{
        columns: [
          { key: 'day', head: figure.columns.day, cell: (point) => words.figures.date(point.at) },
          { key: 'clock', head: figure.columns.clock, figures: true, cell: (point) => duration(point.clockMs) },
          { key: 'work', head: figure.columns.work, figures: true, cell: (point) => duration(point.ledger.workMs) },
          { key: 'noRep', head: figure.columns.noRep, figures: true, cell: (point) => duration(point.ledger.noRepMs) },
          { key: 'break', head: figure.columns.break, figures: true, cell: (point) => duration(point.ledger.breakMs) },
          { key: 'start', head: figure.columns.start, figures: true, cell: (point) => duration(point.ledger.startMs) },
        ],
        rows: shown.toReversed(),
        rowKey: (point) => point.id,
      }}
    >
      <LedgerRows
        label={figure.label(shown.length)}
        rows={shown.map((point) => ({ key: point.id, name: day(point.at), ledger: point.ledger }))}
        onPick={(index) => {
          const point = shown[index];
          if (point !== undefined) go(setPlace(point.id));
        }}
      />
    </Evidence>
  );
}
