import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { printer } from '../../src/cli/printer.ts';
import type { Command } from 'commander';
import {
  runCompare,
  runFit,
  runKerf,
  runMarks,
  runNextCard,
  runOrder,
  runPlan,
  runShades,
} from '../../src/cli/calc.ts';
import { runCard } from '../../src/cli/card.ts';
import { runCalcExplain, runExplain } from '../../src/cli/explain.ts';
import { program } from '../../src/cli/program.ts';
import { runProof } from '../../src/cli/proof.ts';
import { runCheck } from '../../src/cli/check.ts';
import { runTime } from '../../src/cli/time.ts';
import { runTrial } from '../../src/cli/trial.ts';
import { runWatch } from '../../src/cli/watch.ts';
import { writeByRequest } from '../../src/cli/writeByRequest.ts';
import { designCard } from '../../src/core/card/designCard.ts';
import { jobSheet } from '../../src/core/card/jobSheet.ts';
import { explainStudy } from '../../src/core/explain/explain.ts';
import { jobSheetPdf } from '../../src/print/jobSheetPdf.ts';
import { pageBesidePdf } from '../../src/print/pageBesidePdf.ts';
import { reasoningPdf } from '../../src/print/reasoningPdf.ts';
import { filesByRequest } from '../../src/served/files/filesByRequest.ts';
import { api } from '../../src/wire/api.ts';
import { addressOf } from '../../src/wire/route.ts';
import { demoRequest } from '../fixtures/cardRequest.ts';
import { textOfPdf } from '../fixtures/textOfPdf.ts';
import { plainStudy } from '../plainStudy.ts';
import { exampleRequest, filesRequests, pagesBeside } from '../samples/pagesBeside.ts';
import { testServer, type TestServer } from '../samples/server.ts';
import { outside } from './outside.ts';
import { closing, opening } from './inPseudo.ts';

/** What is told past the doors of the words, on paper, by commands and by the server, is seen to be in another language. */

