import { counted } from '../figures.ts';

/** What stands around every screen. */
export const shellText = {
  name: 'Throughcut',
  skip: 'Skip to the page',
  nav: 'Places',
  bed: 'Bed',
  book: 'Book',
  machine: 'Machine',
  sending: {
    'all-sent': 'All saved',
    sending: 'Saving…',
    away: (waiting: number) =>
      waiting === 0
        ? 'The workshop computer does not answer'
        : `${counted(waiting, 'step')} kept here until the workshop computer answers`,
  },
  notKept:
    'This browser keeps nothing: what is not saved yet would be lost if the page closed. Leave it open until it says “All saved”.',
  refused: 'Not taken',
  understood: 'Understood',
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
