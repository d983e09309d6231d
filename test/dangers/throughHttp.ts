import { z } from 'zod';
import { printer } from '../../src/cli/printer.ts';
import { plainDialect } from '../../src/core/dialect/gcodeDialect.ts';
import { undescribedMachine } from '../../src/core/machine/machine.ts';
import { api } from '../../src/wire/api.ts';
import { kerfApi } from '../../src/wire/kerfApi.ts';
import { testServer, type TestServer } from '../samples/server.ts';
import type { Danger } from './danger.ts';
import { kerfBelieved } from './kerfBelieved.ts';
import { refusedBy, type Came } from './made.ts';
import { whatFires } from './whatFires.ts';

const anything = z.record(z.string(), z.unknown());
const studyOf = z.looseObject({
  stock: z.object({ material: z.string(), thicknessMm: z.number() }),
  machine: anything.optional(),
  habit: z.unknown().optional(),
});
const refusal = z.object({
  error: z.object({ code: z.string(), message: z.string().min(10), remedy: z.string().min(5) }),
});

/** Asks a server with a store of its own: begins the study, has the card designed, and fetches every file. */
export const throughHttp = async (danger: Danger): Promise<Came> => {
  const server = await testServer({ printer });
  try {
    const came = await doors[danger.door](server, danger.ask);
    if (server.reported.length > 0) throw new Error(`reported: ${String(server.reported[0])}`);
    return came;
  } finally {
    await server.close();
  }
};

/** What G-code has no word for is no danger: the other files are given. */
const notCarried = /^gcode-.*-not-carried$/;

const kinds = ['svg', 'dxf', 'gcode', 'pdf', 'json'] as const;

const begin = async (
  server: TestServer,
  { stock, machine, habit }: Partial<z.infer<typeof studyOf>>,
  gcode?: unknown,
) =>
  server.send(api.startStudy, {
    body: {
      id: 's1',
      stock: {
        material: stock?.material ?? 'plywood',
        nominalThicknessMm: stock?.thicknessMm ?? 3,
        thicknessReadingsMm: [],
      },
      machine: {
        ...undescribedMachine,
        ...machine,
        ...(gcode === undefined ? {} : { gcode: { ...plainDialect, ...anything.parse(gcode) } }),
      },
      ...(habit === undefined ? {} : { habit }),
    },
  });

const card = async (server: TestServer, ask: object): Promise<Came> => {
  const { study, gcode, ...rest } = anything.parse(ask);
  const request = Object.fromEntries(Object.entries(rest).filter(([key]) => key !== 'version'));
  const begun = await begin(server, studyOf.parse(study), gcode);
  if (begun.statusCode !== 200) return refusedBy(refusal.parse(begun.json()).error.code);
  const params = { id: 's1' };
  const designed = await server.send(api.addCard, {
    params,
    body: { request: withPasses(request) },
  });
  if (designed.statusCode !== 200) return refusedBy(refusal.parse(designed.json()).error.code);
  const made = z
    .object({
      card: z.object({ code: z.string() }),
      remarks: z.array(z.object({ code: z.string() })).default([]),
    })
    .parse(designed.json());
  const files = new Map<string, string>();
  const refusals: string[] = [];
  for (const kind of kinds) {
    const sent = await server.send(api.cardFile, {
      params: { ...params, code: made.card.code, kind },
    });
    if (sent.statusCode === 200) files.set(kind, sent.body);
    else refusals.push(refusal.parse(sent.json()).error.code);
  }
  const faulted = refusals.filter((code) => !notCarried.test(code));
  const [first] = faulted;
  return first === undefined
    ? {
        written: [...files.keys()],
        said: made.remarks.map(({ code }) => code),
        files: whatFires(files),
      }
    : refusedBy(first, [...files.keys()]);
};

