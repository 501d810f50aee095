import type { DrillRecord } from '../../../shared-types/contract/drills.ts';
import { foldDrill } from '../../../shared-types/drills/fold.ts';
import { shownFaults, shownMovement } from '../../../shared-types/drills/numbers.ts';
import type { DrillState } from '../../../shared-types/drills/state.ts';
import { unitOf } from '../../../shared-types/motion/specification.ts';
import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import type { FaultNamed } from '../../analysis/drills/fault-score.ts';
import { type JudgedDrill, judged } from '../../analysis/drills/outcomes.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';

/** What the scores of drills need of the ledger. */
export type DrillLedger = Pick<LedgerReader, 'people' | 'sheets' | 'drills' | 'settings'>;

/** A drill with all that it points at. Errors: `unknown-drill`. */
export function readDrill(ledger: DrillLedger, id: string): DrillRecord {
  const drill = ledger.drills.get(id);
  return {
    drill,
    sheet: ledger.sheets.get(drill.sheet.id, drill.sheet.version),
    judge: ledger.people.get(drill.judge),
    events: ledger.drills.events(id),
  };
}

export interface JudgedRecord extends JudgedDrill {
  readonly drill: DrillRecord['drill'];
  readonly state: DrillState;
}

/** A drill's reps with the calls that belong to them. */
export function judgedRecord({ drill, events }: Pick<DrillRecord, 'drill' | 'events'>): JudgedRecord {
  const state = foldDrill(drill, events);
  return { drill, state, ...judged(drill, state) };
}

/** The faults of a sheet that a figure can show, with their names and units. */
export function faultsOf(sheet: StandardSheet): FaultNamed[] {
  const movement = shownMovement(sheet);
  if (movement === null) return [];
  return shownFaults(sheet).map((code) => ({
    code,
    name: sheet.faults.find((fault) => fault.code === code)?.name ?? code,
    unit: unitOf(movement, code),
  }));
}
