import { counted } from '../terms/figures.ts';
import { readingText } from './reading.ts';
import type { ReadingEvent } from '../../../core/reading/readingEvent.ts';

/** What the server would not take, and what may become of it. */
export const asideText = {
  title: 'Not taken',
  lead: 'The workshop computer would not take these. They stay in this browser until you say what becomes of them.',
  none: 'Nothing is left here.',
  sheet: (name: string | undefined) => name ?? 'A sheet that this browser does not know',
  machine: 'A machine',
  onCard: (code: string) => `read on card ${code}`,
  said: (event: ReadingEvent): string => {
    switch (event.kind) {
      case 'graded':
        return `${event.cell} ${readingText.grades[event.grade]}`;
      case 'spoilt':
        return `${event.cell} spoilt: ${event.reason === 'glue-pocket' ? readingText.flaw : readingText.reasons[event.reason]}`;
      case 'edge':
        return event.edge === null
          ? `${event.cell} edge not graded`
          : `${event.cell} edge ${readingText.edges[event.edge]}`;
      case 'cleared':
        return `${event.cell} not read`;
      case 'as-cut':
        return `${event.cell} cut at another setting`;
      case 'undone':
        return 'a step taken back';
    }
  },
  did: {
    start: 'A new sheet',
    'put-on-bed': 'Putting a sheet on the bed',
    'remove-study': 'Removing a sheet',
    'put-back-study': 'Putting a sheet back',
    head: 'A change of the sheet',
    'add-card': 'A new card',
    'replace-card': 'A changed card',
    'note-card': 'A note on a card',
    'remove-card': 'A card removed',
    tally: 'The count of an order',
    'keep-order': 'An order cut sheet by sheet',
    'remove-order': 'Removing an order',
    'correct-tally': 'Correcting a count',
    'remove-tally': 'A count removed',
    keep: 'A setting to keep',
    'describe-machine': 'What was said of a machine',
    'note-machine-change': 'Something changed on a machine',
    'remove-machine-change': 'A change of a machine taken back',
  },
  again: 'Send again',
  findSheet: 'Search a sheet: material, thickness, batch, or the code of a card',
  toCard: 'Put these on another card',
  pickNone: 'Choose a card',
  send: 'Send to this card',
  drop: 'Throw away',
  dropAsk: (steps: number) => `${counted(steps, 'step')} would be gone for good. Throw away?`,
};
