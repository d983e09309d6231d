import { join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { seededRandom } from '../../src/num/seededRandom.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { drawnLines } from './drawnLines.ts';

const root = join(import.meta.dirname, '../../..');

/** Each is judged by the tests beside its own source alone. */
const rooms = ['core/cutmodel', 'core/card', 'core/order', 'core/plan', 'core/motion', 'formats'];

/** Lines a room; `THROUGHCUT_MUTANT_LINES` asks for more, `THROUGHCUT_MUTANT_ROOM` for one room alone. */
const linesARoom = Number(process.env['THROUGHCUT_MUTANT_LINES'] ?? 40);
const roomsToTry = rooms.filter((room) => (process.env['THROUGHCUT_MUTANT_ROOM'] ?? room) === room);

/**
 * Mutation testing: a line of the source is changed, and some test must fail. All mutants of all lines take days, so the
 * lines are drawn; the seed is the day, so that another night tries others, and the day's can be tried again.
 */
export const mutantsPart: NightPart = {
  name: 'mutants',
  about: 'lines drawn from the source and changed: of a hundred changes the tests beside it see 80',
  run: async function* (): AsyncIterable<Figure> {
    for (const room of roomsToTry) yield await tryRoom(room);
  },
};

const tryRoom = async (room: string): Promise<Figure> => {
  const random = seededRandom(seedOfToday());
  const mutate = await drawnLines(root, room, { count: linesARoom, random });
  process.chdir(root);
  process.env['THROUGHCUT_ROOM'] = room;
  const results = await new Stryker({
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'vitest.mutation.config.ts', related: false },
    coverageAnalysis: 'perTest',
    // What runs when a file is read is seen by no test more than by another, and costs all of them.
    ignoreStatic: true,
    mutate: [...mutate],
    ignorePatterns: ['build', '.git'],
    reporters: ['json'],
    jsonReporter: { fileName: 'build/mutation/report.json' },
    tempDirName: 'build/mutation',
    // A computer with other work is slow; only what never ends is a mutant caught by time.
    timeoutMS: 60_000,
    timeoutFactor: 4,
  }).runMutationTest();
  const judged = results.filter(
    ({ status }) => seen.has(status) || status === 'Survived' || status === 'NoCoverage',
  );
  const lived = judged.filter(({ status }) => !seen.has(status));
  return {
    what: `${room}: mutants seen, of ${String(judged.length)}`,
    value: (100 * (judged.length - lived.length)) / judged.length,
    unit: '%',
    atLeast: 80,
    cases: lived.map(
      ({ fileName, location, replacement, status }) =>
        `${fileName.slice(root.length + 1)}:${String(location.start.line + 1)} ${status}: ${replacement}`,
    ),
  };
};

const seen: ReadonlySet<string> = new Set(['Killed', 'Timeout']);

const seedOfToday = (): number =>
  Number(process.env['THROUGHCUT_SEED'] ?? Math.floor(Date.now() / 86_400_000));
