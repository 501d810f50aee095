import { useLocation } from 'wouter';
import type { PictureRow } from '../../../../shared-types/contract/review/figures.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { SetPicture } from '../../../parts/figure/set-picture.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { setPlace } from '../address/places.ts';
import { Evidence } from '../view/evidence.tsx';
import { useDayText } from './use-day-text.ts';

interface PictureFigureProps {
  readonly rows: readonly PictureRow[];
  readonly sheet: StandardSheet | undefined;
  /** Asks for more sets; none where all are shown, or as many as can be. */
  readonly onMore: (() => void) | undefined;
}

/** The attempts of many sets as one picture. */
export function PictureFigure({ rows, sheet, onMore }: PictureFigureProps) {
  const words = useWords().review;
  const { number } = useFormats();
  const [, go] = useLocation();
  const figure = words.figures.picture;
  const day = useDayText(rows.map((row) => row.at));
  const noReps = (row: PictureRow): number =>
    Array.from(row.marks).filter((sign) => sign !== '.' && sign !== '!').length;
  const faultName = (letter: string): string => sheet?.faults.find((fault) => fault.initial === letter)?.name ?? letter;
  return (
    <Evidence
      title={figure.title}
      size="wide"
      tall
      how={[...words.how.picture, figure.legend]}
      testId="figure-picture"
      table={{
        columns: [
          { key: 'day', head: figure.columns.day, cell: (row) => words.figures.date(row.at) },
          { key: 'attempts', head: figure.columns.attempts, figures: true, cell: (row) => number(row.marks.length) },
          { key: 'noReps', head: figure.columns.noReps, figures: true, cell: (row) => number(noReps(row)) },
          { key: 'marks', head: figure.columns.marks, cell: (row) => <code>{row.marks}</code> },
        ],
        rows: rows.toReversed(),
        rowKey: (row) => row.id,
      }}
    >
      <SetPicture
        label={figure.label(rows.length)}
        sets={rows.map((row) => ({
          key: row.id,
          name: day(row.at),
          text: figure.set(words.figures.date(row.at), row.marks.length, noReps(row)),
          marks: row.marks,
          cyclesS: row.cyclesS,
        }))}
        faultName={faultName}
        onPick={(index) => {
          const row = rows[index];
          if (row !== undefined) go(setPlace(row.id));
        }}
      />
      {onMore === undefined ? null : (
        <div className="no-print">
          <Button weight="quiet" onClick={onMore}>
            {figure.more}
          </Button>
        </div>
      )}
    </Evidence>
  );
}
