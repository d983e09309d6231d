import { existsSync, truncateSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { runCommand, serve } from '../program.ts';
import { asked, judged, parsed, refusedWith, type Fault } from './fault.ts';

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

/** Files and requests of 700 MB. */
export const hugeFiles: readonly Fault[] = [
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
