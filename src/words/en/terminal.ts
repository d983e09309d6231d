/** What `serve` says in the terminal. */
export const terminalText = {
  at: (address: string) => `Throughcut is at ${address}`,
  phoneAt: (addresses: readonly string[]) =>
    addresses.length === 0
      ? 'This computer is in no network that a phone could reach it by.'
      : `On a phone in the same network: ${addresses.join(' or ')}`,
  phoneCode: (code: string, minutes: number) =>
    `and type ${code} there. It holds for ${String(minutes)} minutes and one phone; ask for later ones on the page at the desk.`,
  pairingPaused: (code: string, from: string) =>
    `Ten wrong codes were typed by phones: none is let in before ${from}. Then ${code} holds; or ask for a code on the page at the desk.`,
  notEncrypted: 'What goes to the phone is not encrypted: use it in a network that you trust.',
  encrypted: 'What goes to the phone is encrypted by your certificate.',
  dataIn: (folder: string) => `Your data are in ${folder}`,
  begun: {
    none: 'No workshop was kept there, so a new one is begun. If one should be there: stop, and put a backup in its place with throughcut restore --from FILE.',
    empty:
      'A data file was there, and it was empty, so a new workshop is begun in it. If one was kept in it: stop before anything is entered, and put a backup in its place with throughcut restore --from FILE.',
  },
  lookForBackups: (folder: string | undefined) =>
    folder === undefined
      ? 'A backup lies where throughcut backup --to FILE was told to put it, or in the folder that THROUGHCUT_BACKUP named then.'
      : `Backups that were made on a schedule lie in ${folder}.`,
  backupsIn: (folder: string, everyHours: number) =>
    `Backups go to ${folder}, one every ${everyHours === 1 ? 'hour' : `${String(everyHours)} hours`}`,
  backupsFail: (message: string, remedy: string) => `No backup: ${message} ${remedy}`,
  backupsAgain: 'Backups are made again.',
  stopIt: 'Stop it with Ctrl-C.',
} as const;
