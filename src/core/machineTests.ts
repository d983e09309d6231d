/**
 * What is tested on a machine and kept with its date. From a name follow its list in an export, its addresses, its codes, and
 * what stands in the store; its shape and what it says follow by it in `formats/machineTests.ts`.
 */
export const machineTests = [
  'metering',
  'focus-test',
  'bed-test',
  'kerf-test',
  'mark-test',
] as const;

export type MachineTestName = (typeof machineTests)[number];

/** What every test of a machine has. */
export interface MachineTest {
  readonly version: 1;
  readonly id: string;
  /** ISO 8601, UTC. */
  readonly at: string;
  /** Of the invented example workshop: goes with it, and is never exported. */
  readonly isExample?: true;
  /** Absent: from before machines were things of their own. */
  readonly machineId?: string;
  /** The machine's name; absent where it has none. Tests of different machines are never compared. */
  readonly machine?: string;
  readonly note?: string;
}

/** What was read, before anybody keeps it. */
export type Unkept<T extends MachineTest> = Omit<T, 'version' | 'id' | 'at' | 'isExample'>;

type Camel<Name extends string> = Name extends `${infer One}-${infer Rest}`
  ? `${One}${Capitalize<Camel<Rest>>}`
  : Name;

/** `FocusTest`, as verbs have it. */
export type TestTitle<Name extends MachineTestName> = Capitalize<Camel<Name>>;
/** `focusTests`, as an export and its counts have it. */
export type TestList<Name extends MachineTestName> = `${Camel<Name>}s`;

/** Something for each kind of test, under the name of its list. */
export type ByTestList<Of> = { readonly [Name in MachineTestName as TestList<Name>]: Of };

const camel = (name: string): string =>
  name.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());

export const testTitle = <Name extends MachineTestName>(name: Name): TestTitle<Name> => {
  const [first = '', ...rest] = camel(name);
  return [first.toUpperCase(), ...rest].join('') as TestTitle<Name>;
};

export const testList = <Name extends MachineTestName>(name: Name): TestList<Name> =>
  `${camel(name)}s` as TestList<Name>;

/** Something for each kind of test, made from its name. */
export const byTestList = <Of>(of: (name: MachineTestName) => Of): ByTestList<Of> =>
  Object.fromEntries(machineTests.map((name) => [testList(name), of(name)])) as ByTestList<Of>;
