import type { Attempt } from '../../../../shared-types/log/state.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { useWords } from '../../../parts/words/words.tsx';
import { useMatches } from '../use-matches.ts';
import { BodyFigure, shareFromTop } from './body-figure.tsx';
import type { Intent } from './decide.ts';
import styles from './fault-zones.module.css';
import { PressButton } from './press-button.tsx';
import type { Hit } from './use-live-set.ts';
import { faultZones, type Zone } from './zones.ts';

interface FaultZonesProps {
  readonly sheet: StandardSheet;
  /** The call whose fault may be named now, with its number; null where none waits. */
  readonly open: { readonly attempt: Attempt; readonly number: number } | null;
  readonly hit: Hit;
  /** The key of each fault, as printed on the board. */
  readonly keyOf: (code: string) => string;
  readonly onPress: (intent: Intent, timeStamp: number) => void;
}

/**
 * The faults from high to low, as the eye meets them on the body. A zone calls a no-rep with its fault in one press; the
 * knots on the figure name the fault of a call made before, without standing in the way of the next.
 */
export function FaultZones({ sheet, open, hit, keyOf, onPress }: FaultZonesProps) {
  const words = useWords().judge.live;
  const tall = useMatches('(min-height: 42rem) and (min-width: 37rem)');
  const zones = faultZones(sheet.faults, tall ? 8 : 6);
  const rows = 1 + Math.max(0, ...zones.map((zone) => zone.row));
  const columns = 1 + Math.max(0, ...zones.map((zone) => zone.column));
  const turnOf = (place: string): number => (hit.place === place ? hit.turn : 0);
  return (
    <section className={styles.faults} aria-label={words.faults} data-open={open !== null} data-columns={columns}>
      <p className={styles.question} role="status">
        {open === null
          ? null
          : open.attempt.verdict === 'caution'
            ? words.whyCaution(open.number)
            : words.why(open.number)}
      </p>
      <p className={styles.caption} aria-hidden="true">
        {words.faults}
      </p>
      <div className={styles.figure}>
        <div className={styles.drawing}>
          <BodyFigure movement={sheet.movement} heights={zones.map((zone) => zone.bodyHeight)} />
          {columns === 1 ? <Leaders zones={zones} rows={rows} /> : null}
        </div>
        {open === null ? null : (
          <div className={styles.knots} style={{ '--rows': rows, '--columns': columns }}>
            {zones.map(({ fault, row, column }) => (
              <PressButton
                key={fault.code}
                className={styles.knot}
                style={{ gridRow: row + 1, gridColumn: column + 1 }}
                aria-label={words.explainAs(open.number, fault.name)}
                title={fault.name}
                onPress={(timeStamp) => onPress({ kind: 'explain', fault: fault.code }, timeStamp)}
              >
                {fault.initial}
              </PressButton>
            ))}
          </div>
        )}
      </div>
      <div className={styles.zones} style={{ '--rows': rows, '--columns': columns }}>
        {zones.map(({ fault, row, column }) => (
          <PressButton
            key={fault.code}
            className={styles.zone}
            style={{ gridRow: row + 1, gridColumn: column + 1 }}
            turn={turnOf(`fault ${fault.code}`)}
            title={fault.standard}
            onPress={(timeStamp) => onPress({ kind: 'no-rep', faults: [fault.code] }, timeStamp)}
          >
            <span className={styles.name}>{fault.name}</span>
            <Notch text={fault.initial} />
            {keyOf(fault.code) === fault.initial ? null : <kbd className={styles.key}>{keyOf(fault.code)}</kbd>}
          </PressButton>
        ))}
      </div>
    </section>
  );
}

/** The open notch of the ribbon, with the fault's initial in it: the same sign on the button, the ribbon and on paper. */
function Notch({ text }: { text: string }) {
  return (
    <span className={styles.notch} aria-hidden="true">
      <svg viewBox="0 0 32 36" preserveAspectRatio="none" aria-hidden="true">
        <path d="M2 34V2L16 9L30 2V34" />
      </svg>
      <span>{text}</span>
    </span>
  );
}

/** A fine line from each knot on the plumb line to its zone. */
function Leaders({ zones, rows }: { zones: readonly Zone[]; rows: number }) {
  return (
    <svg className={styles.leaders} viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
      {zones.map((zone) => (
        <path
          key={zone.fault.code}
          vectorEffect="non-scaling-stroke"
          d={`M83 ${shareFromTop(zone.bodyHeight) * 100}L106 ${((zone.row + 0.5) / rows) * 100}`}
        />
      ))}
    </svg>
  );
}
