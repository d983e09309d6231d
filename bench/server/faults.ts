import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { problemInWords } from '../../src/words/words.ts';
import { olderSchemas, writeOlderStore } from './olderStore.ts';
import { runCommand, serve, type Ended, type Served, type Started } from './program.ts';

/** One thing that goes wrong around the program. Gives what was not as it should be, in words; none: all was. */
export interface Fault {
  readonly what: string;
  readonly wrongIn: (folder: string) => Promise<readonly string[] | 'not here'>;
}

/** A refusal as commands and the server give it. */
interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

const judged = (code: string, said: Partial<Refusal> | undefined): readonly string[] => [
  ...(said?.code === code ? [] : [`${code} is meant, ${said?.code ?? 'nothing'} is said`]),
  ...((said?.message?.length ?? 0) > 10 ? [] : ['it has no sentence']),
  ...((said?.remedy?.length ?? 0) > 10 ? [] : ['it has no remedy']),
];

const parsed = (text: string): { readonly error?: Refusal } => {
  try {
    return JSON.parse(text) as { readonly error?: Refusal };
  } catch {
    return {};
  }
};

/** A command that ends with 2 and says why; where it serves, it says so to whoever started it. */
const refusedWith = (code: string, { code: ended, out, err }: Ended): readonly string[] => {
  const { message, remedy } = problemInWords({ code, params: {} });
  const toAPerson = err.includes(remedy) ? { code, message, remedy } : undefined;
  return [
    ...(ended === 2 ? [] : [`it ended with ${String(ended)}: ${err.slice(0, 200)}`]),
    ...judged(code, parsed(out).error ?? toAPerson),
  ];
};

