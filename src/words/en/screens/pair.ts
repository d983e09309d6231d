/** Letting a phone in. */
export const pairText = {
  title: 'Let this phone in',
  lead: 'The desk shows a code under “Machine”. Type it here; the phone then stays in for the day.',
  code: 'Code shown at the desk',
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
};
