import type { Breach, RuleName } from './breach.ts';
import { type Assignment, laneTakes, type NightPerson, type NightPlan, stationsOf } from './night.ts';
import type { Roster } from './roster.ts';
import { nightRules } from './whole-rules.ts';

/**
 * Every hard rule that a plan breaks; none: the plan stands. Heats that have begun are facts and are only held against the
 * plan's own copy of them. `nameOf` gives the words for a person's id.
 */
export function checkPlan(roster: Roster, plan: NightPlan, nameOf: (person: string) => string): Breach[] {
  const check = new PlanCheck(roster, plan, nameOf);
  return check.run();
}

class PlanCheck {
  private readonly breaches: Breach[] = [];
  private readonly people: ReadonlyMap<string, NightPerson>;
  private readonly banned: ReadonlySet<string>;
  private readonly roster: Roster;
  private readonly plan: NightPlan;
  private readonly nameOf: (person: string) => string;

  constructor(roster: Roster, plan: NightPlan, nameOf: (person: string) => string) {
    this.roster = roster;
    this.plan = plan;
    this.nameOf = nameOf;
    this.people = new Map(roster.arrangement.people.map((person) => [person.id, person]));
    this.banned = new Set(roster.arrangement.mustNotJudge.map(({ judge, athlete }) => `${judge} ${athlete}`));
  }

  run(): Breach[] {
    const { roster, plan } = this;
    roster.begun.forEach((heat, index) => {
      if (JSON.stringify(sorted(heat)) !== JSON.stringify(sorted(plan[index] ?? []))) {
        this.note('begun-changed', index, null, [], `Heat ${index + 1} has begun and can no longer be changed.`);
      }
    });
    for (let index = roster.begun.length; index < plan.length; index += 1) this.checkHeat(index);
    this.checkStations();
    return [...this.breaches, ...nightRules(roster, plan, this.nameOf)];
  }

  private checkHeat(index: number): void {
    const heat = this.plan[index] ?? [];
    const places = new Map<string, number>();
    const lanes = new Set<string>();
    for (const item of heat) {
      if (lanes.has(item.lane)) {
        this.note('lane-twice', index, item.lane, [], `Lane ${item.lane} is given twice in heat ${index + 1}.`);
      }
      lanes.add(item.lane);
      for (const id of everyone(item)) places.set(id, (places.get(id) ?? 0) + 1);
      this.checkLane(item, index);
    }
    for (const [id, times] of places) {
      if (times > 1) {
        this.note('two-places', index, null, [id], `${this.nameOf(id)} is in ${times} places in heat ${index + 1}.`);
      }
    }
    this.checkNeighbours(index);
  }

  private checkLane(item: Assignment, index: number): void {
    const { arrangement } = this.roster;
    const heat = index + 1;
    const lane = arrangement.lanes.find(({ id }) => id === item.lane);
    const known = lane !== undefined && arrangement.stations.some(({ id }) => id === item.station);
    if (!known || everyone(item).some((id) => !this.people.has(id))) {
      const message = `Heat ${heat}, lane ${item.lane} names somebody or something that this night does not have.`;
      return this.note('unknown-name', index, item.lane, [], message);
    }
    if (!laneTakes(lane, item.station)) {
      const message = `${item.station} cannot be done on lane ${lane.name} (heat ${heat}).`;
      this.note('lane-not-for-station', index, item.lane, [], message);
    }
    this.checkPeople(item, index);
    if (arrangement.shadows && item.shadow === null) {
      this.note('shadow-missing', index, item.lane, [], `Heat ${heat}, lane ${lane.name} has no shadow judge.`);
    }
    if (!arrangement.shadows && item.shadow !== null) {
      const message = `Heat ${heat}, lane ${lane.name} has a shadow judge in a night without.`;
      this.note('shadow-unwanted', index, item.lane, [item.shadow], message);
    }
  }

  private checkPeople(item: Assignment, index: number): void {
    const heat = index + 1;
    for (const id of everyone(item)) {
      if (!this.roster.here(id, index)) {
        this.note('not-here', index, item.lane, [id], `${this.nameOf(id)} is not here in heat ${heat}.`);
      }
    }
    if (this.people.get(item.athlete)?.athlete !== true) {
      const message = `${this.nameOf(item.athlete)} does not compete, but is to in heat ${heat}.`;
      this.note('not-an-athlete', index, item.lane, [item.athlete], message);
    }
    for (const judge of judgesOf(item)) {
      if (this.people.get(judge)?.judge !== true) {
        const message = `${this.nameOf(judge)} does not judge, but is to in heat ${heat}.`;
        this.note('not-a-judge', index, item.lane, [judge], message);
      }
      if (this.banned.has(`${judge} ${item.athlete}`)) {
        const message = `${this.nameOf(judge)} must not judge ${this.nameOf(item.athlete)} (heat ${heat}).`;
        this.note('must-not-judge', index, item.lane, [judge, item.athlete], message);
      }
    }
  }

  /** Against the heat before: athletes rest a heat, and have not judged in it. */
  private checkNeighbours(index: number): void {
    const before = this.plan[index - 1] ?? [];
    const competed = new Set(before.map(({ athlete }) => athlete));
    const judged = new Set(before.flatMap(judgesOf));
    for (const { athlete, lane } of this.plan[index] ?? []) {
      const name = this.nameOf(athlete);
      if (competed.has(athlete)) {
        this.note('no-rest', index, lane, [athlete], `${name} has no heat of rest before heat ${index + 1}.`);
      }
      if (judged.has(athlete)) {
        const message = `${name} judges in heat ${index}, right before competing in heat ${index + 1}.`;
        this.note('judging-right-before', index, lane, [athlete], message);
      }
    }
  }

  private checkStations(): void {
    const { arrangement } = this.roster;
    const done = Map.groupBy(this.plan.flat(), ({ athlete }) => athlete);
    for (const person of arrangement.people) {
      const wanted = new Set(stationsOf(arrangement, person).map(({ id }) => id));
      const counts = new Map<string, number>();
      for (const { station } of done.get(person.id) ?? []) counts.set(station, (counts.get(station) ?? 0) + 1);
      for (const [station, times] of counts) {
        if (!wanted.has(station)) this.station('station-not-entered', person.id, `is not entered for ${station}`);
        if (times > 1) this.station('station-twice', person.id, `does ${station} ${times} times`);
      }
      if (!this.roster.stays(person.id)) continue;
      for (const station of wanted) {
        if (!counts.has(station)) this.station('station-missing', person.id, `has no heat for ${station}`);
      }
    }
  }

  private station(rule: RuleName, person: string, what: string): void {
    this.breaches.push({
      rule,
      heat: null,
      lane: null,
      people: [person],
      message: `${this.nameOf(person)} ${what}.`,
      aim: false,
    });
  }

  private note(rule: RuleName, index: number, lane: string | null, people: readonly string[], message: string): void {
    this.breaches.push({ rule, heat: index + 1, lane, people, message, aim: false });
  }
}

function judgesOf({ judge, shadow }: Assignment): string[] {
  return shadow === null ? [judge] : [judge, shadow];
}

function everyone(item: Assignment): string[] {
  return [item.athlete, ...judgesOf(item)];
}

function sorted(heat: readonly Assignment[]): unknown[] {
  return heat
    .map(({ lane, station, athlete, judge, shadow }) => [lane, station, athlete, judge, shadow])
    .toSorted((one, other) => (String(one[0]) < String(other[0]) ? -1 : 1));
}
