import type { FastifyInstance } from 'fastify';
import type { BackupsSeen, BackupsStand } from '../app/ports/backups.ts';
import { done } from '../core/problem.ts';
import { problemInWords } from '../words/words.ts';
import { api, type ReplyOf } from '../wire/api.ts';
import type { Changes } from './live.ts';
import { on } from './on.ts';

/** Tells how the backups stand; open pages look again when that changes. Absent: none are made. */
export const tellBackups = (
  app: FastifyInstance,
  backups: BackupsSeen | undefined,
  changes: Changes,
): void => {
  on(app, api.backups, () =>
    Promise.resolve(done(backups === undefined ? { isOn: false } : told(backups.stand()))),
  );
  const stop = backups?.hear(() => {
    changes.tell({});
  });
  app.addHook('onClose', () => {
    stop?.();
    return Promise.resolve();
  });
};

const told = ({ failing, ...rest }: BackupsStand): ReplyOf<typeof api.backups> => ({
  isOn: true,
  ...rest,
  ...(failing === undefined
    ? {}
    : { failing: { since: failing.since, said: problemInWords(failing.problem) } }),
});
