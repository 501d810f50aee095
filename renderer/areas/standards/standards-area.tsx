import { Route, Switch } from 'wouter';
import { CueCardScreen } from './cue-card-screen.tsx';
import { NewSheetScreen, NextVersionScreen } from './form/form-screens.tsx';
import { SheetList } from './sheet-list.tsx';
import { SheetScreen } from './sheet-screen.tsx';
import { VersionsScreen } from './versions-screen.tsx';

export default function StandardsArea() {
  return (
    <Switch>
      <Route path="/">
        <SheetList />
      </Route>
      <Route path="/new">
        <NewSheetScreen />
      </Route>
      <Route path="/sheet/:id">{({ id }) => <SheetScreen id={id} version={null} />}</Route>
      <Route path="/sheet/:id/next">{({ id }) => <NextVersionScreen key={id} id={id} />}</Route>
      <Route path="/sheet/:id/versions">{({ id }) => <VersionsScreen id={id} />}</Route>
      <Route path="/sheet/:id/card">{({ id }) => <CueCardScreen id={id} />}</Route>
      <Route path="/sheet/:id/:version">{({ id, version }) => <SheetScreen id={id} version={Number(version)} />}</Route>
    </Switch>
  );
}
