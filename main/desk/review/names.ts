import { calledName } from '../../../shared-types/people.ts';
import type { Fault } from '../../../shared-types/sheets/sheet.ts';
import { LedgerError } from '../../ledger/errors.ts';
import type { ReviewLedger } from './selection.ts';

/** What a review says of a station: its latest names, and every fault of any version by the latest that knows it. */
export interface StationTexts {
  readonly sheet: string;
  readonly station: string;
  readonly repsName: string;
  readonly faults: ReadonlyMap<string, Fault>;
  /** Metres that a no-rep takes back by the latest version; 0 for other consequences. */
  readonly metresBack: number;
}

/** Texts of the sheets asked for, each read once. Errors: `unknown-sheet`. */
export class Stations {
  private readonly known = new Map<string, StationTexts>();
  private readonly ledger: Pick<ReviewLedger, 'sheets'>;

  constructor(ledger: Pick<ReviewLedger, 'sheets'>) {
    this.ledger = ledger;
  }

  of(id: string): StationTexts {
    const known = this.known.get(id);
    if (known !== undefined) return known;
    const versions = this.ledger.sheets.versions(id).toSorted((a, b) => a.version - b.version);
    const latest = versions.at(-1);
    if (latest === undefined) throw new LedgerError('unknown-sheet', `There is no standard sheet ${id}.`);
    const { consequence } = latest;
    const texts = {
      sheet: id,
      station: latest.station,
      repsName: latest.repsName,
      faults: new Map(versions.flatMap((version) => version.faults).map((fault) => [fault.code, fault])),
      metresBack: consequence.kind === 'metres-back' ? consequence.metres : 0,
    };
    this.known.set(id, texts);
    return texts;
  }

  name(id: string) {
    const { sheet, station, repsName } = this.of(id);
    return { sheet, station, repsName };
  }
}

/** What people are called, archived ones too, by id. */
export function namesOf({ people }: Pick<ReviewLedger, 'people'>): Map<string, string> {
  return new Map(people.list({ archived: 'also' }).map((person) => [person.id, calledName(person)]));
}
