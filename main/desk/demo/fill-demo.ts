import type { SetSetup } from '../../../shared-types/log/setup.ts';
import type { Person } from '../../../shared-types/people.ts';
import { jumpBurpee } from '../../../shared-types/sheets/jump-burpee.ts';
import { wallThrow } from '../../../shared-types/sheets/wall-throw.ts';
import { type RandomGenerator, seededGenerator } from '../../analysis/random/generator.ts';
import { randomInteger, randomPoisson } from '../../analysis/random/variates.ts';
import { simulateSet } from '../../analysis/simulator/simulate-set.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { type DemoAthlete, demoAthletes, demoJudges, movesAt } from './gym.ts';

const DAY_MS = 86_400_000;
const WEEKS = 9;
const SEED = 20_260_907;

type Station = 'throw' | 'jump';

/**
 * Fills an empty ledger with two months of an invented gym, up to yesterday: the same people, sets and faults every time,
 * from one seed. Answers the number of sets; 0 where the ledger has people already, which it then leaves alone.
 *
 * @param now milliseconds since 1970 UTC
 */
export function fillDemo(ledger: Ledger, now: number): number {
  if (ledger.people.list({ archived: 'also' }).length > 0) return 0;
  const generator = seededGenerator(SEED);
  const firstDay = Math.floor(now / DAY_MS) * DAY_MS - WEEKS * 7 * DAY_MS;
  const athletes = demoAthletes.map((athlete) => ({ athlete, id: addPerson(ledger, generator, athlete, firstDay) }));
  const judges = demoJudges.map((judge) => ({ ...judge, id: addPerson(ledger, generator, judge, firstDay) }));
  const plans = athletes.flatMap(({ athlete, id }) =>
    planOf(athlete, generator).map((plan) => ({ ...plan, athlete, id })),
  );
  plans.sort((one, other) => one.at - other.at);
  for (const plan of plans) {
    const judge = judges[randomInteger(generator, judges.length)];
    if (judge === undefined) continue;
    addSet(ledger, generator, { ...plan, goAt: firstDay + plan.at, judge });
  }
  return plans.length;
}

interface Planned {
  readonly station: Station;
  /** Milliseconds after the first day's midnight. */
  readonly at: number;
  readonly share: number;
}

/** An athlete's sets over the weeks: evenings, a few more or fewer each week. */
function planOf(athlete: DemoAthlete, generator: RandomGenerator): Planned[] {
  const plans: Planned[] = [];
  for (let week = 0; week < WEEKS; week += 1) {
    for (const station of ['throw', 'jump'] as const) {
      const sets = Math.min(
        4,
        randomPoisson(generator, station === 'throw' ? athlete.throwsAWeek : athlete.jumpsAWeek),
      );
      for (let set = 0; set < sets; set += 1) {
        const day = week * 7 + randomInteger(generator, 7);
        const minute = 17 * 60 + randomInteger(generator, 180);
        plans.push({ station, at: day * DAY_MS + minute * 60_000, share: day / (WEEKS * 7) });
      }
    }
  }
  return plans;
}

interface SetToAdd extends Planned {
  readonly athlete: DemoAthlete;
  readonly id: string;
  readonly goAt: number;
  readonly judge: (typeof demoJudges)[number] & { readonly id: string };
}

function addSet(ledger: Ledger, generator: RandomGenerator, plan: SetToAdd): void {
  const { station, athlete, goAt } = plan;
  const sheet = station === 'throw' ? wallThrow : jumpBurpee;
  const before = (['fresh', 'fresh', 'run', 'station'] as const)[randomInteger(generator, 4)] ?? 'fresh';
  const setup: SetSetup = {
    id: identifier(generator),
    athlete: plan.id,
    judge: plan.judge.id,
    sheet: { id: sheet.id, version: sheet.version },
    goal:
      station === 'throw'
        ? { kind: 'reps', reps: [100, 75, 50][randomInteger(generator, 3)] ?? 100 }
        : { kind: 'metres', metres: 80 },
    loadKg: station === 'throw' ? athlete.loadKg : null,
    heightM: station === 'throw' ? athlete.lineM : null,
    before,
    tags: randomInteger(generator, 5) === 0 ? ['open evening'] : [],
    note: '',
    role: 'main',
    practice: false,
    createdAt: goAt - 90_000,
  };
  ledger.sets.create(setup);
  const moves = movesAt(athlete, station, plan.share);
  // Work beforehand tires: a slower, longer fade and a few more faults.
  const tired = before === 'fresh' ? 1 : 1.25;
  const { events } = simulateSet({
    set: setup.id,
    pad: `demo-${setup.id.slice(0, 8)}`,
    wallClock: goAt,
    athlete: {
      ...moves,
      pace: { ...moves.pace, cycle: moves.pace.cycle * (before === 'fresh' ? 1 : 1.04) },
      faults: moves.faults.map((fault) => ({ ...fault, rate: fault.rate * tired })),
    },
    judge: plan.judge.model,
    goal: setup.goal,
    usualAttempts: setup.goal.kind === 'reps' ? setup.goal.reps : 50,
    markEvery: sheet.markEveryM,
    metresBack: 0,
    seed: generator.uint32(),
  });
  ledger.log.append(events);
}

function addPerson(
  ledger: Ledger,
  generator: RandomGenerator,
  who: { readonly name: string; readonly nickname?: string },
  createdAt: number,
): string {
  const isAthlete = demoAthletes.some((athlete) => athlete.name === who.name);
  const person: Person = {
    id: identifier(generator),
    name: who.name,
    nickname: who.nickname ?? '',
    athlete: isAthlete,
    judge: !isAthlete,
    notes: '',
    archivedAt: null,
    createdAt,
  };
  ledger.people.create(person);
  return person.id;
}

/** A version 4 UUID (RFC 9562) from the seeded generator, so that the demonstration is the same every time. */
function identifier(generator: RandomGenerator): string {
  const hex = Array.from({ length: 4 }, () => generator.uint32().toString(16).padStart(8, '0')).join('');
  const variant = ((Number.parseInt(hex.slice(16, 17), 16) & 3) | 8).toString(16);
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `4${hex.slice(13, 16)}`,
    `${variant}${hex.slice(17, 20)}`,
    hex.slice(20),
  ].join('-');
}
