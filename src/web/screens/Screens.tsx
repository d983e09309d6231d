import { Route, Switch } from 'wouter';
import { HomeScreen } from './home/HomeScreen.tsx';
import { NotFoundScreen } from './NotFoundScreen.tsx';

/** Which screen stands at which address. */
export const Screens = () => (
  <Switch>
    <Route path="/">
      <HomeScreen />
    </Route>
    <Route>
      <NotFoundScreen />
    </Route>
  </Switch>
);
