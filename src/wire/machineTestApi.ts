import { z } from 'zod';
import type { MachineTestName } from '../core/machineTests.ts';
import { machineTestKinds, type TestShapeOf } from '../formats/machineTests.ts';
import { id, isoTime } from '../formats/saved/bounds.ts';
import { byTestRoute, testAddress, type TestRouteName, type TestVerb } from './addresses.ts';
import { bedTestReply } from './bed.ts';
import { focusTestReply } from './focus.ts';
import { meteringReply } from './metering.ts';
import type { Route } from './route.ts';

/** What comes back of one test, where it is more than the test itself. */
const replies = {
  metering: meteringReply,
  'focus-test': focusTestReply,
  'bed-test': bedTestReply,
};

type ReplyShape<Name extends MachineTestName> = Name extends keyof typeof replies
  ? (typeof replies)[Name]
  : z.ZodObject<{ test: TestShapeOf<Name> }>;

/** Under what all tests of a kind come back. */
export const listKey = (name: MachineTestName): 'meterings' | 'tests' =>
  name === 'metering' ? 'meterings' : 'tests';

const byId = z.strictObject({ id });
const gone = z.strictObject({ removed: z.boolean() });
type Own = 'version' | 'isExample' | 'id' | 'at';
type Given = { id: z.ZodExactOptional<typeof id>; at: z.ZodExactOptional<typeof isoTime> };

/** What each verb of a kind of test takes and gives back. */
interface Shapes<Name extends MachineTestName> {
  readonly list: {
    readonly reply: z.ZodObject<{
      [Key in Name extends 'metering' ? 'meterings' : 'tests']: z.ZodArray<TestShapeOf<Name>>;
    }>;
  };
  readonly record: {
    readonly body: z.ZodObject<Omit<TestShapeOf<Name>['shape'], Own> & Given, z.core.$strict>;
    readonly reply: ReplyShape<Name>;
  };
  readonly get: { readonly params: typeof byId; readonly reply: ReplyShape<Name> };
  readonly remove: { readonly params: typeof byId; readonly reply: typeof gone };
}

const shapesOf = (name: MachineTestName): Readonly<Record<TestVerb, Partial<Route>>> => {
  const { shape } = machineTestKinds[name];
  const known: Partial<Record<MachineTestName, z.ZodObject>> = replies;
  const reply = known[name] ?? z.strictObject({ test: shape });
  const body = z
    .strictObject(shape.shape)
    .omit({ version: true, isExample: true })
    .extend({ id: id.exactOptional(), at: isoTime.exactOptional() });
  return {
    list: { reply: z.strictObject({ [listKey(name)]: z.array(shape) }) },
    record: { body, reply },
    get: { params: byId, reply },
    remove: { params: byId, reply: gone },
  };
};

const summary: Readonly<Record<TestVerb, (name: MachineTestName) => string>> = {
  list: (name) => machineTestKinds[name].about.list,
  record: (name) =>
    `Keep ${machineTestKinds[name].about.one} with its date; the same one sent again changes nothing`,
  get: (name) => {
    const { one, says } = machineTestKinds[name].about;
    return `${one.replace(/^a /, 'One ')}: ${says}`;
  },
  remove: (name) => `Remove ${machineTestKinds[name].about.one}`,
};

/** A route of one verb and kind. */
type TestRoute<Verb extends TestVerb, Name extends MachineTestName> = Shapes<Name>[Verb] &
  Pick<Route, 'method' | 'path' | 'least' | 'summary'>;

type ApiOf<Verb extends TestVerb> = {
  readonly [Name in MachineTestName as TestRouteName<Verb, Name>]: TestRoute<Verb, Name>;
};

const routeOf = (verb: TestVerb, name: MachineTestName): Route => ({
  ...testAddress(verb, name),
  summary: summary[verb](name),
  ...shapesOf(name)[verb],
});

interface OfAnyKind extends Omit<Route, 'params' | 'query' | 'body' | 'reply'> {
  readonly reply: z.ZodType;
}

/** The routes of one kind of test, for whoever serves every kind alike. */
export const testRoutes = (name: MachineTestName) =>
  ({
    list: routeOf('list', name),
    record: routeOf('record', name),
    get: routeOf('get', name),
    remove: routeOf('remove', name),
  }) as {
    readonly list: OfAnyKind;
    readonly record: OfAnyKind & { readonly body: z.ZodType };
    readonly get: OfAnyKind & { readonly params: typeof byId };
    readonly remove: OfAnyKind & { readonly params: typeof byId };
  };

/** The routes of every kind of test, by their names. */
export const machineTestApi = byTestRoute(routeOf) as unknown as ApiOf<'list'> &
  ApiOf<'record'> &
  ApiOf<'get'> &
  ApiOf<'remove'>;
