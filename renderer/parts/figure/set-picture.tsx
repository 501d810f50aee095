import { useFormats, useWords } from '../words/words.tsx';
import { RowsChart } from './rows-chart.tsx';
import { type MarkRow, markPaths, roundAttempts, slotAt, slotMiddle, slotsOf } from './set-marks.ts';
import styles from './set-picture.module.css';

export interface PictureSet extends MarkRow {
  readonly key: string;
  /** Before the row, such as its date. */
  readonly name: string;
  /** The set in words. */
  readonly text: string;
}

interface SetPictureProps {
  readonly sets: readonly PictureSet[];
  readonly label: string;
  /** What a no-rep's letter stands for. */
  readonly faultName: (letter: string) => string;
  readonly onPick?: (row: number) => void;
}

/** The attempts of many sets as one picture, a row a set; two paths whatever the number of attempts. */
export function SetPicture({ sets, label, faultName, onPick }: SetPictureProps) {
  const words = useWords().ribbon;
  const { number } = useFormats();
  // Many rows stand closer.
  const rowHeight = sets.length > 60 ? 12 : sets.length > 24 ? 16 : 22;
  const most = sets.reduce((longest, set) => Math.max(longest, set.marks.length), 1);
  const markText = (row: number, place: number): string => {
    const set = sets[row];
    const sign = set?.marks[place] ?? '';
    const cycleS = set?.cyclesS[place] ?? null;
    const noRep = sign !== '.' && sign !== '!';
    return [
      set?.name ?? '',
      words.mark({
        number: place + 1,
        verdict: noRep ? 'no-rep' : sign === '!' ? 'caution' : 'counted',
        withdrawn: false,
        reversed: false,
        initial: null,
        reasons: noRep && sign !== '?' ? [faultName(sign)] : [],
        at: 0,
        cycleS,
      }),
    ].join(': ');
  };
  return (
    <RowsChart
      label={label}
      rows={sets}
      rowHeight={rowHeight}
      xLabel={words.pictureAxis}
      xAxis={(range) => {
        const slots = slotsOf(sets, range);
        const place = (attempt: number): number => slotMiddle(slots, attempt - 1);
        return { place, ticks: roundAttempts(most).map((value) => ({ at: place(value), text: number(value) })) };
      }}
      hint={words.pictureHint}
      marks={{
        count: (row) => sets[row]?.marks.length ?? 0,
        text: markText,
        at: (row, x, { left, right }) => {
          const set = sets[row];
          return set === undefined ? -1 : slotAt(set, slotsOf(sets, [left, right]), x);
        },
        x: (_row, mark, { left, right }) => slotMiddle(slotsOf(sets, [left, right]), mark),
      }}
      {...(onPick === undefined ? {} : { onPick })}
    >
      {(frame) => {
        const slots = slotsOf(sets, [frame.left, frame.right]);
        const { counted, noReps } = markPaths(sets, slots, frame);
        return (
          <>
            <path className={styles.counted} d={counted} />
            <path className={styles.noRep} d={noReps} strokeWidth={Math.max(0.75, Math.min(1.5, slots.slot / 4))} />
          </>
        );
      }}
    </RowsChart>
  );
}
