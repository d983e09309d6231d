import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { vi } from 'vitest';
import { z } from 'zod';
import { runCard } from '../../src/cli/card.ts';
import { writeByRequest } from '../../src/cli/writeByRequest.ts';
import { filesByRequest } from '../../src/served/files/filesByRequest.ts';
import type { Danger } from './danger.ts';
import { kerfBelieved } from './kerfBelieved.ts';
import { refusedBy, type Came } from './made.ts';
import { whatFires } from './whatFires.ts';

const printedShape = z.object({
  error: z
    .object({ code: z.string(), message: z.string().min(10), remedy: z.string().min(5) })
    .optional(),
  remarks: z.array(z.object({ code: z.string() })).optional(),
});

const commands: Readonly<Record<Danger['door'], typeof runCard>> = {
  card: runCard,
  ramp: (options) => writeByRequest(filesByRequest.ramp.fromFile, options),
  kerf: (options) => writeByRequest(filesByRequest.kerf.fromFile, options),
};

/** Runs the command on a file that holds the request, and looks at what lies in the folder afterwards. */
export const atCommandLine = async ({ door, ask }: Danger): Promise<Came> => {
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-danger-'));
  let printed = '';
  const output = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    printed += String(text);
    return true;
  });
  try {
    const request = join(folder, 'request.json');
    const out = join(folder, 'out');
    writeFileSync(request, JSON.stringify(ask));
    const code = await commands[door]({ request, out });
    const { error, remarks = [] } = printedShape.parse(JSON.parse(printed));
    const names = readdirSync(folder).includes('out') ? readdirSync(out) : [];
    if (error !== undefined) {
      if (code !== 2) throw new Error(`refused, but ended with ${String(code)}`);
      return refusedBy(error.code, names);
    }
    const read = (name: string): readonly [string, string] => [
      name.split('.').at(-1) ?? '',
      readFileSync(join(out, name), 'utf8'),
    ];
    const files = new Map([...names.map(read), ['printed', printed] as const]);
    return {
      written: names,
      said: remarks.map((remark) => remark.code),
      files: whatFires(files, door === 'kerf' ? kerfBelieved(ask) : undefined),
    };
  } finally {
    output.mockRestore();
    rmSync(folder, { recursive: true, force: true });
  }
};
