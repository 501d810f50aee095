import { type ReactNode, useEffect, useRef } from 'react';
import { LinkButton } from '../../../parts/controls/button.tsx';
import { classNames } from '../../../parts/look/class-names.ts';
import { ArrowLeft } from '../../../parts/look/signs.tsx';
import { useAnnounce } from '../../../parts/shell/announcer.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './view.module.css';

interface ViewProps {
  readonly title: string;
  readonly back?: { readonly href: string; readonly text: string };
  /** What the figures are of, in words: printed with them, and said when it changes. Empty until it is known. */
  readonly about?: string;
  readonly filters?: ReactNode;
  readonly actions?: ReactNode;
  /** The figures are being summed anew: the old ones stay, fainter. */
  readonly stale?: boolean;
  readonly children: ReactNode;
}

/** One view of the area: whose it is in small letters, so that the answer below is what one reads first. */
export function View({ title, back, about, filters, actions, stale, children }: ViewProps) {
  const words = useWords().review.view;
  const announce = useAnnounce();
  const said = useRef('');
  useEffect(() => {
    if (about === undefined || about === '') return;
    // The first is read with the page.
    if (said.current !== '' && said.current !== about) announce(about);
    said.current = about;
  }, [about, announce]);
  const { href, text } = back ?? { href: '/', text: words.back };
  return (
    <div className={styles.view}>
      <Page
        title={title}
        help={words.help}
        above={
          <LinkButton href={href} weight="quiet">
            <ArrowLeft />
            <span className={styles.back}>{text}</span>
          </LinkButton>
        }
        {...(about === undefined ? {} : { intro: about === '' ? '\u00a0' : about })}
      >
        {filters === undefined ? null : <div className="no-print">{filters}</div>}
        <div className={classNames(styles.body, stale && styles.stale)} aria-busy={stale || undefined}>
          {children}
        </div>
        {actions === undefined ? null : <div className="no-print">{actions}</div>}
      </Page>
    </div>
  );
}