const asked = async (
  { base }: Served,
  method: string,
  path: string,
  body?: unknown,
): Promise<{ readonly status: number; readonly said: unknown }> => {
  const reply = await fetch(`${base}${path}`, {
    method,
    ...(body === undefined
      ? {}
      : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
  });
  return { status: reply.status, said: await reply.json() };
};

const sheet = (id: string, material = 'birch plywood'): object => ({
  id,
  stock: { material, nominalThicknessMm: 3, thicknessReadingsMm: [] },
});

const sheetsOf = async (data: string): Promise<readonly string[]> => {
  const { studies } = JSON.parse((await runCommand(['export'], data)).out) as {
    readonly studies: readonly { readonly id: string }[];
  };
  return studies.map(({ id }) => id);
};

/** A disk of its own in memory, which is gone with the program: only where the system lets a program make one. */
const smallDisk = (at: string, { kB, full = false }: { kB: number; full?: boolean }): Started => ({
  by: [
    'unshare',
    process.getuid?.() === 0 ? '-m' : '-Urm',
    'sh',
    '-c',
    `mount -t tmpfs -o size=${String(kB)}k tmpfs "$1" || exit 9
     ${full ? 'head -c 1G /dev/zero > "$1/filler" 2>/dev/null' : ''}
     shift; exec "$@"`,
    'sh',
    at,
  ],
});

const canMakeDisks = (folder: string): boolean => {
  const [command = '', ...args] = smallDisk(folder, { kB: 64 }).by ?? [];
  return process.platform === 'linux' && spawnSync(command, [...args, 'true']).status === 0;
};

const onSmallDisk =
  (work: (disk: string) => Promise<readonly string[]>): Fault['wrongIn'] =>
  async (folder) => {
    const disk = join(folder, 'disk');
    mkdirSync(disk);
    return canMakeDisks(disk) ? work(disk) : 'not here';
  };

const fullAtWork: Fault = {
  what: 'the disk is full while sheets are stored',
  wrongIn: onSmallDisk(async (disk) => {
    const server = await serve(disk, smallDisk(disk, { kB: 2500 }));
    try {
      const stored: string[] = [];
      let refused: { readonly status: number; readonly said: unknown } | undefined;
      const filler = `/proc/${String(server.pid)}/root${disk}/filler`;
      writeFileSync(filler, Buffer.alloc(300_000));
      for (let n = 0; n < 2000 && refused === undefined; n += 1) {
        const reply = await asked(server, 'POST', '/api/studies', sheet(`s${String(n)}`));
        if (reply.status === 200) stored.push(`s${String(n)}`);
        else refused = reply;
      }
      const health = await asked(server, 'GET', '/api/health');
      rmSync(filler);
      const after = await asked(server, 'POST', '/api/studies', sheet('after'));
      const kept = (await asked(server, 'GET', '/api/export')).said as {
        readonly studies: readonly { readonly id: string }[];
      };
      const there = new Set(kept.studies.map(({ id }) => id));
      return [
        ...judged('store-disk-full', (refused?.said as { readonly error?: Refusal }).error),
        ...(refused?.status === 503 ? [] : [`status ${String(refused?.status)}`]),
        ...(stored.length > 0 ? [] : ['nothing was stored before it was full']),
        ...(health.status === 200 ? [] : ['the server no longer answers']),
        ...(after.status === 200 ? [] : ['nothing is stored once there is room again']),
        ...stored.filter((id) => !there.has(id)).map((id) => `${id} is lost`),
      ];
    } finally {
      await server.kill();
    }
  }),
};

const fullAtStart: Fault = {
  what: 'the disk is full when the program starts',
  wrongIn: onSmallDisk(async (disk) =>
    refusedWith(
      'store-disk-full',
      await runCommand(['serve'], disk, smallDisk(disk, { kB: 256, full: true })),
    ),
  ),
};

const fullForFiles: Fault = {
  what: 'the disk is full where an export is to go',
  wrongIn: (folder) =>
    onSmallDisk(async (disk) => {
      const data = join(folder, 'data');
      return refusedWith(
        'file-disk-full',
        await runCommand(
          ['export', '--to', join(disk, 'out.json')],
          data,
          smallDisk(disk, { kB: 64, full: true }),
        ),
      );
    })(folder),
};

const noHome: Fault = {
  what: 'a user without a home',
  wrongIn: async () => {
    const environment = { HOME: '', XDG_DATA_HOME: '', THROUGHCUT_DATA: '' };
    return process.platform === 'linux'
      ? refusedWith('no-home-folder', await runCommand(['export'], '', { environment }))
      : 'not here';
  },
};

const noPlace = (what: string, data: (folder: string) => string, code: string): Fault => ({
  what,
  wrongIn: async (folder) => [
    ...refusedWith(code, await runCommand(['serve'], data(folder))),
    ...refusedWith(code, await runCommand(['export'], data(folder))),
  ],
});

const long = 'n'.repeat(300);

const longTarget: Fault = {
  what: 'a name that is too long, for an export',
  wrongIn: async (folder) =>
    refusedWith(
      'file-name-too-long',
      await runCommand(['export', '--to', join(folder, long)], join(folder, 'data')),
    ),
};

const dayBack = `const now = Date.now; const day = 864e5;
  globalThis.Date = class extends Date {
    constructor(...given) { if (given.length === 0) super(now() - day); else super(...given); }
    static now() { return now() - day; }
  };`;

const clockSetBack: Fault = {
  what: 'the clock is set back by a day',
  wrongIn: async (folder) => {
    const today = await serve(folder);
    await asked(today, 'POST', '/api/studies', sheet('first'));
    await today.kill();
    const preload = `--import=data:text/javascript,${encodeURIComponent(dayBack)}`;
    const yesterday = await serve(folder, { environment: { NODE_OPTIONS: preload } });
    try {
      await asked(yesterday, 'POST', '/api/studies', sheet('second'));
      const home = JSON.stringify((await asked(yesterday, 'GET', '/api/home')).said);
      const listed = JSON.stringify((await asked(yesterday, 'GET', '/api/studies')).said);
      const [created = ''] =
        /"createdAt":"[^"]+"/.exec(listed.slice(listed.indexOf('"second"'))) ?? [];
      const isBefore = (at: string): boolean => listed.indexOf('"second"') < listed.indexOf(at);
      return [
        ...(home.includes('"second"') ? [] : ['the older sheet comes up']),
        ...(isBefore('"first"') ? [] : ['the older sheet is listed first']),
        ...(created === '' || created < `"createdAt":"${new Date().toISOString().slice(0, 10)}`
          ? []
          : ['the clock was not set back']),
      ];
    } finally {
      await yesterday.kill();
    }
  },
};

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

