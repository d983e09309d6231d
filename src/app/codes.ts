/** What can stand against a use-case. */
export const appCodes = [
  'study-not-found',
  'card-not-found',
  'tally-not-found',
  'entry-not-found',
  'card-code-taken',
  'card-code-changed',
  'card-already-read',
  'read-cell-would-vanish',
  'cell-not-on-card',
  'tally-id-taken',
  'entry-id-taken',
  'power-above-machine',
  'overdrive-needs-reason',
  'no-forecast-to-keep',
  'import-names-unknown-setting',
  'metering-not-found',
  'metering-id-taken',
  'focus-test-not-found',
  'focus-test-id-taken',
  'bed-test-not-found',
  'bed-test-id-taken',
] as const;

export type AppCode = (typeof appCodes)[number];
