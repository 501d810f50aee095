import { Suspense, useEffect } from 'react';
import { Redirect, Route, Router, Switch, useLocation } from 'wouter';
import { areas, loadAreasAhead } from './areas.ts';
import type { Link } from './link/link.ts';
import { ConfirmProvider } from './parts/controls/confirm.tsx';
import { ChangesProvider } from './parts/desk/changes.tsx';
import { LinkProvider } from './parts/desk/link.ts';
import { SettingsProvider } from './parts/desk/settings.tsx';
import { SettingsScreen } from './parts/settings/settings-screen.tsx';
import { AnnouncerProvider } from './parts/shell/announcer.tsx';
import { ErrorBoundary } from './parts/shell/error-boundary.tsx';
import { FloorProvider } from './parts/shell/floor.tsx';
import { useHashPlace } from './parts/shell/hash-place.ts';
import { NotFound } from './parts/shell/not-found.tsx';
import { NoticesProvider } from './parts/shell/notices.tsx';
import { Shell } from './parts/shell/shell.tsx';
import { WordsProvider } from './parts/words/words.tsx';

/** The whole program of the screens over a way to the desk. */
export function App({ link }: { link: Link }) {
  return (
    <LinkProvider value={link}>
      <WordsProvider>
        <AnnouncerProvider>
          <NoticesProvider>
            <ChangesProvider>
              <SettingsProvider>
                <ConfirmProvider>
                  <FloorProvider>
                    <Router hook={useHashPlace}>
                      <Shell areas={areas.map((area) => area.name)}>
                        <Screens />
                      </Shell>
                    </Router>
                  </FloorProvider>
                </ConfirmProvider>
              </SettingsProvider>
            </ChangesProvider>
          </NoticesProvider>
        </AnnouncerProvider>
      </WordsProvider>
    </LinkProvider>
  );
}

function Screens() {
  const [place] = useLocation();
  const first = areas[0];
  useEffect(loadAreasAhead, []);
  return (
    <ErrorBoundary place={place}>
      <Suspense fallback={null}>
        <Switch>
          {areas.map(({ name, Screen }) => (
            <Route key={name} path={`/${name}`} nest>
              <Screen />
            </Route>
          ))}
          <Route path="/settings">
            <SettingsScreen />
          </Route>
          <Route path="/">{first === undefined ? <NotFound /> : <Redirect to={`/${first.name}`} replace />}</Route>
          <Route>
            <NotFound />
          </Route>
        </Switch>
      </Suspense>
    </ErrorBoundary>
  );
}
