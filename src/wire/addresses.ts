// Methods and paths alone: the page knows the shapes at compile time, and need not carry them.
import {
  machineTests,
  testTitle,
  type MachineTestName,
  type TestTitle,
} from '../core/machineTests.ts';

/** What is asked of a kind of test: the verb, how, and of all or of one. */
export const testVerbs = {
  list: { method: 'GET', of: 'all' },
  record: { method: 'POST', of: 'all' },
  get: { method: 'GET', of: 'one' },
  remove: { method: 'DELETE', of: 'one' },
} as const;
export type TestVerb = keyof typeof testVerbs;

/** `listFocusTests`, `recordFocusTest`. */
export type TestRouteName<
  Verb extends TestVerb,
  Name extends MachineTestName,
> = `${Verb}${TestTitle<Name>}${Verb extends 'list' ? 's' : ''}`;

export const testRouteName = <Verb extends TestVerb, Name extends MachineTestName>(
  verb: Verb,
  name: Name,
): TestRouteName<Verb, Name> =>
  `${verb}${testTitle(name)}${verb === 'list' ? 's' : ''}` as TestRouteName<Verb, Name>;

/** Where a verb of a kind of test stands. */
export const testAddress = (verb: TestVerb, name: MachineTestName) => {
  const { method, of } = testVerbs[verb];
  return { method, path: of === 'all' ? `/api/${name}s` : `/api/${name}s/:id` } as const;
};

/** Something for every verb of every kind of test, under the name of its route. */
export const byTestRoute = <Of>(
  of: (verb: TestVerb, name: MachineTestName) => Of,
): Readonly<Record<string, Of>> =>
  Object.fromEntries(
    machineTests.flatMap((name) =>
      (Object.keys(testVerbs) as TestVerb[]).map((verb) => [
        testRouteName(verb, name),
        of(verb, name),
      ]),
    ),
  );

type TestAddresses = {
  readonly [Verb in TestVerb]: {
    readonly [Name in MachineTestName as TestRouteName<Verb, Name>]: {
      readonly method: (typeof testVerbs)[Verb]['method'];
      readonly path: string;
    };
  };
};

const testAddresses = byTestRoute(testAddress) as unknown as TestAddresses['list'] &
  TestAddresses['record'] &
  TestAddresses['get'] &
  TestAddresses['remove'];

/** Where each route of `api` stands. */
export const addresses = {
  health: { method: 'GET', path: '/api/health' },
  home: { method: 'GET', path: '/api/home' },
  backups: { method: 'GET', path: '/api/backups' },
  live: { method: 'GET', path: '/api/live' },
  listStudies: { method: 'GET', path: '/api/studies' },
  startStudy: { method: 'POST', path: '/api/studies' },
  getStudy: { method: 'GET', path: '/api/studies/:id' },
  changeStudy: { method: 'PATCH', path: '/api/studies/:id' },
  removeStudy: { method: 'DELETE', path: '/api/studies/:id' },
  putBackStudy: { method: 'POST', path: '/api/studies/:id/put-back' },
  putOnBed: { method: 'POST', path: '/api/studies/:id/on-bed' },
  listMachines: { method: 'GET', path: '/api/machines' },
  describeMachine: { method: 'PUT', path: '/api/machines/:id' },
  removeMachine: { method: 'DELETE', path: '/api/machines/:id' },
  noteMachineChange: { method: 'POST', path: '/api/machines/:id/changes' },
  removeMachineChange: { method: 'DELETE', path: '/api/machines/:id/changes/:changeId' },
  addCard: { method: 'POST', path: '/api/studies/:id/cards' },
  replaceCard: { method: 'PUT', path: '/api/studies/:id/cards/:code' },
  removeCard: { method: 'DELETE', path: '/api/studies/:id/cards/:code' },
  cardFile: { method: 'GET', path: '/api/studies/:id/cards/:code/card.:kind' },
  recordReadings: { method: 'POST', path: '/api/studies/:id/events' },
  recordTally: { method: 'POST', path: '/api/studies/:id/tallies' },
  correctTally: { method: 'PUT', path: '/api/tallies/:tallyId' },
  removeTally: { method: 'DELETE', path: '/api/studies/:id/tallies/:tallyId' },
  answerStudy: { method: 'GET', path: '/api/studies/:id/answer' },
  gatherHistory: { method: 'GET', path: '/api/history' },
  proposeNextCard: { method: 'GET', path: '/api/studies/:id/nextcard' },
  calcFit: { method: 'POST', path: '/api/calc/fit' },
  calcNextCard: { method: 'POST', path: '/api/calc/nextcard' },
  searchBook: { method: 'GET', path: '/api/book' },
  keptLike: { method: 'GET', path: '/api/kept-like' },
  getEntry: { method: 'GET', path: '/api/book/:id' },
  keepSetting: { method: 'POST', path: '/api/book' },
  changeEntry: { method: 'PATCH', path: '/api/book/:id' },
  removeEntry: { method: 'DELETE', path: '/api/book/:id' },
  tallyEntry: { method: 'POST', path: '/api/book/:id/tallies' },
  ...testAddresses,
  compareMeterings: { method: 'GET', path: '/api/meterings/:id/against/:before' },
  rampFile: { method: 'GET', path: '/api/focus-ramp/ramp.:kind' },
  judgeMaterial: { method: 'GET', path: '/api/materials' },
  pairing: { method: 'GET', path: '/api/pairing' },
  openPairing: { method: 'POST', path: '/api/pairing' },
  removePhone: { method: 'DELETE', path: '/api/pairing/phones/:id' },
  pair: { method: 'POST', path: '/api/pair' },
  openExample: { method: 'POST', path: '/api/example' },
  removeExample: { method: 'DELETE', path: '/api/example' },
  exportAll: { method: 'GET', path: '/api/export' },
  exportBookTable: { method: 'GET', path: '/api/export/book.csv' },
  exportCellTable: { method: 'GET', path: '/api/export/cells.csv' },
  importAll: { method: 'POST', path: '/api/import' },
} as const;

