import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { filesByRequest, type FilesRequest } from '../../src/served/files/filesByRequest.ts';
import type { PageBeside } from '../../src/words/shape/pageBeside.ts';

/** Where each kind of request is described, with an example. */
const pages: Readonly<Record<FilesRequest, string>> = {
  ramp: 'ramp-request',
  kerf: 'kerf-card-request',
  mark: 'marking-strip-request',
};

export const filesRequests = Object.keys(pages) as readonly FilesRequest[];

/** The example of the page on the format. */
export const exampleRequest = (name: FilesRequest): object =>
  JSON.parse(
    /```json\n([^`]+)```/.exec(
      readFileSync(join(import.meta.dirname, `../../docs/formats/${pages[name]}.md`), 'utf8'),
    )?.[1] ?? '',
  ) as object;

/** The page of each. */
export const pagesBeside = (): Promise<readonly PageBeside[]> =>
  Promise.all(
    filesRequests.map(async (name) => {
      const asked = await filesByRequest[name].fromFile(exampleRequest(name));
      if (!asked.ok) throw new Error(asked.problem.code);
      return asked.value.made.page();
    }),
  );
