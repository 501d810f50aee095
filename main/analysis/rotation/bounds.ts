import { laneTakes } from '../../../shared-types/night/night.ts';
import { fewestHeatsOf, span } from './spans.ts';
import type { Task } from './task.ts';

/** The fewest heats in all that counting alone allows; heats that have begun included. */
export function fewestHeats(task: Task): number {
  const lanes = task.roster.arrangement.lanes.length;
  const perHeat = Math.min(lanes, Math.floor(task.judges.length / task.perLane));
  const byLanes = perHeat === 0 ? task.entries.length : Math.ceil(task.entries.length / perHeat);
  const byAthlete = Math.max(0, ...task.athletes.map((athlete) => fewestHeatsOf(stationsLeft(task, athlete).length)));
  return task.first + Math.max(byLanes, byAthlete);
}

/**
 * What is impossible by counting, in words; every sentence is a proof by itself, whatever the plan. None: counting proves
 * nothing. `nameOf` gives the words for a person's id.
 */
export function provenByCounting(task: Task, nameOf: (person: string) => string): string[] {
  return [
    ...stationsWithoutLane(task),
    ...athletesWithoutTime(task, nameOf),
    ...athletesWithoutJudge(task, nameOf),
    ...tooManyEntries(task),
  ];
}

function stationsLeft(task: Task, athlete: string): string[] {
  return task.entries.filter((entry) => entry.athlete === athlete).map(({ station }) => station);
}

function stationsWithoutLane({ roster, entries }: Task): string[] {
  const wanted = [...new Set(entries.map(({ station }) => station))];
  return wanted
    .filter((station) => !roster.arrangement.lanes.some((lane) => laneTakes(lane, station)))
    .map((station) => `No lane takes the station ${station}.`);
}

/** n stations with a heat of rest between need 2n - 1 heats; of a longer stay with gaps the free heats are counted. */
function athletesWithoutTime(task: Task, nameOf: (person: string) => string): string[] {
  return task.athletes.flatMap((athlete) => {
    const wanted = stationsLeft(task, athlete).length;
    const most = span(task, athlete);
    if (most >= wanted) return [];
    const heats = Array.from({ length: Math.max(0, task.heats - task.first) }, (_, index) => task.first + index);
    const free = heats.filter((heat) => task.mayCompete(athlete, heat)).length;
    return [
      `${nameOf(athlete)} has ${count(wanted, 'station')} left and can compete in ${count(free, 'heat')}; with a heat of rest between that is time for ${most}.`,
    ];
  });
}

function athletesWithoutJudge(task: Task, nameOf: (person: string) => string): string[] {
  return task.athletes.flatMap((athlete) => {
    const able = task.judges.filter((judge) => judge !== athlete && !task.banned.has(`${judge} ${athlete}`));
    if (able.length >= task.perLane) return [];
    return [
      `${nameOf(athlete)} can be judged by ${count(able.length, 'person', 'people')}; ${task.perLane} are needed.`,
    ];
  });
}

/** Entries against the places that lanes and judges make, heat by heat. */
function tooManyEntries(task: Task): string[] {
  const lanes = task.roster.arrangement.lanes.length;
  const heats = Array.from({ length: Math.max(0, task.heats - task.first) }, (_, index) => task.first + index);
  const wanted = task.entries.length;
  if (wanted > heats.length * lanes) {
    const told = `${count(heats.length, 'heat')} on ${count(lanes, 'lane')}`;
    return [`${count(wanted, 'start')} need more than ${told}: ${wanted - heats.length * lanes} too many.`];
  }
  const places = heats.map((heat) => {
    const judges = task.judges.filter((judge) => task.mayJudge(judge, heat)).length;
    return { heat, judges, places: Math.min(lanes, Math.floor(judges / task.perLane)) };
  });
  const all = places.reduce((sum, item) => sum + item.places, 0);
  if (wanted <= all) return [];
  const short = places
    .filter((item) => item.places < lanes)
    .map(({ heat, judges }) => `${count(lanes * task.perLane - judges, 'judge')} short in heat ${heat + 1}`);
  return [`${count(wanted, 'start')} but judges for ${all} only: ${short.join(', ')} to fill every lane.`];
}

export function count(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}
