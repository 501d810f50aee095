import { Route, Switch } from 'wouter';
import { NotFound } from '../../parts/shell/not-found.tsx';
import { HomeScreen } from './home/home-screen.tsx';
import { SetScreen } from './set-screen.tsx';
import { SetsScreen } from './sets/sets-screen.tsx';
import { BriefRoute } from './start/brief-route.tsx';

/** Judge: set up, judge, look at a set, find one. */
export default function JudgeArea() {
  return (
    <Switch>
      <Route path="/">
        <HomeScreen />
      </Route>
      <Route path="/brief">
        <BriefRoute />
      </Route>
      <Route path="/sets">
        <SetsScreen />
      </Route>
      <Route path="/set/:id">{({ id }) => <SetScreen key={id} id={id} />}</Route>
      <Route>
        <NotFound />
      </Route>
    </Switch>
  );
}
