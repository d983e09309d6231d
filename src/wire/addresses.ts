// Methods, paths and who may: the page knows the shapes at compile time, and need not carry them.
import {
  machineTests,
  testTitle,
  type MachineTestName,
  type TestTitle,
} from '../core/machineTests.ts';

/** What is asked of a kind of test: the verb, how, of all or of one, and who may. */
export const testVerbs = {
  list: { method: 'GET', of: 'all', least: 'reads-and-counts' },
  record: { method: 'POST', of: 'all', least: 'decides' },
  get: { method: 'GET', of: 'one', least: 'reads-and-counts' },
  remove: { method: 'DELETE', of: 'one', least: 'decides' },
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
  const { method, of, least } = testVerbs[verb];
  return { method, path: of === 'all' ? `/api/${name}s` : `/api/${name}s/:id`, least } as const;
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
      readonly least: (typeof testVerbs)[Verb]['least'];
    };
  };
};

const testAddresses = byTestRoute(testAddress) as unknown as TestAddresses['list'] &
  TestAddresses['record'] &
  TestAddresses['get'] &
  TestAddresses['remove'];

/** Where each route of `api` stands. */
export const addresses = {
  health: { method: 'GET', path: '/api/health', least: 'anyone' },
  home: { method: 'GET', path: '/api/home', least: 'reads-and-counts' },
  backups: { method: 'GET', path: '/api/backups', least: 'reads-and-counts' },
  live: { method: 'GET', path: '/api/live', least: 'reads-and-counts' },
  listStudies: { method: 'GET', path: '/api/studies', least: 'reads-and-counts' },
  startStudy: { method: 'POST', path: '/api/studies', least: 'decides' },
  getStudy: { method: 'GET', path: '/api/studies/:id', least: 'reads-and-counts' },
  changeStudy: { method: 'PATCH', path: '/api/studies/:id', least: 'decides' },
  removeStudy: { method: 'DELETE', path: '/api/studies/:id', least: 'decides' },
  putBackStudy: { method: 'POST', path: '/api/studies/:id/put-back', least: 'decides' },
  putOnBed: { method: 'POST', path: '/api/studies/:id/on-bed', least: 'reads-and-counts' },
  listMachines: { method: 'GET', path: '/api/machines', least: 'reads-and-counts' },
  describeMachine: { method: 'PUT', path: '/api/machines/:id', least: 'runs-the-place' },
  removeMachine: { method: 'DELETE', path: '/api/machines/:id', least: 'runs-the-place' },
  noteMachineChange: { method: 'POST', path: '/api/machines/:id/changes', least: 'decides' },
  removeMachineChange: {
    method: 'DELETE',
    path: '/api/machines/:id/changes/:changeId',
    least: 'decides',
  },
  addCard: { method: 'POST', path: '/api/studies/:id/cards', least: 'decides' },
  replaceCard: { method: 'PUT', path: '/api/studies/:id/cards/:code', least: 'decides' },
  noteCard: {
    method: 'PATCH',
    path: '/api/studies/:id/cards/:code',
    least: 'reads-and-counts',
  },
  removeCard: { method: 'DELETE', path: '/api/studies/:id/cards/:code', least: 'decides' },
  cardFile: {
    method: 'GET',
    path: '/api/studies/:id/cards/:code/card.:kind',
    least: 'reads-and-counts',
  },
  recordReadings: { method: 'POST', path: '/api/studies/:id/events', least: 'reads-and-counts' },
  recordTally: { method: 'POST', path: '/api/studies/:id/tallies', least: 'reads-and-counts' },
  correctTally: { method: 'PUT', path: '/api/tallies/:tallyId', least: 'reads-and-counts' },
  removeTally: { method: 'DELETE', path: '/api/studies/:id/tallies/:tallyId', least: 'decides' },
  answerStudy: { method: 'GET', path: '/api/studies/:id/answer', least: 'reads-and-counts' },
  gatherHistory: { method: 'GET', path: '/api/history', least: 'reads-and-counts' },
  proposeNextCard: { method: 'GET', path: '/api/studies/:id/nextcard', least: 'reads-and-counts' },
  calcFit: { method: 'POST', path: '/api/calc/fit', least: 'reads-and-counts' },
  calcNextCard: { method: 'POST', path: '/api/calc/nextcard', least: 'reads-and-counts' },
  searchBook: { method: 'GET', path: '/api/book', least: 'reads-and-counts' },
  keptLike: { method: 'GET', path: '/api/kept-like', least: 'reads-and-counts' },
  getEntry: { method: 'GET', path: '/api/book/:id', least: 'reads-and-counts' },
  keepSetting: { method: 'POST', path: '/api/book', least: 'decides' },
  changeEntry: { method: 'PATCH', path: '/api/book/:id', least: 'decides' },
  removeEntry: { method: 'DELETE', path: '/api/book/:id', least: 'decides' },
  tallyEntry: { method: 'POST', path: '/api/book/:id/tallies', least: 'reads-and-counts' },
  ...testAddresses,
  compareMeterings: {
    method: 'GET',
    path: '/api/meterings/:id/against/:before',
    least: 'reads-and-counts',
  },
  rampFile: { method: 'GET', path: '/api/focus-ramp/ramp.:kind', least: 'reads-and-counts' },
  judgeMaterial: { method: 'GET', path: '/api/materials', least: 'reads-and-counts' },
  pairing: { method: 'GET', path: '/api/pairing', least: 'anyone' },
  openPairing: { method: 'POST', path: '/api/pairing', least: 'runs-the-place' },
  changePhone: { method: 'PATCH', path: '/api/pairing/phones/:id', least: 'runs-the-place' },
  removePhone: { method: 'DELETE', path: '/api/pairing/phones/:id', least: 'runs-the-place' },
  pair: { method: 'POST', path: '/api/pair', least: 'anyone' },
  openExample: { method: 'POST', path: '/api/example', least: 'decides' },
  removeExample: { method: 'DELETE', path: '/api/example', least: 'decides' },
  exportAll: { method: 'GET', path: '/api/export', least: 'reads-and-counts' },
  exportBookTable: { method: 'GET', path: '/api/export/book.csv', least: 'reads-and-counts' },
  exportCellTable: { method: 'GET', path: '/api/export/cells.csv', least: 'reads-and-counts' },
  importAll: { method: 'POST', path: '/api/import', least: 'runs-the-place' },
} as const;

/** Where each route of `orderApi` stands. */
export const orderAddresses = {
  keepOrder: { method: 'PUT', path: '/api/studies/:id/orders/:orderId', least: 'decides' },
  removeOrder: { method: 'DELETE', path: '/api/studies/:id/orders/:orderId', least: 'decides' },
  planStartedOrder: {
    method: 'GET',
    path: '/api/studies/:id/orders/:orderId/plan',
    least: 'reads-and-counts',
  },
  calcPlan: { method: 'POST', path: '/api/calc/plan', least: 'reads-and-counts' },
} as const;
