import { foldSet } from '../../../shared-types/log/fold.ts';
import type { SetState } from '../../../shared-types/log/state.ts';
import { foldNight } from '../../../shared-types/night/fold.ts';
import type { HeatLane, NightState } from '../../../shared-types/night/state.ts';
import { calledName } from '../../../shared-types/people.ts';
import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { type JudgedAttempt, judgedAttempts } from '../../analysis/agreement/judges-together.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import type { DeskReads } from '../record.ts';

/** What a debrief needs of the ledger. */
export type NightLedger = DeskReads & Pick<LedgerReader, 'nights' | 'reports'>;

/** A lane of a heat with all that was judged on it. */
export interface JudgedLane {
  readonly heat: number;
  readonly place: HeatLane;
  readonly sheet: StandardSheet;
  readonly main: SetState | null;
  readonly shadow: SetState | null;
  /** Main judge first; empty without a shadow. */
  readonly attempts: readonly JudgedAttempt[];
}

export interface JudgedNight {
  readonly state: NightState;
  readonly lanes: readonly JudgedLane[];
  readonly who: (person: string) => { id: string; name: string };
}

/** Errors: `unknown-night`, `damaged`. */
export function readJudgedNight(ledger: NightLedger, id: string): JudgedNight {
  const state = foldNight(id, ledger.nights.events(id));
  const names = new Map<string, string>();
  const who = (person: string) => {
    const name = names.get(person) ?? calledName(ledger.people.get(person));
    names.set(person, name);
    return { id: person, name };
  };
  const lanes = state.heats
    .filter(({ phase }) => phase !== 'planned')
    .flatMap((heat) =>
      heat.lanes.flatMap((place): JudgedLane[] => {
        const station = state.arrangement?.stations.find((item) => item.id === place.station);
        if (station === undefined) return [];
        const main = place.set === null ? null : foldSet(place.set, ledger.log.events(place.set));
        const shadow = place.shadowSet === null ? null : foldSet(place.shadowSet, ledger.log.events(place.shadowSet));
        // A shadow who never began has missed nothing: there is no second log.
        const both = main !== null && shadow !== null && main.phase !== 'ready' && shadow.phase !== 'ready';
        const sheet = ledger.sheets.get(station.sheet.id, station.sheet.version);
        const attempts = both ? judgedAttempts(main, shadow) : [];
        return [{ heat: heat.number, place, sheet, main, shadow, attempts }];
      }),
    );
  return { state, lanes, who };
}
