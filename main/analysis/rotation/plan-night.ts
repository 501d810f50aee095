import type { Breach } from '../../../shared-types/night/breach.ts';
import { type Assignment, laneTakes, type NightPlan } from '../../../shared-types/night/night.ts';
import type { Roster } from '../../../shared-types/night/roster.ts';
import { checkPlan } from '../../../shared-types/night/rules.ts';
import { seededGenerator } from '../random/generator.ts';
import { fewestHeats, provenByCounting } from './bounds.ts';
import { matchAll } from './matching.ts';
import { type Duty, mixPairs, placeHeat } from './place-judges.ts';
import { entriesIn, type PlanOptions, solveWithCuts } from './solve-with-cuts.ts';
import type { Solver } from './solver.ts';
import { type Task, taskOf } from './task.ts';
import { whatIsShort } from './what-is-short.ts';

export type Planned =
  | { readonly outcome: 'planned'; readonly heats: NightPlan; readonly breaches: readonly Breach[] }
  | {
      readonly outcome: 'impossible' | 'not-found';
      /** The nearest plan and what it breaks; null where there is none. */
      readonly heats: NightPlan | null;
      readonly breaches: readonly Breach[];
      readonly reasons: readonly string[];
    };

/** Heats beyond the fewest conceivable that are tried when the organiser sets no limit. */
const SPARE_HEATS = 12;
const TRIES_A_LENGTH = 3;
/** Models that may be given up before the search ends: each takes its full time, and the next are no easier to decide. */
const MOST_GIVEN_UP = 8;

/**
 * Plans all heats that have not begun, in as few as it can find. `planned`: no hard rule is broken. `impossible`: proven for every
 * number of heats allowed, by counting or by the solver; `reasons` say what is short. `not-found`: neither in the time given.
 */
export function planNight(solver: Solver, roster: Roster, options: PlanOptions): Planned {
  const start = fewestHeats(taskOf(roster, roster.begun.length));
  const limit = roster.arrangement.mostHeats ?? Math.min(60, start + SPARE_HEATS);
  const longest = taskOf(roster, Math.max(limit, roster.begun.length));
  const counted = provenByCounting(longest, options.nameOf);
  if (counted.length > 0) return { outcome: 'impossible', heats: null, breaches: [], reasons: counted };
  if (start > limit) {
    const reasons = [`At least ${start} heats are needed; there may be ${limit}.`];
    return { outcome: 'impossible', heats: null, breaches: [], reasons };
  }
  let givenUp = 0;
  let nearest: { heats: NightPlan; breaches: Breach[] } | null = null;
  for (const heats of lengths(start, limit)) {
    const task = taskOf(roster, heats);
    const tried = planIn(solver, task, options);
    if (tried.status === 'planned') return { outcome: 'planned', heats: tried.heats, breaches: tried.breaches };
    if (tried.status !== 'infeasible') givenUp += 1;
    if (givenUp >= MOST_GIVEN_UP) break;
    if (tried.status === 'broken' && nearest === null) nearest = tried;
    // Without a solution even where loads may differ at will, in the longest night, none is left: an empty heat may be added to any.
    if (heats === start && tried.status === 'infeasible' && limit > start) {
      const core = solveWithCuts(solver, longest, { anyLoads: true }, options, 0);
      if (core.solved.status === 'infeasible') break;
    }
  }
  const outcome = givenUp === 0 ? 'impossible' : 'not-found';
  if (nearest !== null) return { outcome, ...nearest, reasons: broken(nearest.breaches) };
  const free = solveWithCuts(solver, longest, { anyLoads: true }, options, 0);
  if (free.solved.status !== 'solved' || free.duties === null) {
    return { outcome, heats: null, breaches: [], reasons: whatIsShort(solver, longest, options) };
  }
  const heats = assemble(longest, free.solved.values, free.duties, options.seed);
  const breaches = checkPlan(roster, heats, options.nameOf);
  // By chance, where the lengths before were given up.
  if (breaches.every(({ aim }) => aim)) return { outcome: 'planned', heats, breaches };
  return { outcome, heats, breaches, reasons: broken(breaches) };
}

/** Lengths to try: the shortest first, then in growing steps, as longer nights are easier to plan; then those left out. */
function lengths(start: number, limit: number): number[] {
  const all = Array.from({ length: limit - start + 1 }, (_, index) => start + index);
  const early = new Set([0, 1, 2, 4, 7, all.length - 1]);
  return [...all.filter((_, index) => early.has(index)), ...all.filter((_, index) => !early.has(index))];
}

function broken(breaches: readonly Breach[]): string[] {
  return breaches.filter(({ aim }) => !aim).map(({ message }) => message);
}

type Tried =
  | { readonly status: 'planned' | 'broken'; readonly heats: NightPlan; readonly breaches: Breach[] }
  | { readonly status: 'infeasible' | 'gave-up' };

function planIn(solver: Solver, task: Task, options: PlanOptions): Tried {
  let first: Tried | null = null;
  for (let attempt = 0; attempt < TRIES_A_LENGTH; attempt += 1) {
    const { solved, duties } = solveWithCuts(solver, task, {}, options, attempt);
    if (solved.status === 'infeasible') return { status: 'infeasible' };
    if (solved.status === 'gave-up' || duties === null) return first ?? { status: 'gave-up' };
    const heats = assemble(task, solved.values, duties, options.seed + attempt);
    const breaches = checkPlan(task.roster, heats, options.nameOf);
    if (breaches.every(({ aim }) => aim)) return { status: 'planned', heats, breaches };
    first ??= { status: 'broken', heats, breaches };
  }
  return first ?? { status: 'gave-up' };
}

function assemble(task: Task, values: ReadonlyMap<string, number>, duties: readonly Duty[], seed: number): NightPlan {
  const { begun } = task.roster;
  const placed = duties.map((duty) => placeHeat(duty, task.banned).placed);
  const mixed = task.perLane === 1 ? placed : mixPairs(duties, placed, task.banned, begun, seededGenerator(seed));
  const asMain = new Map<string, number>();
  for (const { judge } of begun.flat()) asMain.set(judge, (asMain.get(judge) ?? 0) + 1);
  const later = mixed.map((judges, index) => {
    const entries = entriesIn(task, values, task.first + index);
    const lanes = lanesFor(
      task,
      entries.map(({ station }) => station),
    );
    return entries.map(({ athlete, station }, number): Assignment => {
      // Who has been main judge less often is it here.
      const [judge = '', shadow = null] = [...(judges[number] ?? [])].sort(
        (one, other) => (asMain.get(one) ?? 0) - (asMain.get(other) ?? 0),
      );
      asMain.set(judge, (asMain.get(judge) ?? 0) + 1);
      return { lane: lanes[number] ?? '', station, athlete, judge, shadow };
    });
  });
  const order = new Map(task.roster.arrangement.lanes.map(({ id }, index) => [id, index]));
  const inOrder = later.map((heat) =>
    heat.sort((one, other) => (order.get(one.lane) ?? 0) - (order.get(other.lane) ?? 0)),
  );
  while (inOrder.at(-1)?.length === 0) inOrder.pop();
  return [...begun, ...inOrder];
}

/** A lane for each station of a heat; the model has seen to it that there is one. */
function lanesFor(task: Task, stations: readonly string[]): string[] {
  const { lanes } = task.roster.arrangement;
  const { partner } = matchAll(
    stations.map((station) =>
      [...lanes.keys()].filter((index) => laneTakes(lanes[index] ?? { id: '', name: '', stations: [] }, station)),
    ),
  );
  return partner.map((index) => lanes[index]?.id ?? '');
}
