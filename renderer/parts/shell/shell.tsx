import { type ReactNode, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { IconButton } from '../controls/button.tsx';
import { useSettings } from '../desk/settings.tsx';
import { useCall } from '../desk/use-call.ts';
import { classNames } from '../look/class-names.ts';
import { Cog, Cross, Lines, PlumbBob } from '../look/signs.tsx';
import { useWords, type Words } from '../words/words.tsx';
import { useIsFloor } from './floor.tsx';
import { MessageBar } from './message-bar.tsx';
import styles from './shell.module.css';
import { useTheme } from './theme.ts';
import { useNewPlace } from './use-new-place.ts';

type AreaName = keyof Words['shell']['areas'];

/** The frame: the product's name, the way between the areas, the content, the message bar. */
export function Shell({ areas, children }: { areas: readonly AreaName[]; children: ReactNode }) {
  const words = useWords().shell;
  const floor = useIsFloor();
  const { settings } = useSettings();
  const [place] = useLocation();
  useTheme(settings.theme, floor);
  useNewPlace(place);
  const about = useCall('about', (client, signal) => client.desk.about(undefined, { signal }));
  return (
    <div className={classNames(styles.shell, floor && styles.floor)}>
      {floor ? null : (
        <>
          <button type="button" className={styles.skip} onClick={() => document.getElementById('content')?.focus()}>
            {words.skip}
          </button>
          <Head areas={areas} />
          {about.data?.demo ? (
            <aside className={classNames(styles.demo, 'no-print')} aria-label={words.demoLabel}>
              {words.demo}
            </aside>
          ) : null}
        </>
      )}
      <main id="content" className={styles.content} tabIndex={-1}>
        {children}
      </main>
      <MessageBar />
    </div>
  );
}

function Head({ areas }: { areas: readonly AreaName[] }) {
  const words = useWords().shell;
  const [place] = useLocation();
  const [menuOpen, setMenuOpen] = useState(false);
  const entry = (name: AreaName, content: ReactNode) => {
    const here = place === `/${name}` || place.startsWith(`/${name}/`);
    return (
      <Link
        href={`/${name}`}
        className={styles.entry}
        aria-current={here ? 'page' : undefined}
        aria-label={name === 'settings' ? words.areas.settings : undefined}
        title={name === 'settings' ? words.areas.settings : undefined}
        onClick={() => setMenuOpen(false)}
      >
        {content}
      </Link>
    );
  };
  return (
    <header className={classNames(styles.head, 'no-print')}>
      <p className={styles.product}>
        <PlumbBob />
        {words.product}
      </p>
      <IconButton
        className={styles.menu}
        label={words.menu}
        aria-expanded={menuOpen}
        aria-controls="areas"
        onClick={() => setMenuOpen(!menuOpen)}
      >
        {menuOpen ? <Cross /> : <Lines />}
      </IconButton>
      <nav id="areas" className={styles.areas} aria-label={words.navigation} data-open={menuOpen}>
        <ul>
          {areas.map((name) => (
            <li key={name}>{entry(name, words.areas[name])}</li>
          ))}
          <li className={styles.last}>
            {entry(
              'settings',
              <>
                <Cog />
                <span className={styles.narrowOnly}>{words.areas.settings}</span>
              </>,
            )}
          </li>
        </ul>
      </nav>
    </header>
  );
}
