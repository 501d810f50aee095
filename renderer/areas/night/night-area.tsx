import { Route, Switch } from 'wouter';
import { NotFound } from '../../parts/shell/not-found.tsx';
import { ChangeNightScreen, NewNightScreen } from './arrange/new-night-screen.tsx';
import { NightList } from './night-list.tsx';
import { NightScreen } from './plan/night-screen.tsx';

/** Judging night: the nights, a new one, the plan of one. */
export default function NightArea() {
  return (
    <Switch>
      <Route path="/">
        <NightList />
      </Route>
      <Route path="/new">
        <NewNightScreen />
      </Route>
      <Route path="/:id/change">{({ id }) => <ChangeNightScreen key={id} id={id} />}</Route>
      <Route path="/:id">{({ id }) => <NightScreen key={id} id={id} />}</Route>
      <Route>
        <NotFound />
      </Route>
    </Switch>
  );
}
