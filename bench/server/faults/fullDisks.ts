import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runCommand, serve, type Started } from '../program.ts';
import { asked, judged, refusedWith, sheet, type Fault, type Refusal } from './fault.ts';

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

/** Disks without room. */
export const fullDisks: readonly Fault[] = [fullAtWork, fullAtStart, fullForFiles];
