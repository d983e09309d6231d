import type { MachineTest, MachineTestName, TestList } from '../core/machineTests.ts';
import type { Outcome } from '../core/problem.ts';
import { bedTestKind } from './saved/bedTest.ts';
import { focusTestKind } from './saved/focusTest.ts';
import { kerfTestKind } from './saved/kerfTest.ts';
import type { MachineTestKind } from './saved/machineTest.ts';
import { markTestKind } from './saved/markTest.ts';
import { meteringKind } from './saved/metering.ts';

const kinds = {
  metering: meteringKind,
  'focus-test': focusTestKind,
  'bed-test': bedTestKind,
  'kerf-test': kerfTestKind,
  'mark-test': markTestKind,
};

type Reader<Name extends MachineTestName> = Awaited<ReturnType<(typeof kinds)[Name]['reader']>>;

/** A test of one kind. */
export type MachineTestOf<Name extends MachineTestName> = Parameters<Reader<Name>>[0] & MachineTest;

/** What a test of one kind says, or why it says nothing. */
export type TestSaidOf<Name extends MachineTestName> = ReturnType<Reader<Name>> & Outcome<unknown>;

export type TestShapeOf<Name extends MachineTestName> = (typeof kinds)[Name]['shape'];

/** Every kind of test by its name. */
export const machineTestKinds: {
  readonly [Name in MachineTestName]: MachineTestKind<
    MachineTestOf<Name>,
    TestShapeOf<Name>,
    TestSaidOf<Name>
  >;
} = kinds;

/** All tests, each kind in its list. */
export type TestLists = {
  readonly [Name in MachineTestName as TestList<Name>]: readonly MachineTestOf<Name>[];
};
