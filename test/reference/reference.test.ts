import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

import { describe, expect, it } from 'vitest';
import { z } from 'zod';

import { runReference } from '../../src/cli/reference.ts';
import { referenceFile } from '../../src/cli/reference/referenceFile.ts';

const folder = import.meta.dirname;
const files = readdirSync(folder).filter((name) => name.endsWith('.json'));

const caseLine = z.object({ name: z.string(), pass: z.boolean().nullable().optional() });

/** The very lines that the command prints. */
const linesOf = async (file: string): Promise<readonly z.infer<typeof caseLine>[]> => {
  const lines: string[] = [];
  await runReference([join(folder, file)], (line) => lines.push(line));
  return lines.slice(0, -1).map((line) => caseLine.parse(JSON.parse(line)));
};

// The values come from outside: each file names its source.
describe.each(files)('%s', async (file) => {
  const { cases } = referenceFile.parse(JSON.parse(readFileSync(join(folder, file), 'utf8')));
  const lines = await linesOf(file);

  it.each(cases.map((one, i) => ({ name: one.name, i })))('$name', ({ name, i }) => {
    expect(lines[i]).toEqual({ name, pass: true });
  });
});
