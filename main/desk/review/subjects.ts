import type { Subject, Subjects } from '../../../shared-types/contract/review/filter.ts';
import type { SubjectSum, SubjectTag } from '../../ledger/review.ts';
import { namesOf, Stations } from './names.ts';
import { type ReviewLedger, sum } from './selection.ts';

/** Who and what has sets that can be reviewed. */
export function subjectsOf(ledger: ReviewLedger): Subjects {
  const names = namesOf(ledger);
  const texts = new Stations(ledger);
  const sums = ledger.reports.subjectSums('athlete');
  const tags = ledger.reports.subjectTags('athlete');
  return {
    athletes: people(sums, tags, names),
    judges: people(ledger.reports.subjectSums('judge'), ledger.reports.subjectTags('judge'), names),
    stations: stations(sums, tags).map((station) => ({ ...station, ...texts.name(station.sheet) })),
  };
}

function people(sums: readonly SubjectSum[], tags: readonly SubjectTag[], names: Map<string, string>): Subject[] {
  const tagsOf = Map.groupBy(tags, (row) => row.person);
  return [...Map.groupBy(sums, (row) => row.person)]
    .map(([id, rows]) => ({
      person: { id, name: names.get(id) ?? '' },
      stations: stations(rows, tagsOf.get(id) ?? []),
    }))
    .sort((a, b) => latest(b) - latest(a));
}

function latest(subject: Subject): number {
  return subject.stations[0]?.lastAt ?? 0;
}

function stations(sums: readonly SubjectSum[], tags: readonly SubjectTag[]): Subject['stations'] {
  const tagsOf = Map.groupBy(tags, (row) => row.sheet);
  return [...Map.groupBy(sums, (row) => row.sheet)]
    .map(([sheet, rows]) => ({
      sheet,
      sets: sum(rows, (row) => row.sets),
      attempts: sum(rows, (row) => row.attempts),
      noReps: sum(rows, (row) => row.noReps),
      firstAt: Math.min(...rows.map((row) => row.firstAt)),
      lastAt: Math.max(...rows.map((row) => row.lastAt)),
      loadsKg: [...new Set(rows.map((row) => row.loadKg))].sort((a, b) => (a ?? -1) - (b ?? -1)),
      before: (['fresh', 'run', 'station'] as const).filter((value) => rows.some((row) => row.before === value)),
      tags: [...Map.groupBy(tagsOf.get(sheet) ?? [], (row) => row.tag)]
        .map(([tag, own]) => ({ tag, sets: sum(own, (row) => row.sets) }))
        .sort((a, b) => b.sets - a.sets || (a.tag < b.tag ? -1 : 1)),
    }))
    .sort((a, b) => b.lastAt - a.lastAt);
}
