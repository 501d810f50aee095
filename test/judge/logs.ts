import { type Decision, decide, type Intent, type Moment } from '../../renderer/areas/judge/live/decide.ts';
import type { Draft } from '../../renderer/areas/judge/live/draft.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import { foldSet } from '../../shared-types/log/fold.ts';
import type { Goal } from '../../shared-types/log/setup.ts';
import { jumpBurpee } from '../../shared-types/sheets/jump-burpee.ts';
import type { StandardSheet } from '../../shared-types/sheets/sheet.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';

const SET = '00000000-0000-4000-8000-000000000001';

/** A set at one pad, judged by intents as the screen would do it. */
export class Judged {
  readonly log: SetEvent[] = [];
  private seq = 0;
  readonly goal: Goal;
  readonly sheet: StandardSheet;
  readonly pad: string;

  constructor(goal: Goal, sheet: StandardSheet = wallThrow, pad = 'desk') {
    this.goal = goal;
    this.sheet = sheet;
    this.pad = pad;
  }

  static throws(reps: number): Judged {
    return new Judged({ kind: 'reps', reps }).go();
  }

  static jumps(metres: number): Judged {
    return new Judged({ kind: 'metres', metres }, jumpBurpee).go();
  }

  go(): this {
    this.add({ kind: 'go', at: 0, wallClock: 1_700_000_000_000 });
    return this;
  }

  add(draft: Draft, pad = this.pad): SetEvent {
    this.seq += 1;
    const event: SetEvent = { ...draft, set: SET, pad, seq: this.seq };
    this.log.push(event);
    return event;
  }

  get state() {
    return foldSet(SET, this.log);
  }

  get moment(): Moment {
    return { goal: this.goal, sheet: this.sheet, state: this.state, log: this.log, own: new Set([this.pad]) };
  }

  press(intent: Intent, at: number): Decision {
    const decision = decide(intent, at, this.moment);
    for (const draft of decision.drafts) this.add(draft);
    return decision;
  }
}
