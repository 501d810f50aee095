import type { Subjects } from '../../../../shared-types/contract/review/filter.ts';
import type { Reading } from '../../../parts/desk/use-call.ts';
import { useReview } from './use-review.ts';

/** Who and what can be reviewed. */
export function useSubjects(): Reading<Subjects> {
  return useReview('subjects', (client, signal) => client.review.subjects(undefined, { signal }));
}
