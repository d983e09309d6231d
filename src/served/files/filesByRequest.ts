import type { GcodeDialect } from '../../core/dialect/gcodeDialect.ts';
import { andThen, done, type Outcome } from '../../core/problem.ts';
import type { RequestKind, ToFile } from './toFile.ts';

/** Something that is asked for in a file or at an address, and comes as files for the machine and a page beside it. */
export interface FilesByRequest<Asked> {
  /** Loads what it needs when it is first asked. */
  readonly load: () => Promise<RequestKind<Asked>>;
  /** What a request file asks for, and the G-code that is wanted. */
  readonly fromFile: (json: unknown) => Promise<Outcome<AskedInFile>>;
}

interface AskedInFile {
  readonly made: ToFile;
  readonly dialect: GcodeDialect;
}

const kind = <Asked>(load: () => Promise<RequestKind<Asked>>): FilesByRequest<Asked> => ({
  load,
  fromFile: async (json) => {
    const { read, make } = await load();
    return andThen(read(json), ({ asked, gcode }) =>
      andThen(make(asked), (made) => done({ made, dialect: gcode })),
    );
  },
});

/** Every one of them, by the name of its command. One more is its own file and a line here. */
export const filesByRequest = {
  ramp: kind(async () => (await import('./rampFiles.ts')).rampFiles),
  kerf: kind(async () => (await import('./kerfCardFiles.ts')).kerfCardFiles),
  mark: kind(async () => (await import('./markStripFiles.ts')).markStripFiles),
};

export type FilesRequest = keyof typeof filesByRequest;

export const filesRequests: readonly FilesRequest[] = Object.keys(filesByRequest).filter(
  (name): name is FilesRequest => name in filesByRequest,
);
