import type { TrialLine } from '../../../../shared-types/contract/drills/scores.ts';
import { FAULTS, type MovementName, unitOf } from '../../../../shared-types/motion/specification.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { type Column, Table } from '../../../parts/controls/table.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { faultName, useCallText } from '../use-call-text.ts';

interface TrialTableProps {
  readonly trials: readonly TrialLine[];
  readonly movement: MovementName;
  readonly sheet: StandardSheet;
  readonly onLook: (trial: number) => void;
}

/** Every rep with its truth and the judge's call. */
export function TrialTable({ trials, movement, sheet, onLook }: TrialTableProps) {
  const words = useWords().eye;
  const { list, number } = useFormats();
  const say = useCallText(sheet);
  const truth = (trial: TrialLine): string => {
    if (trial.truth.length === 0) return words.result.good;
    return list(
      trial.truth.map((code) => {
        const known = FAULTS[movement].find((item) => item === code);
        const margin = trial.margins[code];
        return known === undefined || margin === null || margin === undefined
          ? faultName(sheet, code)
          : words.margins.measured(movement, known, margin, unitOf(movement, known));
      }),
    );
  };
  const columns: readonly Column<TrialLine>[] = [
    { key: 'trial', head: words.result.trial, cell: (trial) => number(trial.trial + 1), figures: true },
    { key: 'truth', head: words.result.truth, cell: truth },
    { key: 'call', head: words.result.call, cell: (trial) => (trial.call === null ? '–' : say(trial.call)) },
    { key: 'outcome', head: words.result.outcome, cell: (trial) => words.result.outcomes[trial.outcome] },
    {
      key: 'reaction',
      head: words.result.counts.reaction,
      cell: (trial) => {
        if (trial.reactionMs === null) return '–';
        return trial.reactionMs < 0
          ? words.result.counts.early(trial.reactionMs)
          : words.result.counts.after(trial.reactionMs);
      },
      figures: true,
    },
    {
      key: 'look',
      head: words.result.lookAgain,
      cell: (trial) => (
        <Button weight="quiet" onClick={() => onLook(trial.trial)}>
          {words.result.lookAgain}
        </Button>
      ),
    },
  ];
  return (
    <Table caption={words.result.trialsTitle} columns={columns} rows={trials} rowKey={(trial) => String(trial.trial)} />
  );
}
