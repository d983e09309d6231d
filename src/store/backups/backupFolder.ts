import { createHash } from 'node:crypto';
import { lstatSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { backupNameOf, readBackupName } from '../../core/backups/backupName.ts';
import { problemOf } from '../../core/problem.ts';
import { explainFile } from '../../host/explainFile.ts';
import { HostError } from '../../host/hostError.ts';
import type { StorePlace } from '../../host/storePlace.ts';
import { databaseAddress } from '../postgres/databaseAddress.ts';
import { StoreError } from '../storeError.ts';

/** One workshop's backups in a folder that may hold whatever else. */
export interface BackupFolder {
  /** When those were made that are there: ISO 8601, UTC. */
  readonly times: () => readonly string[];
  readonly fileOf: (at: string) => string;
  /** Beside the file, until it is looked over; and where it is tried. */
  readonly uncheckedOf: (at: string) => string;
  readonly triedIn: (at: string) => string;
  /** Held by whoever makes one. */
  readonly lock: string;
  /** Throws `StoreError`: `backup-not-removed`. */
  readonly remove: (at: string) => void;
  /** Takes away what one that was cut off has left. */
  readonly sweep: () => void;
}

/** Throws `StoreError`: `backup-folder-not-there`; `HostError`: it cannot be read. */
export const backupFolder = (folder: string, place: StorePlace): BackupFolder => {
  const reading = <T>(work: () => T): T => {
    try {
      return work();
    } catch (thrown) {
      throw new HostError(explainFile(thrown, folder, 'read'), thrown);
    }
  };
  if (reading(() => statSync(folder, { throwIfNoEntry: false }))?.isDirectory() !== true)
    throw new StoreError(problemOf('backup-folder-not-there', { folder }));
  const workshop = workshopOf(place);
  const fileOf = (at: string): string => join(folder, backupNameOf({ workshop, at }));
  const names = (): readonly string[] => reading(() => readdirSync(folder));
  return {
    times: () =>
      names().flatMap((name) => {
        const read = readBackupName(name);
        return read?.workshop === workshop && isPlainFile(join(folder, name)) ? [read.at] : [];
      }),
    fileOf,
    uncheckedOf: (at) => `${fileOf(at)}${unchecked}`,
    triedIn: (at) => `${fileOf(at)}${tried}`,
    lock: join(folder, `.throughcut-${workshop}`),
    remove: (at) => {
      const file = fileOf(at);
      try {
        rmSync(file);
      } catch (thrown) {
        const detail = thrown instanceof Error ? thrown.message : 'no reason given';
        throw new StoreError(problemOf('backup-not-removed', { file, detail }), thrown);
      }
    },
    sweep: () => {
      for (const name of names()) {
        const [, file = '', rest = ''] = /^(.*?\.sqlite)(.*)$/.exec(name) ?? [];
        const isOurs = readBackupName(file)?.workshop === workshop && isLeftOver.test(rest);
        if (isOurs) rmSync(join(folder, name), { recursive: true, force: true });
      }
    },
  };
};

const unchecked = '.unchecked';
const tried = '.tried';
/** What this makes beside a backup, and what the engine makes beside that. */
const isLeftOver = /^\.(tried|unchecked(\.[0-9a-f]{8}\.part)?(\.lock)?(-wal|-shm|-journal)?)$/;

const isPlainFile = (file: string): boolean =>
  lstatSync(file, { throwIfNoEntry: false })?.isFile() === true;

/** Tells the backups of one workshop from those of another in the same folder. No password goes into it. */
const workshopOf = (place: StorePlace): string => {
  const name =
    place.kind === 'file'
      ? resolve(place.file)
      : `${databaseAddress(place.url).place} ${databaseAddress(place.url).schema}`;
  return createHash('sha256').update(name).digest('hex').slice(0, 8);
};
