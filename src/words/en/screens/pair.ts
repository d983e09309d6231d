/** Letting a phone in. */
export const pairText = {
  title: 'Let this phone in',
  lead: 'The desk shows a code under “Machine”. Type it here; the phone then stays in as long as it is used.',
  code: 'Code shown at the desk',
  name: 'Name of this phone',
  nameHint:
    'So that the desk knows which it is; it stands with what is read and counted here. May be left empty.',
  unnamed: (number: number) => `Phone ${String(number)}`,
  letIn: 'Let me in',
  phone: 'A phone beside the machine',
  notOpen:
    'Only this computer is let in. To read cards on a phone in the same network, start Throughcut with:',
  startsWith: 'npm start -- --lan',
  invite: 'On the phone, in the same network, open:',
  byPhone: 'Reading by phone?',
  howIn: 'How a phone gets in',
  picture: (address: string) => `The address ${address} for the phone’s camera`,
  type: 'and type the code',
  ask: 'Show a code',
  paused: 'Ten wrong codes were typed. The next one stands in the terminal; or ask for one here.',
  phones: 'Phones that are let in',
  seen: (at: string) => `seen ${at.slice(0, 10)}`,
  remove: 'Let in no longer',
  removeNamed: (name: string) => `Let ${name} in no longer`,
};
