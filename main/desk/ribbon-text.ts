import type { Verdict } from '../../shared-types/log/events.ts';
import type { Fault } from '../../shared-types/sheets/sheet.ts';

/** One character an attempt: "." counted, "!" caution, the initial of a no-rep's first fault, "?" without one. */
export function ribbonText(
  sheet: { readonly faults: readonly Pick<Fault, 'code' | 'initial'>[] },
  attempts: readonly { readonly verdict: Verdict; readonly faults: readonly string[] }[],
): string {
  const initials = new Map(sheet.faults.map((fault) => [fault.code, fault.initial]));
  return attempts
    .map(({ verdict, faults }) => {
      if (verdict === 'counted') return '.';
      if (verdict === 'caution') return '!';
      return initials.get(faults[0] ?? '') ?? '?';
    })
    .join('');
}
