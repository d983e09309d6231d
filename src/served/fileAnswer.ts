import { andThen, done, type Outcome } from '../core/problem.ts';

/** A text that is made while it is sent: nothing else waits for the whole of it. */
export interface TextInPieces {
  readonly pieces: Iterable<string>;
}

type FileBody = string | Uint8Array | TextInPieces;

interface FileSaid {
  readonly contentType: string;
  readonly body: FileBody;
  /** Under which name it is kept; absent: it is not for keeping. */
  readonly name?: string;
  /** Shown where it is asked for, and not put among the downloads. */
  readonly isShown?: boolean;
}

/** A file as an answer. */
export class FileAnswer {
  readonly contentType: string;
  readonly body: FileBody;
  /** What browsers go by (RFC 6266). */
  readonly disposition: string | undefined;

  constructor({ contentType, body, name, isShown = false }: FileSaid) {
    this.contentType = contentType;
    this.body = body;
    this.disposition =
      name === undefined ? undefined : `${isShown ? 'inline' : 'attachment'}; filename="${name}"`;
  }
}

/** A page for paper as an answer, shown where it is asked for. */
export const pageAnswer = (page: Outcome<Uint8Array>, name: string): Outcome<FileAnswer> =>
  andThen(page, (body) =>
    done(new FileAnswer({ contentType: 'application/pdf', body, name, isShown: true })),
  );
