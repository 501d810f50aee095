import { useState } from 'react';
import type { Beside, JudgeView } from '../../../../shared-types/contract/review/judges.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { type IntervalRow, IntervalRows } from '../../../parts/figure/interval-rows.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { Evidence } from '../view/evidence.tsx';

interface BesideFigureProps {
  readonly overall: Beside;
  readonly reasons: JudgeView['reasons'];
  /** The station of a reason where several are mixed. */
  readonly stationOf: ((sheet: string) => string) | undefined;
}

interface Line extends Beside {
  readonly key: string;
  readonly name: string;
}

const shownFirst = 7;

/** How many more or fewer no-reps a judge calls than the others on the same athletes, reason by reason. */
export function BesideFigure({ overall, reasons, stationOf }: BesideFigureProps) {
  const words = useWords().review;
  const texts = words.judge;
  const { number, percent } = useFormats();
  const [all, setAll] = useState(false);
  const nameOf = ({ sheet, code, name }: JudgeView['reasons'][number]): string => {
    const own = code === '' ? words.figures.reasons.unexplained : name === '' ? code : name;
    return stationOf === undefined ? own : `${own} · ${stationOf(sheet)}`;
  };
  const lines: readonly Line[] = [
    { ...overall, key: 'all', name: texts.all },
    ...reasons.map((reason) => ({ ...reason, key: `${reason.sheet} ${reason.code}`, name: nameOf(reason) })),
  ];
  const shown = all ? lines : lines.slice(0, shownFirst + 1);
  const rate = (share: number | null): string => (share === null ? words.figures.dash : percent(share, 1));
  return (
    <Evidence
      title={texts.besideTitle}
      size="pair"
      how={words.how.beside}
      testId="figure-beside"
      table={{
        columns: [
          { key: 'reason', head: texts.columns.reason, cell: (line) => line.name },
          { key: 'own', head: texts.columns.own, figures: true, cell: (line) => rate(line.own.rate) },
          { key: 'others', head: texts.columns.others, figures: true, cell: (line) => rate(line.others.rate) },
          {
            key: 'difference',
            head: texts.columns.difference,
            figures: true,
            cell: (line) => (line.difference === null ? words.figures.dash : texts.besideText(line.difference)),
          },
          { key: 'attempts', head: texts.columns.attempts, figures: true, cell: (line) => number(line.own.attempts) },
        ],
        rows: lines,
        rowKey: (line) => line.key,
      }}
    >
      <IntervalRows
        label={texts.besideTitle}
        scaleLabel={texts.besideAxis}
        tick={texts.besideTick}
        rows={shown.map(
          (line): IntervalRow => ({
            key: line.key,
            name: line.name,
            ...(line.own.rate === null || line.others.rate === null
              ? {}
              : { remark: texts.besideRemark(line.own.rate, line.others.rate) }),
            value:
              line.difference === null
                ? null
                : {
                    value: line.difference.value * 100,
                    low: line.difference.low * 100,
                    high: line.difference.high * 100,
                  },
            text:
              line.difference === null
                ? words.figures.cannotTell(line.verdict.kind === 'too-few' ? line.verdict.why : 'not-computable')
                : texts.besideText(line.difference),
            apart: line.verdict.kind === 'more' || line.verdict.kind === 'fewer',
          }),
        )}
      />
      {lines.length > shownFirst + 1 ? (
        <div className="no-print">
          <Button weight="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? words.figures.reasons.fewer : words.figures.reasons.more(lines.length - shownFirst - 1)}
          </Button>
        </div>
      ) : null}
    </Evidence>
  );
}

/** Whether a judge calls more or fewer no-reps than the others, as a sentence. */
export function BesideWords({ beside: { verdict, difference } }: { beside: Beside }) {
  const words = useWords().review;
  const none = { value: 0, low: 0, high: 0 };
  switch (verdict.kind) {
    case 'more':
    case 'fewer':
      return words.judge[verdict.kind](difference ?? none);
    case 'alike':
      return words.judge.alike;
    case 'unclear':
      return words.judge.unclear(verdict.stillNeeded);
    case 'too-few':
      return words.judge.tooFew(words.answer.why[verdict.why]);
  }
}