const folder = mkdtempSync(join(tmpdir(), 'throughcut-pseudo-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = (name: string, content: unknown): string => {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
};

/** Every text of a value that is told, with where it stands. */
const textsIn = (value: unknown, at = ''): (readonly [at: string, text: string])[] => {
  if (typeof value === 'string') return [[at, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) =>
    textsIn(inner, Array.isArray(value) ? at : `${at}.${name}`),
  );
};

/** What reads as a sentence, or as words of one: codes, kinds and names of files have no space in them. */
const isProse = (text: string): boolean => /\p{L}/u.test(text) && /\s/.test(text.trim());

/** What people and machines named themselves. */
const named =
  /\.(?:id|material|sheet|files|file|name|note|label|title|machine|batch|personsChoice)$/;

const escapes = (value: unknown): string[] =>
  textsIn(value)
    .filter(([at, text]) => isProse(text) && !named.test(at))
    .flatMap(([at, text]) => outside([text]).map((left) => `${at}: ${left}`));

/** On paper: the product's name, codes, letters and figures with their units are the same in any language. */
const onPaper = (bytes: Uint8Array): string[] => {
  const text = textOfPdf(bytes);
  // A sentence that did not end would hide what follows it.
  expect(text.split(opening).length).toBe(text.split(closing).length);
  return outside([text]).flatMap((left) => left.match(/\p{L}{4,}/gu) ?? []);
};
const madeAt = '2031-04-05T06:07:08.000Z';

describe('on paper', () => {
  it('nothing is said past the words, on any page beside the machine', async () => {
    for (const page of await pagesBeside()) {
      const bytes = await pageBesidePdf(page, { madeAt });
      expect(textOfPdf(bytes)).toContain(opening);
      expect(onPaper(bytes)).toEqual([]);
    }
  });

  it('nor on a job sheet', async () => {
    for (const vary of ['speed', 'power', 'passes', 'corners'] as const) {
      const made = designCard({ ...demoRequest, vary });
      if (!made.ok) throw new Error(made.problem.code);
      const sheet = jobSheet(made.value.card);
      expect(onPaper(await jobSheetPdf(sheet, { stock: '3 mm', madeAt }))).toEqual([]);
    }
  });

  it('nor on the page of reasons', async () => {
    const cells = [12, 14, 16, 18, 20].map((speedMmPerS, i) => ({
      powerPct: 30,
      speedMmPerS,
      grade: i < 3 ? ('out' as const) : ('stays' as const),
    }));
    const study = plainStudy({ cells, ask: { powerPct: 30 } });
    const about = { stock: '3 mm', version: '1.0.0', madeAt };
    expect(onPaper(await reasoningPdf(study, explainStudy(study), about))).toEqual([]);
  });
});

/** What a command prints. */
const printedBy = async (run: () => Promise<number>): Promise<unknown> => {
  let text = '';
  const output = vi.spyOn(process.stdout, 'write').mockImplementation((chunk) => {
    text += String(chunk);
    return true;
  });
  try {
    await run();
  } finally {
    output.mockRestore();
  }
  return JSON.parse(text);
};

const study = {
  version: 1,
  machine: { maxPowerPct: 80, speedRangeMmPerS: [1, 100] },
  stock: { material: 'birch plywood', thicknessMm: 3.1 },
};
const card = { version: 1, study, powerPct: 34, settingsAtMost: 3, sheetMm: [120, 90], seed: 1 };
const out = join(folder, 'made');
const square =
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><path stroke="#f00" fill="none" d="M5 5H65V55H5Z"/></svg>';
const setting = { powerPct: 30, speedMmPerS: 13, passes: 1 };

const cell = (speedMmPerS: number, grade: string) => ({ powerPct: 30, speedMmPerS, grade });
/** Read on both sides of the edge, so that a speed is recommended. */
const read = {
  ...study,
  cells: [12, 13, 14, 15, 16, 18, 20, 22].map((speed) => cell(speed, speed < 17 ? 'out' : 'stays')),
  ask: { powerPct: 30 },
};
/** Read on one side alone, so that nothing is. */
const halfRead = { ...read, cells: [12, 14, 16].map((speed) => cell(speed, 'out')) };
/** The example of a file as its page of the documentation has it. */
const documented = (page: string): unknown => {
  const text = readFileSync(join(import.meta.dirname, '../../docs/formats', `${page}.md`), 'utf8');
  return JSON.parse(/```json\n([^]*?)```/.exec(text)?.[1] ?? '');
};

/** Of one place alone, which is remarked on. */
const comb = { strips: 10, nominalMm: 100, measuredMm: [98.02] };

/** A command that reads what is piped in. */
const piped = (run: () => Promise<number>, content: unknown) => async (): Promise<number> => {
  const stdin = Readable.from([JSON.stringify(content)]);
  const input = vi.spyOn(process, 'stdin', 'get').mockReturnValue(stdin as never);
  try {
    return await run();
  } finally {
    input.mockRestore();
  }
};

/** Each with something to say: what it made, what it found, why it refuses. */
const commands: Readonly<Record<string, () => Promise<number>>> = {
  ...Object.fromEntries(
    filesRequests.map((name) => [
      name,
      () =>
        writeByRequest(filesByRequest[name].fromFile, {
          request: file(`${name}.json`, exampleRequest(name)),
          out,
        }),
    ]),
  ),
  card: () => runCard({ request: file('card.json', card), out }),
  'card whose power is above the machine’s': () =>
    runCard({ request: file('card.json', { ...card, powerPct: 95 }), out }),
  'card that is misspelt': () => runCard({ request: file('card.json', { ...card, sede: 1 }), out }),
  trial: () => runTrial({ out }),
  check: () => runCheck(file('drawing.svg', square), {}),
  time: () => runTime(file('drawing.svg', square), {}),
  'calc fit': piped(runFit, read),
  'calc fit of what is read on one side alone': piped(runFit, halfRead),
  'calc fit of a material that is not cut': piped(runFit, { ...read, stock: { material: 'PVC' } }),
  'calc nextcard': piped(runNextCard, { ...read, cellsWanted: 12, settingsAtMost: 6 }),
  'calc order': piped(runOrder, { ...read, order: { parts: 60 } }),
  'calc plan': piped(runPlan, {
    ...read,
    plan: { parts: 300, partsPerSheet: 30, partLengthMm: 180, done: 60 },
  }),
  'calc compare': piped(runCompare, documented('compare')),
  'calc kerf': piped(runKerf, { version: 1, combs: [comb] }),
  'calc marks': piped(runMarks, documented('marks')),
  'calc shades': piped(runShades, documented('shades')),
  'calc explain': piped(runCalcExplain, read),
  explain: () => runExplain({ study: file('study.json', read), out: join(folder, 'why.pdf') }),
  proof: () => runProof(file('drawing.svg', square), { study: file('study.json', read) }),
  'proof without a promise': () =>
    runProof(file('drawing.svg', square), { study: file('study.json', halfRead) }),
  watch: () => runWatch(file('watch.json', { version: 1, setting, orders: [{ out: 99 }], study })),
};

describe('at the command line', () => {
  it.each(Object.entries(commands))('nothing is said past the words by %s', async (_, run) => {
    const printed = await printedBy(run);
    expect(JSON.stringify(printed)).toContain(opening);
    expect(escapes(printed)).toEqual([]);
  });
});

/** A command with all that stand below it. */
const withThoseBelow = (command: Command): readonly Command[] => [
  command,
  ...command.commands.flatMap(withThoseBelow),
];

const everyCommand = withThoseBelow(program);

/** What is typed is the same in any language: names of commands, files and options, and what stands for a value. */
const typed = /throughcut|THROUGHCUT_\w+|<[^>]*>|\[[^\]]*\]|(?<!\S)--?[\w-]+/g;
const names = new Set([
  'help',
  ...everyCommand.flatMap((one) => [
    one.name(),
    ...one.registeredArguments.map((argument) => argument.name()),
  ]),
]);

