import { lazy, Suspense } from 'react';
import { Route, Switch } from 'wouter';
import { shellText } from '../../words/en/screens/shell.ts';
import { HomeScreen } from './home/HomeScreen.tsx';
import { NotFoundScreen } from './NotFoundScreen.tsx';

/** Screens that are not where anyone starts are fetched when they are opened. */
const BedScreen = lazy(async () => ({ default: (await import('./bed/BedScreen.tsx')).BedScreen }));
const StudyScreen = lazy(async () => ({
  default: (await import('./study/StudyScreen.tsx')).StudyScreen,
}));
const BookScreen = lazy(async () => ({
  default: (await import('./book/BookScreen.tsx')).BookScreen,
}));
const CardScreen = lazy(async () => ({
  default: (await import('./card/CardScreen.tsx')).CardScreen,
}));
const CheckScreen = lazy(async () => ({
  default: (await import('./check/CheckScreen.tsx')).CheckScreen,
}));
const CompareScreen = lazy(async () => ({
  default: (await import('./compare/CompareScreen.tsx')).CompareScreen,
}));
const CornersScreen = lazy(async () => ({
  default: (await import('./corners/CornersScreen.tsx')).CornersScreen,
}));
const FocusScreen = lazy(async () => ({
  default: (await import('./focus/FocusScreen.tsx')).FocusScreen,
}));
const LabelScreen = lazy(async () => ({
  default: (await import('./book/LabelScreen.tsx')).LabelScreen,
}));
const DescribeScreen = lazy(async () => ({
  default: (await import('./describe/DescribeScreen.tsx')).DescribeScreen,
}));
const EntryScreen = lazy(async () => ({
  default: (await import('./book/EntryScreen.tsx')).EntryScreen,
}));
const MachineScreen = lazy(async () => ({
  default: (await import('./machine/MachineScreen.tsx')).MachineScreen,
}));
const MeterScreen = lazy(async () => ({
  default: (await import('./meter/MeterScreen.tsx')).MeterScreen,
}));
const MotionScreen = lazy(async () => ({
  default: (await import('./motion/MotionScreen.tsx')).MotionScreen,
}));
const ProofScreen = lazy(async () => ({
  default: (await import('./proof/ProofScreen.tsx')).ProofScreen,
}));
const SheetScreen = lazy(async () => ({
  default: (await import('./sheet/SheetScreen.tsx')).SheetScreen,
}));
const TakeScreen = lazy(async () => ({
  default: (await import('./take/TakeScreen.tsx')).TakeScreen,
}));
const TroubleScreen = lazy(async () => ({
  default: (await import('./trouble/TroubleScreen.tsx')).TroubleScreen,
}));

/** Which screen stands at which address. */
export const Screens = () => (
  <Suspense fallback={<p className="page-wait">{shellText.loading}</p>}>
    <Switch>
      <Route path="/">
        <HomeScreen />
      </Route>
      <Route path="/bed">
        <BedScreen />
      </Route>
      <Route path="/cards/describe">
        <DescribeScreen />
      </Route>
      <Route path="/sheets/new">
        <SheetScreen />
      </Route>
      <Route path="/trouble">
        <TroubleScreen />
      </Route>
      <Route path="/machine">
        <MachineScreen />
      </Route>
      <Route path="/machine/focus">
        <FocusScreen />
      </Route>
      <Route path="/machine/meter">
        <MeterScreen />
      </Route>
      <Route path="/machine/motion">
        <MotionScreen />
      </Route>
      <Route path="/machine/corners">
        <CornersScreen />
      </Route>
      <Route path="/book">
        <BookScreen />
      </Route>
      <Route path="/book/:id">{({ id }) => <EntryScreen key={id} id={id} />}</Route>
      <Route path="/book/:id/label">{({ id }) => <LabelScreen key={id} id={id} />}</Route>
      <Route path="/book/:id/prove">{({ id }) => <ProofScreen key={id} entryId={id} />}</Route>
      <Route path="/compare">
        <CompareScreen />
      </Route>
      <Route path="/check">
        <CheckScreen />
      </Route>
      <Route path="/study/:id/card/:code/check">
        {({ id, code }) => <CheckScreen key={code} studyId={id} code={code} />}
      </Route>
      <Route path="/study/:id/prove">{({ id }) => <ProofScreen key={id} studyId={id} />}</Route>
      <Route path="/study/:id">{({ id }) => <StudyScreen key={id} id={id} />}</Route>
      <Route path="/study/:id/sheet">{({ id }) => <SheetScreen key={id} studyId={id} />}</Route>
      <Route path="/study/:id/describe">
        {({ id }) => <DescribeScreen key={id} studyId={id} />}
      </Route>
      <Route path="/study/:id/card">{({ id }) => <CardScreen key={id} studyId={id} />}</Route>
      <Route path="/study/:id/card/:code">
        {({ id, code }) => <StudyScreen key={`${id}/${code}`} id={id} code={code} />}
      </Route>
      <Route path="/study/:id/card/:code/machine">
        {({ id, code }) => <TakeScreen key={`${id}/${code}`} studyId={id} code={code} />}
      </Route>
      <Route>
        <NotFoundScreen />
      </Route>
    </Switch>
  </Suspense>
);
