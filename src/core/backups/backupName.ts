/** One of the backups that are made on a schedule, as its file's name tells. */
export interface BackupName {
  /** Which workshop it is of: eight hexadecimal figures. Several may be backed up into one folder. */
  readonly workshop: string;
  /** ISO 8601, UTC, in whole seconds. */
  readonly at: string;
}

/** Such as `throughcut-0a1b2c3d-20310607T080910Z.sqlite`: in a list of files they stand in the order of their times. */
export const backupNameOf = ({ workshop, at }: BackupName): string =>
  `throughcut-${workshop}-${at.replace(/\.\d+/, '').replace(/[-:]/g, '')}.sqlite`;

/** Undefined: no name of ours. */
export const readBackupName = (name: string): BackupName | undefined => {
  const parts = /^throughcut-([0-9a-f]{8})-(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z\.sqlite$/.exec(
    name,
  );
  if (parts === null) return undefined;
  const [, workshop = '', year, month, day, hour, minute, second] = parts;
  const at = `${[year, month, day].join('-')}T${[hour, minute, second].join(':')}.000Z`;
  const time = Date.parse(at);
  // A day that no month has is no name of ours either.
  return Number.isNaN(time) || new Date(time).toISOString() !== at ? undefined : { workshop, at };
};
