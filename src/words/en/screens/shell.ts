import { counted } from '../terms/figures.ts';

/** What stands around every screen. */
export const shellText = {
  name: 'Throughcut',
  skip: 'Skip to the page',
  nav: 'Places',
  bed: 'Bed',
  book: 'Book',
  machine: 'Machine',
  sending: {
    'all-sent': () => 'All saved',
    sending: () => 'Saving…',
    away: (waiting: number) =>
      `${counted(waiting, 'step')} kept here until the workshop computer answers`,
    held: (waiting: number) =>
      `${counted(waiting, 'step')} kept here: the workshop computer cannot take ${waiting === 1 ? 'it' : 'them'} now`,
    'not-let-in': (waiting: number) =>
      waiting === 0
        ? 'This phone is not let in'
        : `${counted(waiting, 'step')} kept here until this phone is let in`,
  },
  notKept: 'Not everything is saved: leave this page open',
  noRoom: (steps: number) => `This browser has no room for ${counted(steps, 'step')}`,
  noRoomMore:
    'What is not saved yet would be lost if the page closed. Leave it open until it says “All saved”.',
  keepsNothing: 'This browser keeps nothing for this address',
  keepsNothingMore:
    'What is tapped goes to the workshop computer at once, and is lost if it does not answer before the page closes. Allow cookies and site data for this address, then reload the page.',
  aside: (steps: number) => `${counted(steps, 'step')} not taken`,
  asideLook: 'Look at what was not taken',
  exampleOpen: 'You are looking at the example workshop: invented, every figure of it.',
  exampleBeside:
    'The example workshop is open beside your own: what is marked as example is invented.',
  exampleGone: 'Remove the example',
  exampleShow: 'Look around an example workshop',
  notFound: 'There is nothing here.',
  notFoundMore: 'The address may be mistyped, or what stood here was removed.',
  toStart: 'To the first screen',
  loading: 'Fetching…',
  tryAgain: 'Try again',
};
