import { Route, Switch, useLocation } from 'wouter';
import { shellText } from '../../words/texts.ts';
import { Fetched } from '../parts/fetched/Fetched.tsx';
import { withWords } from '../state/withWords.ts';
import { HomeScreen } from './home/HomeScreen.tsx';
import { NotFoundScreen } from './NotFoundScreen.tsx';
import { pages } from '../state/pages.ts';

// Screens that are not where anyone starts are fetched when they are opened.
const AsideScreen = withWords(async () => (await import('./aside/AsideScreen.tsx')).AsideScreen);
const BedScreen = withWords(async () => (await import('./bed/BedScreen.tsx')).BedScreen);
const StudyScreen = withWords(async () => (await import('./study/StudyScreen.tsx')).StudyScreen);
const BookScreen = withWords(async () => (await import('./book/BookScreen.tsx')).BookScreen);
const CardScreen = withWords(async () => (await import('./card/CardScreen.tsx')).CardScreen);
const CheckScreen = withWords(async () => (await import('./check/CheckScreen.tsx')).CheckScreen);
const CompareScreen = withWords(
  async () => (await import('./compare/CompareScreen.tsx')).CompareScreen,
);
const CornersScreen = withWords(
  async () => (await import('./corners/CornersScreen.tsx')).CornersScreen,
);
const FocusScreen = withWords(async () => (await import('./focus/FocusScreen.tsx')).FocusScreen);
const LabelScreen = withWords(async () => (await import('./book/LabelScreen.tsx')).LabelScreen);
const DescribeScreen = withWords(
  async () => (await import('./describe/DescribeScreen.tsx')).DescribeScreen,
);
const EntryScreen = withWords(async () => (await import('./book/EntryScreen.tsx')).EntryScreen);
const KerfScreen = withWords(async () => (await import('./kerf/KerfScreen.tsx')).KerfScreen);
const MarksScreen = withWords(async () => (await import('./marks/MarksScreen.tsx')).MarksScreen);
const WallScreen = withWords(async () => (await import('./book/WallScreen.tsx')).WallScreen);
const MachineScreen = withWords(
  async () => (await import('./machine/MachineScreen.tsx')).MachineScreen,
);
const MeterScreen = withWords(async () => (await import('./meter/MeterScreen.tsx')).MeterScreen);
const MotionScreen = withWords(
  async () => (await import('./motion/MotionScreen.tsx')).MotionScreen,
);
const OrderScreen = withWords(async () => (await import('./order/OrderScreen.tsx')).OrderScreen);
const PhotoScreen = withWords(async () => (await import('./photo/PhotoScreen.tsx')).PhotoScreen);
const ScoreScreen = withWords(async () => (await import('./score/ScoreScreen.tsx')).ScoreScreen);
const ProofScreen = withWords(async () => (await import('./proof/ProofScreen.tsx')).ProofScreen);
const SheetScreen = withWords(async () => (await import('./sheet/SheetScreen.tsx')).SheetScreen);
const RunScreen = withWords(async () => (await import('./sheet/RunScreen.tsx')).RunScreen);
const StudyIfCut = withWords(async () => (await import('./StudyIfCut.tsx')).StudyIfCut);
const TakeScreen = withWords(async () => (await import('./take/TakeScreen.tsx')).TakeScreen);
const TroubleScreen = withWords(
  async () => (await import('./trouble/TroubleScreen.tsx')).TroubleScreen,
);

/** Which screen stands at which address. */
export const Screens = () => {
  const [path] = useLocation();
  // A part that is missing at one address takes no other with it.
  return (
    <Fetched key={path} waiting={<p className="page-wait">{shellText.loading}</p>}>
      <Switch>
        <Route path={pages.start}>
          <HomeScreen />
        </Route>
        <Route path={pages.notTaken}>
          <AsideScreen />
        </Route>
        <Route path={pages.bed}>
          <BedScreen />
        </Route>
        <Route path={pages.describeCard}>
          <DescribeScreen />
        </Route>
        <Route path={pages.newSheet}>
          <SheetScreen />
        </Route>
        <Route path={pages.sayRun}>
          <RunScreen />
        </Route>
        <Route path={pages.trouble}>
          <TroubleScreen />
        </Route>
        <Route path={pages.machine}>
          <MachineScreen />
        </Route>
        <Route path={pages.focus}>
          <FocusScreen />
        </Route>
        <Route path={pages.meter}>
          <MeterScreen />
        </Route>
        <Route path={pages.motion}>
          <MotionScreen />
        </Route>
        <Route path={pages.corners}>
          <CornersScreen />
        </Route>
        <Route path={pages.book}>
          <BookScreen />
        </Route>
        <Route path={pages.promises}>
          <ScoreScreen />
        </Route>
        <Route path={pages.wall}>
          <WallScreen />
        </Route>
        <Route path={pages.entry}>{({ id }) => <EntryScreen key={id} id={id} />}</Route>
        <Route path={pages.label}>{({ id }) => <LabelScreen key={id} id={id} />}</Route>
        <Route path={pages.proveEntry}>{({ id }) => <ProofScreen key={id} entryId={id} />}</Route>
        <Route path={pages.kerfEntry}>{({ id }) => <KerfScreen key={id} entryId={id} />}</Route>
        <Route path={pages.marksEntry}>{({ id }) => <MarksScreen key={id} entryId={id} />}</Route>
        <Route path={pages.compare}>
          <CompareScreen />
        </Route>
        <Route path={pages.checkFile}>
          <CheckScreen />
        </Route>
        <Route path={pages.checkCard}>
          {({ id, code }) => <CheckScreen key={code} studyId={id} code={code} />}
        </Route>
        <Route path={pages.prove}>
          {({ id }) => (
            <StudyIfCut id={id}>
              <ProofScreen key={id} studyId={id} />
            </StudyIfCut>
          )}
        </Route>
        <Route path={pages.kerf}>
          {({ id }) => (
            <StudyIfCut id={id}>
              <KerfScreen key={id} studyId={id} />
            </StudyIfCut>
          )}
        </Route>
        <Route path={pages.order}>{({ id }) => <OrderScreen key={id} studyId={id} />}</Route>
        <Route path={pages.newOrder}>
          {({ id }) => <OrderScreen key={id} studyId={id} isNew />}
        </Route>
        <Route path={pages.study}>{({ id }) => <StudyScreen key={id} id={id} />}</Route>
        <Route path={pages.sheet}>{({ id }) => <SheetScreen key={id} studyId={id} />}</Route>
        <Route path={pages.describe}>
          {({ id }) => (
            <StudyIfCut id={id}>
              <DescribeScreen key={id} studyId={id} />
            </StudyIfCut>
          )}
        </Route>
        <Route path={pages.newCard}>
          {({ id }) => (
            <StudyIfCut id={id}>
              <CardScreen key={id} studyId={id} />
            </StudyIfCut>
          )}
        </Route>
        <Route path={pages.card}>
          {({ id, code }) => <StudyScreen key={`${id}/${code}`} id={id} code={code} />}
        </Route>
        <Route path={pages.readPhoto}>
          {({ id, code }) => <PhotoScreen key={`${id}/${code}`} studyId={id} code={code} />}
        </Route>
        <Route path={pages.takeCard}>
          {({ id, code }) => (
            <StudyIfCut id={id}>
              <TakeScreen key={`${id}/${code}`} studyId={id} code={code} />
            </StudyIfCut>
          )}
        </Route>
        <Route>
          <NotFoundScreen />
        </Route>
      </Switch>
    </Fetched>
  );
};
