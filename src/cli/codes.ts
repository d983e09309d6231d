/** What can stand against a command before any use-case is asked. */
export const cliCodes = [
  'command-misused',
  'order-not-said',
  'port-not-a-port',
  'port-taken',
  'port-not-allowed',
] as const;

export type CliCode = (typeof cliCodes)[number];
