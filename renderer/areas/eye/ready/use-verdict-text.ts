import type { ReadyVerdict } from '../../../../shared-types/drills/ready.ts';
import { useWords } from '../../../parts/words/words.tsx';

/** What the gym's criteria say of a fault, in a few words. */
export function useVerdictText(): (verdict: ReadyVerdict) => string {
  const words = useWords().eye.ready.verdicts;
  return (verdict) => {
    switch (verdict.kind) {
      case 'ready':
        return words.ready;
      case 'not-ready':
        return words['not-ready'](verdict.misses);
      case 'unclear':
        return words.unclear(verdict.open);
      case 'too-few':
        return words['too-few'](verdict.needed);
      case 'not-asked':
        return words['not-asked'];
    }
  };
}
