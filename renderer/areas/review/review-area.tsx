import { Route, Switch } from 'wouter';
import { NotFound } from '../../parts/shell/not-found.tsx';
import { AthleteScreen } from './athlete/athlete-screen.tsx';
import { GymScreen } from './gym/gym-screen.tsx';
import { HomeScreen } from './home/home-screen.tsx';
import { JudgeScreen } from './judge/judge-screen.tsx';
import { CompareScreen } from './plans/compare-screen.tsx';
import { RaceCardScreen } from './plans/race-card-screen.tsx';

/** Review: is it getting better, what costs most, when does it happen, what will it cost. */
export default function ReviewArea() {
  return (
    <Switch>
      <Route path="/">
        <HomeScreen />
      </Route>
      <Route path="/athlete/:id">{({ id }) => <AthleteScreen key={id} id={id} />}</Route>
      <Route path="/athlete/:id/compare">{({ id }) => <CompareScreen key={id} id={id} />}</Route>
      <Route path="/athlete/:id/race-card">{({ id }) => <RaceCardScreen key={id} id={id} />}</Route>
      <Route path="/judge/:id">{({ id }) => <JudgeScreen key={id} id={id} />}</Route>
      <Route path="/gym">
        <GymScreen />
      </Route>
      <Route>
        <NotFound />
      </Route>
    </Switch>
  );
}
