import type { Debrief } from '../../../shared-types/contract/nights/debrief.ts';
import { wilsonInterval } from '../../analysis/proportions/wilson.ts';
import type { JudgedLane } from './lanes.ts';

/** By fault, how often both judges of a pair named it and how often only one did, over the attempts that both called. */
export function dividedFaults(lanes: readonly JudgedLane[]): Debrief['faults'] {
  const counts = new Map<string, { sheet: string; code: string; name: string; both: number; one: number }>();
  for (const { sheet, attempts } of lanes) {
    for (const { first, second } of attempts) {
      if (first === null || second === null) continue;
      for (const code of new Set([...first.faults, ...second.faults])) {
        const key = `${sheet.id} ${code}`;
        const name = sheet.faults.find((fault) => fault.code === code)?.name ?? code;
        const line = counts.get(key) ?? { sheet: sheet.id, code, name, both: 0, one: 0 };
        if (first.faults.includes(code) && second.faults.includes(code)) line.both += 1;
        else line.one += 1;
        counts.set(key, line);
      }
    }
  }
  return [...counts.values()]
    .toSorted((a, b) => b.one - a.one || a.both - b.both || (a.code < b.code ? -1 : 1))
    .map((line) => {
      const divided = wilsonInterval(line.one, line.one + line.both);
      if (!divided.ok) return { ...line, divided: null };
      const { estimate, lower, upper } = divided.value;
      return { ...line, divided: { value: estimate, low: lower, high: upper } };
    });
}
