import { laneTakes } from '../../../shared-types/night/night.ts';
import { heatsHere } from '../../../shared-types/night/whole-rules.ts';
import type { Task } from './task.ts';

/** Athletes who, if they compete in one heat, need `perLane` each of the judges that may judge any of them. */
export type HallCut = readonly string[];

export interface ModelOptions {
  readonly cuts: readonly HallCut[];
  /** Without the rule on loads. */
  readonly anyLoads?: boolean;
  /** Judges may be missing, entries left out, at a price: the model then tells what is short, and has a solution always. */
  readonly elastic?: 'judges' | 'judges-and-entries';
}

/**
 * The rotation as a mixed-integer linear program in LP format. `x<entry>_<heat>` is 1 if the entry is done in the heat,
 * `y<judge>_<heat>` if the judge is on duty in it. Exact for every hard rule but two: that must-not-judge pairs leave a way to
 * place the judges on the lanes (Hall's condition, cut by cut), and which two judges share a lane (`place-judges.ts`).
 */
export function rotationModel(task: Task, options: ModelOptions): string {
  const writer = new ModelWriter(task, options);
  return writer.write();
}

class ModelWriter {
  private readonly rows: string[] = [];
  private readonly binaries: string[] = [];
  private readonly costs: string[] = [];
  private readonly heats: readonly number[];
  private readonly task: Task;
  private readonly options: ModelOptions;
  /** Names of the variables that exist, by athlete and heat, and by judge and heat. */
  private readonly competes = new Map<string, string[]>();
  private readonly atStation = new Map<string, string[]>();
  private readonly onDuty = new Map<string, string>();

  constructor(task: Task, options: ModelOptions) {
    this.task = task;
    this.options = options;
    this.heats = Array.from({ length: Math.max(0, task.heats - task.first) }, (_, index) => task.first + index);
  }

  write(): string {
    this.entries();
    this.duties();
    this.restAndReady();
    this.lanes();
    this.judges();
    if (this.options.anyLoads !== true) this.loads();
    for (const cut of this.options.cuts) this.cut(cut);
    const objective = this.costs.length === 0 ? '0 zero' : this.costs.join('\n + ');
    return [
      'Minimize',
      ` cost: ${objective}`,
      'Subject To',
      ' nothing: zero = 0',
      ...this.rows.map((row, index) => ` r${index}: ${row}`),
      'Binary',
      ...this.binaries.map((name) => ` ${name}`),
      'End',
    ].join('\n');
  }

  private entries(): void {
    const { task, heats } = this;
    task.entries.forEach(({ athlete, station }, entry) => {
      const names: string[] = [];
      for (const heat of heats.filter((index) => task.mayCompete(athlete, index))) {
        const name = `x${entry}_${heat}`;
        names.push(name);
        push(this.competes, `${athlete} ${heat}`, name);
        push(this.atStation, `${station} ${heat}`, name);
      }
      this.binaries.push(...names);
      if (this.options.elastic === 'judges-and-entries') {
        this.binaries.push(`u${entry}`);
        this.costs.push(`1000 u${entry}`);
        names.push(`u${entry}`);
      }
      this.row(names, [], '=', 1);
    });
  }

  private duties(): void {
    const { task, heats } = this;
    task.judges.forEach((judge, index) => {
      for (const heat of heats.filter((at) => task.mayJudge(judge, at))) {
        this.onDuty.set(`${judge} ${heat}`, `y${index}_${heat}`);
        this.binaries.push(`y${index}_${heat}`);
      }
    });
  }

  /** In two successive heats a person competes once at most, and does not judge in the first while competing in either. */
  private restAndReady(): void {
    const people = new Set([...this.task.athletes, ...this.task.judges]);
    for (const person of people) {
      for (const heat of this.heats) {
        const duty = this.onDuty.get(`${person} ${heat}`);
        const names = [
          ...(duty === undefined ? [] : [duty]),
          ...this.competing(person, heat),
          ...this.competing(person, heat + 1),
        ];
        if (names.length > 1) this.row(names, [], '<=', 1);
      }
    }
  }

