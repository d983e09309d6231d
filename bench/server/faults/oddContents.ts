import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { olderSchemas, writeOlderStore } from '../olderStore.ts';
import { runCommand, serve } from '../program.ts';
import { asked, refusedWith, sheetsOf, type Fault } from './fault.ts';

const metering = {
  id: 'm1',
  ratedCurrentMa: 19,
  readings: [10, 20, 30, 40].map((powerPct) => ({ powerPct, currentMa: 0.3 * powerPct })),
};
const focusTest = {
  id: 'm1',
  ramp: { lengthMm: 120, blockMm: 8, nozzleGapMm: 12 },
  readings: { kind: 'fades', lines: [{ fromMm: 30, toMm: 108, dose: 1 }] },
  gaugeMm: 7.5,
};

const twoKinds: Fault = {
  what: 'two kinds of test with one id',
  wrongIn: async (folder) => {
    const server = await serve(folder);
    try {
      const replies = [
        await asked(server, 'POST', '/api/meterings', metering),
        await asked(server, 'POST', '/api/focus-tests', focusTest),
        await asked(server, 'GET', '/api/meterings/m1'),
        await asked(server, 'GET', '/api/focus-tests/m1'),
      ];
      return replies
        .filter(({ status }) => status !== 200)
        .map(({ status, said }) => `${String(status)}: ${JSON.stringify(said).slice(0, 200)}`);
    } finally {
      await server.kill();
    }
  },
};

/** An export of the sheets that an earlier schema kept, each with readings of two shapes. */
const exported = async (folder: string): Promise<string> => {
  const data = join(folder, 'older');
  writeOlderStore(join(data, 'workshop.sqlite'), olderSchemas().at(-1) ?? '');
  return (await runCommand(['export'], data)).out;
};

const strangeEvents = (what: string, code: string, spoil: (text: string) => string): Fault => ({
  what: `an import of readings ${what}`,
  wrongIn: async (folder) => {
    const [file, data] = [join(folder, 'export.json'), join(folder, 'data')];
    const text = await exported(folder);
    const spoilt = spoil(text);
    writeFileSync(file, spoilt);
    const refused = refusedWith(code, await runCommand(['import', '--from', file], data));
    const half = await sheetsOf(data);
    writeFileSync(file, text);
    const whole = await runCommand(['import', '--from', file], data);
    return [
      ...(spoilt === text ? ['nothing was spoilt'] : []),
      ...refused,
      ...(half.length === 0 ? [] : ['some of it came in']),
      ...(whole.code === 0 ? [] : ['the same file unspoilt is refused as well']),
    ];
  },
});

const lastOf = (text: string, find: string, put: string): string => {
  const at = text.lastIndexOf(find);
  return at < 0 ? text : text.slice(0, at) + put + text.slice(at + find.length);
};

/** What is brought and does not fit what is there. */
export const oddContents: readonly Fault[] = [
  twoKinds,
  strangeEvents('of shapes that their card lacks', 'cell-not-on-card', (text) =>
    lastOf(text, '"cell": "B1"', '"cell": "Z9"'),
  ),
  strangeEvents('of a card that is not there', 'card-not-found', (text) =>
    lastOf(text, '"cardCode": "K7QX"', '"cardCode": "ZZZZ"'),
  ),
];
