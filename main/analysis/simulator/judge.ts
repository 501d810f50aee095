import type { EventRef } from '../../../shared-types/log/events.ts';
import type { RandomGenerator } from '../random/generator.ts';
import { randomInteger, randomNormal } from '../random/variates.ts';
import type { JudgeModel } from './models.ts';
import type { SetLog } from './set-log.ts';

/** What the athlete hears of an attempt. */
export type Heard = { readonly counts: boolean; readonly disturbed: boolean };

/** An invented judge at work on one set. */
export class Judge {
  private readonly model: JudgeModel;
  private readonly generator: RandomGenerator;
  private readonly log: SetLog;
  private readonly faults: readonly string[];
  private readonly owed: { ref: EventRef; fault: string }[] = [];

  constructor(model: JudgeModel, faults: readonly string[], log: SetLog, generator: RandomGenerator) {
    this.model = model;
    this.faults = faults;
    this.log = log;
    this.generator = generator;
  }

  /** The instant of a press for something seen at `seconds`. */
  press(seconds: number): number {
    return seconds + Math.max(0, this.model.lag + this.model.jitter * randomNormal(this.generator)) / 1000;
  }

  /** Calls an attempt that ended at `seconds`, which truly had `fault` or none. */
  call(seconds: number, fault: string | null): Heard {
    const at = this.press(seconds);
    const sees = fault === null ? this.happens(this.model.severity) : !this.happens(this.model.lenience);
    const named = fault ?? this.faults[randomInteger(this.generator, Math.max(1, this.faults.length))] ?? null;
    if (this.happens(this.model.slip)) {
      const wrong = this.log.call(at, sees ? 'counted' : 'no-rep', null);
      this.log.write(at + 0.25, { kind: 'slip', of: wrong });
    }
    if (sees) return this.noRep(at, named);
    const cautions = this.happens(this.model.caution);
    const ref = this.log.call(at, cautions ? 'caution' : 'counted', cautions ? named : null);
    if (fault === null || !this.happens(this.model.reversal)) return { counts: true, disturbed: false };
    this.log.write(at + 0.6, { kind: 'reverse', of: ref, verdict: 'no-rep', faults: [fault], by: null, reason: '' });
    return { counts: false, disturbed: false };
  }

  private noRep(at: number, fault: string | null): Heard {
    const wordless = this.happens(this.model.wordless);
    const ref = this.log.call(at, 'no-rep', wordless ? null : fault);
    if (this.happens(this.model.reversal)) {
      this.log.write(at + 0.6, { kind: 'reverse', of: ref, verdict: 'counted', faults: [], by: null, reason: '' });
      return { counts: true, disturbed: true };
    }
    if (wordless && fault !== null && this.happens(0.5)) this.owed.push({ ref, fault });
    return { counts: false, disturbed: true };
  }

  breakStart(seconds: number): void {
    this.log.write(this.press(seconds), { kind: 'break-start' });
  }

  breakEnd(seconds: number): void {
    if (!this.happens(this.model.forgetsBreakEnd)) this.log.write(this.press(seconds), { kind: 'break-end' });
  }

  /** Some reasons are given only after the set. */
  explainAfterwards(seconds: number): void {
    this.owed.forEach(({ ref, fault }, i) => {
      this.log.write(seconds + 20 + 4 * i, { kind: 'explain', of: ref, faults: [fault] });
    });
  }

  private happens(chance: number): boolean {
    return chance > 0 && this.generator.uniform() < chance;
  }
}
