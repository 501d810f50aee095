import { Route, Switch } from 'wouter';
import { NotFound } from '../../parts/shell/not-found.tsx';
import { HistoryScreen } from './history/history-screen.tsx';
import { HomeScreen } from './home/home-screen.tsx';
import { DrillsScreen } from './list/drills-screen.tsx';
import { ReadyScreen } from './ready/ready-screen.tsx';
import { ResultScreen } from './result/result-screen.tsx';
import { RunScreen } from './run/run-screen.tsx';

/** Train the eye: choose a drill, do it, read what it says, see who is ready. */
export default function EyeArea() {
  return (
    <Switch>
      <Route path="/">
        <HomeScreen />
      </Route>
      <Route path="/drill/:id">{({ id }) => <RunScreen key={id} id={id} />}</Route>
      <Route path="/result/:id">{({ id }) => <ResultScreen key={id} id={id} />}</Route>
      <Route path="/judge/:judge/:sheet">
        {({ judge, sheet }) => <HistoryScreen key={`${judge} ${sheet}`} judge={judge} sheet={sheet} />}
      </Route>
      <Route path="/drills">
        <DrillsScreen />
      </Route>
      <Route path="/ready">
        <ReadyScreen />
      </Route>
      <Route>
        <NotFound />
      </Route>
    </Switch>
  );
}
