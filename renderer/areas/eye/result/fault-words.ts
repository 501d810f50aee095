import type { FaultScore } from '../../../../shared-types/contract/drills/scores.ts';
import { FAULTS, type FaultCode, type MovementName } from '../../../../shared-types/motion/specification.ts';
import { useWords } from '../../../parts/words/words.tsx';

function codeOf(movement: MovementName, code: string): FaultCode | null {
  const known: readonly FaultCode[] = FAULTS[movement];
  return known.find((item) => item === code) ?? null;
}

/** What a score says of the judge's line for one fault, in a sentence or two. */
export function useFaultWords(movement: MovementName): (score: FaultScore) => string {
  const words = useWords().eye;
  return (score) => {
    const { verdict, unit, name, strictness } = score;
    const code = codeOf(movement, score.code);
    const sharp =
      score.precision === null ? '' : ` ${words.result.sharp(words.margins.amount(score.precision.value, unit))}`;
    const [one, other] = [Math.abs(strictness?.low ?? 0), Math.abs(strictness?.high ?? 0)];
    const sure = words.margins.span(Math.min(one, other), Math.max(one, other), unit);
    switch (verdict.kind) {
      case 'lenient':
        return (
          (code === null ? name : words.result.lets(words.margins.lets(movement, code, verdict.by, unit), sure)) + sharp
        );
      case 'strict':
        return (
          (code === null ? name : words.result.takes(words.margins.takes(movement, code, verdict.by, unit), sure)) +
          sharp
        );
      case 'on-the-line':
        return words.result.onLine(name) + sharp;
      case 'unclear':
        return words.result.unclear(name, verdict.stillNeeded);
      case 'cannot-tell':
        return words.result.why[verdict.why](name);
    }
  };
}