/** The API wants passes said; a file may leave them out. */
const withPasses = (request: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(
    Object.entries(request).map(([key, value]) => {
      if (key === 'rungs') return [key, z.array(anything).parse(value).map(oncePerDefault)];
      return [
        key,
        key === 'scoring' || key === 'trusted' ? oncePerDefault(anything.parse(value)) : value,
      ];
    }),
  );

const oncePerDefault = (setting: Readonly<Record<string, unknown>>): object => ({
  passes: 1,
  ...setting,
});

const ramp = async (server: TestServer, ask: object): Promise<Came> => {
  const {
    material,
    thicknessMm,
    ramp: shape,
    setting,
    machine,
  } = z
    .object({
      material: z.string(),
      thicknessMm: z.number().optional(),
      ramp: z.record(z.string(), z.number()),
      setting: z.object({ powerPct: z.number(), speedMmPerS: z.number() }),
      machine: anything.optional(),
    })
    .parse(ask);
  const begun = await begin(server, machine === undefined ? {} : { machine });
  if (begun.statusCode !== 200) return refusedBy(refusal.parse(begun.json()).error.code);
  const query = {
    material,
    ...(thicknessMm === undefined ? {} : { thicknessMm }),
    ...shape,
    powerPct: setting.powerPct,
    speedMmPerS: setting.speedMmPerS,
    studyId: 's1',
  };
  const files = new Map<string, string>();
  let refused: string | undefined;
  for (const kind of ['svg', 'dxf', 'gcode', 'pdf'] as const) {
    const sent = await server.send(api.rampFile, { params: { kind }, query });
    if (sent.statusCode === 200) files.set(kind, sent.body);
    else refused ??= refusal.parse(sent.json()).error.code;
  }
  return refused === undefined
    ? { written: [...files.keys()], said: [], files: whatFires(files) }
    : refusedBy(refused, [...files.keys()]);
};

const kerf = async (server: TestServer, ask: object): Promise<Came> => {
  const wanted = z
    .object({
      material: z.string(),
      materialKnown: z.boolean().optional(),
      thicknessMm: z.number(),
      card: anything,
      setting: z.record(z.string(), z.union([z.number(), z.string()])),
      scoring: z.object({ powerPct: z.number(), speedMmPerS: z.number() }).optional(),
      machine: anything,
    })
    .parse(ask);
  const {
    kind: card,
    pieceMm,
    ...more
  } = z
    .looseObject({ kind: z.string(), pieceMm: z.tuple([z.number(), z.number()]).optional() })
    .parse(wanted.card);
  const begun = await begin(server, { machine: wanted.machine });
  if (begun.statusCode !== 200) return refusedBy(refusal.parse(begun.json()).error.code);
  const query = {
    card,
    material: wanted.material,
    thicknessMm: wanted.thicknessMm,
    ...(wanted.materialKnown === undefined ? {} : { materialKnown: String(wanted.materialKnown) }),
    ...(pieceMm === undefined ? {} : { pieceWidthMm: pieceMm[0], pieceHeightMm: pieceMm[1] }),
    ...more,
    ...wanted.setting,
    ...(wanted.scoring === undefined
      ? {}
      : { scorePct: wanted.scoring.powerPct, scoreMmPerS: wanted.scoring.speedMmPerS }),
  };
  const files = new Map<string, string>();
  let refused: string | undefined;
  for (const kind of ['svg', 'dxf', 'gcode', 'pdf'] as const) {
    const sent = await server.send(kerfApi.kerfCardFile, { params: { kind }, query });
    if (sent.statusCode === 200) files.set(kind, sent.body);
    else refused ??= refusal.parse(sent.json()).error.code;
  }
  return refused === undefined
    ? { written: [...files.keys()], said: [], files: whatFires(files, kerfBelieved(ask)) }
    : refusedBy(refused, [...files.keys()]);
};

const doors: Readonly<Record<Danger['door'], (server: TestServer, ask: object) => Promise<Came>>> =
  { card, ramp, kerf };
