import { closeSync, existsSync, fstatSync, openSync, readSync } from 'node:fs';

/**
 * Whether a database file is shorter than it says that it is, and its log does not hold what is missing: the engine would open it all
 * the same, carry the log into what is left of it and remove the log. A file that a power cut met while its log was carried over is short
 * too, but the log still has the rest. "The SQLite Database File Format" (sqlite.org/fileformat2.html), 1.3 and 4.
 */
export const isCutOff = (file: string): boolean => {
  const { head, bytes } = headOf(file, 100);
  if (head.length < 100) return bytes > 0;
  const said = head.readUInt16BE(16);
  const pageBytes = said === 1 ? 65_536 : said;
  if (pageBytes < 512) return true;
  const log = logOf(`${file}-wal`, pageBytes);
  // The number of pages holds only where it was written with the last change.
  const inHeader = head.readUInt32BE(24) === head.readUInt32BE(92) ? head.readUInt32BE(28) : 0;
  const pages = log.pages ?? inHeader;
  for (let page = Math.floor(bytes / pageBytes) + 1; page <= pages; page += 1)
    if (!log.has.has(page)) return true;
  return false;
};

interface Log {
  /** How many pages there are after its last change; undefined where it has none. */
  readonly pages?: number;
  /** The pages that its changes hold. */
  readonly has: ReadonlySet<number>;
}

const noLog: Log = { has: new Set() };
const logHead = 32;
const frameHead = 24;

/** What a log holds up to its last whole change; frames of an earlier round bear other numbers than its head. */
const logOf = (file: string, pageBytes: number): Log => {
  if (!existsSync(file)) return noLog;
  const opened = openSync(file, 'r');
  try {
    const { size } = fstatSync(opened);
    const head = Buffer.alloc(logHead);
    if (readSync(opened, head, 0, logHead, 0) < logHead || head.readUInt32BE(8) !== pageBytes)
      return noLog;
    const has = new Set<number>();
    const since = new Set<number>();
    let pages: number | undefined;
    const frame = Buffer.alloc(frameHead);
    const frameBytes = frameHead + pageBytes;
    for (let at = logHead; at + frameBytes <= size; at += frameBytes) {
      readSync(opened, frame, 0, frameHead, at);
      if (frame.compare(head, 16, 24, 8, 16) !== 0) break;
      since.add(frame.readUInt32BE(0));
      const after = frame.readUInt32BE(4);
      if (after === 0) continue;
      pages = after;
      for (const page of since) has.add(page);
      since.clear();
    }
    return pages === undefined ? noLog : { pages, has };
  } finally {
    closeSync(opened);
  }
};

const headOf = (file: string, most: number): { readonly head: Buffer; readonly bytes: number } => {
  const opened = openSync(file, 'r');
  try {
    const head = Buffer.alloc(most);
    const read = readSync(opened, head, 0, most, 0);
    return { head: head.subarray(0, read), bytes: fstatSync(opened).size };
  } finally {
    closeSync(opened);
  }
};