describe('asked for help', () => {
  it.each(everyCommand.map((command) => [command.name(), command] as const))(
    'nothing is said past the words of %s',
    (_, command) => {
      const help = command.helpInformation();
      expect(help).toContain(opening);
      const left = outside([help])
        .flatMap((text) => text.replace(typed, ' ').split(/\s+/))
        .filter((word) => /\p{L}/u.test(word) && !names.has(word));
      expect(left).toEqual([]);
    },
  );
});

describe('over HTTP', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await testServer({ printer });
    await server.ask(api.openExample);
  });
  afterAll(() => server.close());
  afterEach(() => expect(server.reported).toEqual([]));

  it('nothing is said past the words of the example workshop, where something is said at all', async () => {
    const { studies } = await server.ask(api.listStudies);
    const { entries } = await server.ask(api.searchBook);
    const asked = [
      ...studies.map(({ id }) => addressOf(api.answerStudy, { id })),
      ...studies.map(({ id }) => addressOf(api.proposeNextCard, { id })),
      ...entries.map(({ entry: { id } }) => addressOf(api.getEntry, { id })),
      ...Object.values(api).flatMap(({ method, path }) =>
        method === 'GET' && /^[^:]*$/.test(path) && !path.endsWith('/live') ? [path] : [],
      ),
    ];
    const said: string[] = [];
    for (const url of asked) {
      const reply = await server.app.inject({ url, headers: { host: '127.0.0.1:4870' } });
      if (reply.headers['content-type']?.toString().includes('json') !== true) continue;
      if (reply.body.includes(opening)) said.push(url);
      expect(escapes(reply.json()), url).toEqual([]);
    }
    expect(said.length).toBeGreaterThan(5);
  });

  it.each([
    ['a material that is not cut', 'materials?text=PVC'],
    ['a material that is cut with care', 'materials?text=MDF'],
    ['a material that is asked about', 'materials?text=leather'],
    ['an address that there is not', 'nowhere'],
    ['a sheet that there is not', 'studies/nobody'],
    ['a query that is misspelt', 'studies?colour=red'],
  ])('nothing is said past the words of %s', async (_, path) => {
    const reply = await server.app.inject({
      url: `/api/${path}`,
      headers: { host: '127.0.0.1:4870' },
    });
    expect(reply.body).toContain(opening);
    expect(escapes(reply.json())).toEqual([]);
  });

  it('nothing is said past the words of a setting whose material is refused by now', async () => {
    const { entries } = await server.ask(api.searchBook);
    const [first] = entries;
    if (first === undefined) throw new Error('nothing is kept');
    const { entry } = first;
    const ofPvc = { ...entry, holdsFor: { ...entry.holdsFor, material: 'PVC' } };
    await server.ports.store.change(async (session) => {
      await session.replaceEntry(ofPvc);
      return { ok: true, value: undefined };
    });
    const said = await server.ask(api.getEntry, { params: { id: entry.id } });
    expect(said.standing.why.code).toBe('not-to-be-cut');
    expect(said.standing.why.remedy).toContain(opening);
    expect(escapes(said)).toEqual([]);
  });
});
