import { useState } from 'react';
import { Link } from 'wouter';
import type { GroupLine } from '../../../../shared-types/contract/review/judges.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Card } from '../../../parts/controls/card.tsx';
import { Table } from '../../../parts/controls/table.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';

const shownFirst = 15;

interface GroupTableProps {
  readonly title: string;
  readonly lines: readonly GroupLine[];
  /** Where a line leads. */
  readonly to: (id: string) => string;
}

/** Athletes, judges or stations of the gym, a line each to drill into. */
export function GroupTable({ title, lines, to }: GroupTableProps) {
  const words = useWords().review;
  const texts = words.judge.gym;
  const { number, percent } = useFormats();
  const [all, setAll] = useState(false);
  const shown = all ? lines : lines.slice(0, shownFirst);
  return (
    <Card title={title}>
      <Table
        caption={texts.tableOf(title)}
        columns={[
          {
            key: 'name',
            head: texts.columns.name,
            cell: (line) => (
              <Link href={to(line.id)}>
                <bdi>{line.name}</bdi>
              </Link>
            ),
          },
          { key: 'sets', head: texts.columns.sets, figures: true, cell: (line) => number(line.sets) },
          {
            key: 'rate',
            head: texts.columns.rate,
            figures: true,
            cell: ({ rate }) =>
              rate === null ? (
                words.figures.dash
              ) : (
                <>
                  {percent(rate.value, 1)} <span className="no-print">{words.judge.span(rate)}</span>
                </>
              ),
          },
          { key: 'lost', head: texts.columns.lost, figures: true, cell: (line) => words.judge.lost(line.per100S) },
        ]}
        rows={shown}
        rowKey={(line) => line.id}
      />
      {lines.length > shownFirst ? (
        <div className="no-print">
          <Button weight="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? words.figures.reasons.fewer : words.figures.reasons.more(lines.length - shownFirst)}
          </Button>
        </div>
      ) : null}
    </Card>
  );
}