const bigBytes = 700 * 1024 * 1024;

const bigFile = (
  what: string,
  code: string,
  words: (file: string, out: string) => Words,
): Fault => ({
  what: `a file of 700 MB: ${what}`,
  wrongIn: async (folder) => {
    const file = join(folder, 'big.json');
    writeFileSync(file, '');
    truncateSync(file, bigBytes);
    const { ask, piped = false } = words(file, join(folder, 'out'));
    const data = join(folder, 'data');
    const ended = await runCommand(ask, data, piped ? { stdin: file } : {});
    return [
      ...refusedWith(code, ended),
      ...(existsSync(join(folder, 'out')) ? ['something was written'] : []),
    ];
  },
});

interface Words {
  readonly ask: readonly string[];
  readonly piped?: boolean;
}

const bigRequest: Fault = {
  what: 'a request of 700 MB',
  wrongIn: async (folder) => {
    const server = await serve(folder);
    try {
      const { status, text } = await sendHead(`${server.base}/api/import`, bigBytes);
      const health = await asked(server, 'GET', '/api/health');
      return [
        ...judged('request-body-too-big', parsed(text).error),
        ...(status === 413 ? [] : [`status ${String(status)}`]),
        ...(health.status === 200 ? [] : ['the server no longer answers']),
      ];
    } finally {
      await server.kill();
    }
  },
};

/** Says how long the body will be and sends the beginning of it. */
const sendHead = (
  address: string,
  bytes: number,
): Promise<{ readonly status: number; readonly text: string }> =>
  new Promise((resolve, reject) => {
    const headers = { 'content-type': 'application/json', 'content-length': bytes };
    const sent = request(address, { method: 'POST', headers }, (reply) => {
      let text = '';
      reply.on('data', (part: Buffer) => (text += part.toString()));
      reply.on('end', () => {
        sent.destroy();
        resolve({ status: reply.statusCode ?? 0, text });
      });
    });
    sent.on('error', reject);
    sent.write('{"version":1');
  });

/** Every fault that has been thought of. One more is a value here. */
export const faults: readonly Fault[] = [
  fullAtWork,
  fullAtStart,
  fullForFiles,
  noHome,
  noPlace('a data folder in /proc', () => '/proc/somewhere', 'store-no-such-place'),
  noPlace('a data folder whose name is too long', (at) => join(at, long), 'store-name-too-long'),
  longTarget,
  clockSetBack,
  twoKinds,
  strangeEvents('of shapes that their card lacks', 'cell-not-on-card', (text) =>
    lastOf(text, '"cell": "B1"', '"cell": "Z9"'),
  ),
  strangeEvents('of a card that is not there', 'card-not-found', (text) =>
    lastOf(text, '"cardCode": "K7QX"', '"cardCode": "ZZZZ"'),
  ),
  bigFile('a study piped in', 'stdin-too-big', () => ({ ask: ['calc', 'fit'], piped: true })),
  bigFile('an import', 'file-too-big-to-read', (file) => ({ ask: ['import', '--from', file] })),
  bigFile('a backup to restore', 'backup-not-ours', (file) => ({
    ask: ['restore', '--from', file],
  })),
  bigFile('a card to make', 'file-too-big-to-read', (file, out) => ({
    ask: ['card', '--request', file, '--out', out],
  })),
  bigFile('a study to explain', 'file-too-big-to-read', (file, out) => ({
    ask: ['explain', '--study', file, '--out', out],
  })),
  bigFile('counts to watch', 'file-too-big-to-read', (file) => ({ ask: ['watch', file] })),
  bigFile('a drawing to check', 'drawing-too-big', (file) => ({ ask: ['check', file] })),
  bigFile('a drawing to time', 'drawing-too-big', (file) => ({ ask: ['time', file] })),
  bigRequest,
];