/** Where each route of `photoApi` stands. */
export const photoAddresses = {
  listPhotos: { method: 'GET', path: '/api/studies/:id/cards/:code/photos' },
  keepPhoto: { method: 'PUT', path: '/api/studies/:id/cards/:code/photos/:side' },
  cardPhoto: { method: 'GET', path: '/api/studies/:id/cards/:code/photos/:side' },
  removePhoto: { method: 'DELETE', path: '/api/studies/:id/cards/:code/photos/:side' },
  gradeCard: { method: 'GET', path: '/api/studies/:id/cards/:code/grade' },
  listSettingPhotos: { method: 'GET', path: '/api/book/:id/photos' },
  keepSettingPhoto: { method: 'PUT', path: '/api/book/:id/photos/:subject' },
  settingPhoto: { method: 'GET', path: '/api/book/:id/photos/:subject' },
  removeSettingPhoto: { method: 'DELETE', path: '/api/book/:id/photos/:subject' },
} as const;

/** Where each route of `orderApi` stands. */
export const orderAddresses = {
  keepOrder: { method: 'PUT', path: '/api/studies/:id/orders/:orderId' },
  removeOrder: { method: 'DELETE', path: '/api/studies/:id/orders/:orderId' },
  planStartedOrder: { method: 'GET', path: '/api/studies/:id/orders/:orderId/plan' },
  calcPlan: { method: 'POST', path: '/api/calc/plan' },
} as const;

/** Where each route of `kerfApi` stands. */
export const kerfAddresses = {
  kerfCardFile: { method: 'GET', path: '/api/kerf-card/card.:kind' },
  calcKerf: { method: 'POST', path: '/api/calc/kerf' },
  growDrawing: { method: 'POST', path: '/api/calc/grow' },
} as const;

/** Where each route of `markApi` stands. */
export const markAddresses = {
  markStripFile: { method: 'GET', path: '/api/marking-strip/strip.:kind' },
  calcMarks: { method: 'POST', path: '/api/calc/marks' },
  calcShades: { method: 'POST', path: '/api/calc/shades' },
} as const;

/** Where the kept settings for the wall stand. */
export const wallListAddress = { method: 'GET', path: '/api/wall-list.pdf' } as const;

/** Where each route of `scoreApi` stands. */
export const scoreAddresses = {
  scorePromises: { method: 'GET', path: '/api/score' },
  exportCounts: { method: 'GET', path: '/api/export/counts.json' },
} as const;

/** Where each route of `watchApi` stands. */
export const watchAddresses = {
  watchEntry: { method: 'GET', path: '/api/book/:id/watch' },
  cutStrip: { method: 'POST', path: '/api/book/:id/strips' },
} as const;
