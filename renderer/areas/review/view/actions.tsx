import type { ReviewExport } from '../../../../shared-types/contract/review.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { saveFile } from '../../../parts/controls/save-file.ts';
import { failureOf } from '../../../parts/desk/failure.ts';
import { useLink } from '../../../parts/desk/link.ts';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './view.module.css';

/** Prints the view, or saves its figures. `of`: what the file holds. */
export function Actions({ of }: { of: readonly ReviewExport['of'][] }) {
  const words = useWords().review.view;
  const link = useLink();
  const { tell, tellFailure } = useNotices();
  const save = async (format: ReviewExport['format']): Promise<void> => {
    try {
      for (const one of of) {
        const file = await link.client.review.export({ format, of: one });
        saveFile(file);
        tell(words.saved(file.fileName));
      }
    } catch (error) {
      tellFailure(failureOf(error));
    }
  };
  return (
    <div className={styles.actions}>
      <Button onClick={() => window.print()}>{words.print}</Button>
      <Button onClick={() => void save('csv')}>{words.csv}</Button>
      <Button onClick={() => void save('json')}>{words.json}</Button>
    </div>
  );
}
