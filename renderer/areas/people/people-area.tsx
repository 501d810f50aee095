import { Route, Switch } from 'wouter';
import { PeopleList } from './people-list.tsx';
import { PersonScreen } from './person-screen.tsx';

export default function PeopleArea() {
  return (
    <Switch>
      <Route path="/">
        <PeopleList />
      </Route>
      <Route path="/new">
        <PersonScreen id={null} />
      </Route>
      <Route path="/:id">{({ id }) => <PersonScreen key={id} id={id} />}</Route>
    </Switch>
  );
}
