/** Where each page stands. A `:name` is filled in by {@link pageAt}; the router takes the same pattern. */
export const pages = {
  start: '/',
  notTaken: '/not-taken',
  bed: '/bed',
  describeCard: '/cards/describe',
  newSheet: '/sheets/new',
  sayRun: '/sheets/run',
  trouble: '/trouble',
  machine: '/machine',
  focus: '/machine/focus',
  meter: '/machine/meter',
  motion: '/machine/motion',
  corners: '/machine/corners',
  book: '/book',
  promises: '/book/promises',
  wall: '/book/wall',
  entry: '/book/:id',
  label: '/book/:id/label',
  proveEntry: '/book/:id/prove',
  kerfEntry: '/book/:id/kerf',
  marksEntry: '/book/:id/marks',
  compare: '/compare',
  checkFile: '/check',
  study: '/study/:id',
  sheet: '/study/:id/sheet',
  describe: '/study/:id/describe',
  prove: '/study/:id/prove',
  kerf: '/study/:id/kerf',
  order: '/study/:id/order',
  newOrder: '/study/:id/order/new',
  newCard: '/study/:id/card',
  card: '/study/:id/card/:code',
  takeCard: '/study/:id/card/:code/machine',
  readPhoto: '/study/:id/card/:code/photo',
  checkCard: '/study/:id/card/:code/check',
} as const;

type Pattern = (typeof pages)[keyof typeof pages];

/** The names that stand in a pattern. */
type NamesIn<Path extends string> = Path extends `${string}:${infer Name}/${infer Rest}`
  ? Name | NamesIn<`/${Rest}`>
  : Path extends `${string}:${infer Name}`
    ? Name
    : never;

type Filled<Path extends string> = [NamesIn<Path>] extends [never]
  ? []
  : [names: Readonly<Record<NamesIn<Path>, string>>];

/** The address of a page, with its names filled in. What comes behind `?` or `#` is added by whoever asks. */
export const pageAt = <Path extends Pattern>(path: Path, ...[names]: Filled<Path>): string =>
  Object.entries<string>(names ?? {}).reduce<string>(
    (address, [name, value]) => address.replace(`:${name}`, encodeURIComponent(value)),
    path,
  );