  /** For every set of stations no more athletes than lanes that take one of them: then the lanes can be shared out (Hall 1935). */
  private lanes(): void {
    const { arrangement } = this.task.roster;
    const ids = this.task.stations.map(({ id }) => id);
    const subsets = Array.from({ length: 2 ** ids.length - 1 }, (_, mask) =>
      ids.filter((_id, bit) => (mask + 1) & (1 << bit)),
    );
    const free = arrangement.lanes.every(({ stations }) => stations.length === 0);
    for (const stations of free ? [ids] : subsets) {
      const lanes = arrangement.lanes.filter((lane) => stations.some((id) => laneTakes(lane, id))).length;
      for (const heat of this.heats) {
        const names = stations.flatMap((id) => this.atStation.get(`${id} ${heat}`) ?? []);
        if (names.length > lanes) this.row(names, [], '<=', lanes);
      }
    }
  }

  private judges(): void {
    const { task } = this;
    for (const heat of this.heats) {
      const competing = task.athletes.flatMap((athlete) => this.competing(athlete, heat));
      const duties = this.dutiesIn(task.judges, heat);
      if (this.options.elastic !== undefined) {
        // An integer that costs; binaries would do, but so many are rarely missing.
        this.costs.push(`s${heat}`);
        duties.push(`s${heat}`);
      }
      this.row(duties, competing, '=', 0);
    }
  }

  /** For each group of judges here equally long: `m` is the highest load among them and those here for less. */
  private loads(): void {
    const { roster, judges, heats } = this.task;
    const here = new Map(judges.map((judge) => [judge, heatsHere(roster, judge, heats)]));
    for (const length of new Set(here.values())) {
      if (length === 0) continue;
      const group = judges.filter((judge) => here.get(judge) === length && roster.stays(judge));
      if (group.length === 0) continue;
      for (const judge of judges.filter((other) => (here.get(other) ?? 0) <= length)) {
        this.loadRow(judge, length, '<=', 0);
      }
      for (const judge of group) this.loadRow(judge, length, '>=', 1);
    }
  }

  /** load - m <= 0, or load - m >= -1. */
  private loadRow(judge: string, length: number, sense: '<=' | '>=', slack: number): void {
    const names = this.heats.flatMap((heat) => this.onDuty.get(`${judge} ${heat}`) ?? []);
    const done = this.task.loads.get(judge) ?? 0;
    this.rows.push(`${[...names, ''].join(' + ').slice(0, -3)} - m${length} ${sense} ${-done - slack}`.trim());
  }

  private cut(athletes: HallCut): void {
    const { task } = this;
    const able = task.judges.filter((judge) => athletes.some((athlete) => !task.banned.has(`${judge} ${athlete}`)));
    for (const heat of this.heats) {
      const competing = athletes.flatMap((athlete) => this.competing(athlete, heat));
      const duties = this.dutiesIn(able, heat);
      if (this.options.elastic !== undefined) duties.push(`s${heat}`);
      if (competing.length > 0) this.row(duties, competing, '>=', 0);
    }
  }

  private competing(person: string, heat: number): readonly string[] {
    return this.competes.get(`${person} ${heat}`) ?? [];
  }

  private dutiesIn(judges: readonly string[], heat: number): string[] {
    return judges.flatMap((judge) => this.onDuty.get(`${judge} ${heat}`) ?? []);
  }

  /** plus - perLane * minus, compared with a number. An empty sum is written as the variable that is 0. */
  private row(plus: readonly string[], minus: readonly string[], sense: '=' | '<=' | '>=', right: number): void {
    const left = [
      plus.length === 0 ? 'zero' : plus.join(' + '),
      ...minus.map((name) => `${this.task.perLane} ${name}`),
    ];
    this.rows.push(`${left.join('\n - ')} ${sense} ${right}`);
  }
}

function push(map: Map<string, string[]>, key: string, value: string): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
