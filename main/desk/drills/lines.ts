import { ORPCError } from '@orpc/server';
import type { DrillFilter as AskedFilter, DrillLine } from '../../../shared-types/contract/drills.ts';
import type { Drill } from '../../../shared-types/drills/drill.ts';
import { calledName } from '../../../shared-types/people.ts';
import { answered, calledRight } from '../../analysis/drills/outcomes.ts';
import type { DrillCursor, DrillFilter } from '../../ledger/drills.ts';
import { type DrillLedger, judgedRecord } from './record.ts';

export interface DrillLines {
  lines: DrillLine[];
  total: number;
  next: string | null;
}

/** A page of the list of drills, latest first. */
export function drillLines(
  ledger: DrillLedger,
  asked: { filter: AskedFilter; after: string | null; limit: number },
): DrillLines {
  const page = ledger.drills.list({
    filter: asFilter(asked.filter),
    limit: asked.limit,
    ...(asked.after === null ? {} : { after: asCursor(asked.after) }),
  });
  return {
    lines: page.drills.map((drill) => lineOf(ledger, drill)),
    total: page.total,
    next: page.next === null ? null : `${page.next.createdAt} ${page.next.n}`,
  };
}

function lineOf(ledger: DrillLedger, drill: Drill): DrillLine {
  const { state, trials } = judgedRecord({ drill, events: ledger.drills.events(drill.id) });
  const called = trials.filter(answered);
  const judge = ledger.people.get(drill.judge);
  const { id, version } = drill.sheet;
  return {
    id: drill.id,
    judge: { id: judge.id, name: calledName(judge) },
    sheet: { id, version, station: ledger.sheets.get(id, version).station },
    task: drill.task,
    practice: drill.practice,
    createdAt: drill.createdAt,
    phase: state.phase,
    shown: trials.filter((one) => one.outcome !== 'spoilt').length,
    called: called.length,
    right: called.filter(calledRight).length,
  };
}

/** The filter of the contract as the ledger's. */
export function asFilter({ practice, judge, sheet, kind, from, to }: AskedFilter): DrillFilter {
  return {
    practice: ({ without: 'no', with: 'also', only: 'only' } as const)[practice ?? 'without'],
    ...(judge === undefined ? {} : { judge }),
    ...(sheet === undefined ? {} : { sheet }),
    ...(kind === undefined ? {} : { kind }),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
  };
}

function asCursor(text: string): DrillCursor {
  const [createdAt = Number.NaN, n = Number.NaN] = text.split(' ').map(Number);
  if (!Number.isSafeInteger(createdAt) || !Number.isSafeInteger(n)) {
    const message = 'This is not the end of a page of drills; ask for the first page.';
    throw new ORPCError('BAD_REQUEST', { status: 400, message, data: { issues: [{ path: 'after', message }] } });
  }
  return { createdAt, n };
}
