import { type ReactNode, useEffect, useState } from 'react';
import { IconButton } from '../controls/button.tsx';
import { classNames } from '../look/class-names.ts';
import { Question } from '../look/signs.tsx';
import { useWords } from '../words/words.tsx';
import { HelpPanel } from './help-panel.tsx';
import styles from './page.module.css';
import { useHelpKey } from './use-help-key.ts';

export interface Help {
  /** What this screen is for, in a sentence. */
  readonly about: string;
  /** What one does here, in the order in which one does it. */
  readonly steps: readonly string[];
}

interface PageProps {
  readonly title: string;
  /** A sentence under the title. */
  readonly intro?: ReactNode;
  /** Buttons beside the title. */
  readonly actions?: ReactNode;
  /** A way back, above the title. */
  readonly above?: ReactNode;
  readonly help: Help;
  /** Text to be read down, not across: keeps the lines short. */
  readonly narrow?: boolean;
  readonly children: ReactNode;
}

/** One screen for reading: its title, its deeds, its help, its content. */
export function Page({ title, intro, actions, above, help, narrow, children }: PageProps) {
  const words = useWords().shell;
  const [helpOpen, setHelpOpen] = useState(false);
  useHelpKey(() => setHelpOpen(true));
  useEffect(() => {
    document.title = `${title.slice(0, 80)} – ${words.product}`;
  }, [title, words.product]);
  return (
    <div className={classNames(styles.page, narrow && styles.narrow)}>
      <header className={styles.head}>
        {above === undefined ? null : <div className={classNames(styles.above, 'no-print')}>{above}</div>}
        <h1 className={styles.title}>{title}</h1>
        {actions === undefined || actions === null ? null : (
          <div className={classNames(styles.actions, 'no-print')}>{actions}</div>
        )}
        <div className={classNames(styles.help, 'no-print')}>
          <IconButton label={words.help} onClick={() => setHelpOpen(true)}>
            <Question />
          </IconButton>
        </div>
        {intro === undefined ? null : <p className={styles.intro}>{intro}</p>}
      </header>
      {children}
      <HelpPanel open={helpOpen} help={help} onClose={() => setHelpOpen(false)} />
    </div>
  );
}
