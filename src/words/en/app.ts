import type { AppCode } from '../../core/problems/app.ts';
import type { Sentences } from '../shape/sentence.ts';
import { counted, listed } from './terms/figures.ts';

const some = (count: string, what: string): readonly string[] =>
  count === '0' ? [] : [counted(Number(count), what)];

/** What stands against a use-case. */
export const appWords = {
  'study-not-found': {
    message: (p) => `There is no sheet “${p.id}”.`,
    remedy: () => 'It may have been removed. Go back to the first screen and open one from there.',
  },
  'card-not-found': {
    message: (p) => `This sheet has no card ${p.card}.`,
    remedy: () =>
      'Check the four characters on the card, and that the sheet is the one it was cut for.',
  },
  'photo-not-kept': {
    message: (p) => `No photo of the ${p.side} is kept with card ${p.card}.`,
    remedy: () => 'Take one and keep it with the card first.',
  },
  'setting-photo-not-kept': {
    message: (p) => `No photo of the ${p.subject} is kept with kept setting ${p.entry}.`,
    remedy: () => 'Take one and keep it with the setting first.',
  },
  'tally-not-found': {
    message: (p) => `There is no count “${p.id}” here.`,
    remedy: () => 'It may have been taken away already. Load the page again.',
  },
  'order-not-found': {
    message: (p) => `There is no order “${p.id}” on this sheet.`,
    remedy: () => 'It may have been removed. Load the page again.',
  },
  'order-id-taken': {
    message: (p) => `Another sheet has an order with the id “${p.id}”.`,
    remedy: () => 'Send it under an id of its own, or leave the id to the page.',
  },
  'entry-not-found': {
    message: (p) => `The book has no setting “${p.id}”.`,
    remedy: () => 'Check the code on the shelf label, or search the book by material.',
  },
  'card-code-taken': {
    message: (p) => `Another card already has the code ${p.card}.`,
    remedy: () => 'Give the card a new code before it is cut, and send it again.',
  },
  'card-code-changed': {
    message: (p) => `Card ${p.card} was sent with another code, ${p.other}.`,
    remedy: () => 'A card keeps its code. Add the other one as a card of its own.',
  },
  'card-already-read': {
    message: (p) => `Card ${p.card} has been read already: its words are cut into the sheet.`,
    remedy: () => 'Correct a shape as cut, or design a new card.',
  },
  'read-cell-would-vanish': {
    message: (p) =>
      `Shape ${p.cell} of card ${p.card} has been read, and the changed card has no such shape.`,
    remedy: () => 'Clear the reading of that shape first, or keep the shape.',
  },
  'cell-not-on-card': {
    message: (p) => `Card ${p.card} has no shape ${p.cell}.`,
    remedy: () => 'Check that the card shown is the card in your hand.',
  },
  'tally-id-taken': {
    message: (p) => `Another count already has the id “${p.id}”.`,
    remedy: () => 'Send the count with an id of its own, or with none.',
  },
  'entry-id-taken': {
    message: (p) => `Another setting in the book already has the id “${p.id}”.`,
    remedy: () => 'Send the setting with an id of its own, or with none.',
  },
  'setting-change-not-found': {
    message: (p) => `Nothing is noted under “${p.id}” of what was done to kept settings.`,
    remedy: () => 'Load the page again, and take the change back from there.',
  },
  'setting-change-over': {
    message: (p) =>
      `That was done to kept setting ${p.code} more than ${p.hours} hours ago: it is not taken back any more.`,
    remedy: () => 'Change the setting itself: say its note anew, keep it again or take it out.',
  },
  'setting-changed-since': {
    message: (p) => `Something else was done to kept setting ${p.code} after that.`,
    remedy: () => 'Take back what was done last, first; or change the setting itself.',
  },
  'setting-built-on': {
    message: (p) =>
      `Kept setting ${p.code} has been used since it was kept: ${listed([
        ...some(p.counts, 'counted order'),
        ...some(p.strips, 'check strip'),
        ...some(p.photos, 'photo'),
      ])}.`,
    remedy: () => 'If it is to go all the same, open it and take it out of the book.',
  },
  'setting-code-taken': {
    message: (p) => `Another card or kept setting has the code ${p.code} by now.`,
    remedy: () => 'Keep the setting again from its sheet: it gets a code of its own.',
  },
  'setting-machine-gone': {
    message: (p) => `The machine that kept setting ${p.code} was for has been removed.`,
    remedy: () => 'Keep the setting again from a sheet of the machine that you have.',
  },
  'power-above-machine': {
    message: (p) =>
      `A power setting of ${p.powerPct} % is above what this machine is allowed, ${p.mostPct} %.`,
    remedy: () => 'Lower the power setting, or correct the most that the machine may be set to.',
  },
  'overdrive-needs-reason': {
    message: (p) =>
      `At a power setting of ${p.powerPct} % the tube runs above its rated current, which ${p.limitPct} % reaches. This shortens its life, and Throughcut never recommends it.`,
    remedy: () =>
      'Keep a setting at or below that power. If you choose this one all the same, say why: the book records it as your choice.',
  },
  'rest-not-said': {
    message: (p) => `Only ${p.read} of ${p.cells} shapes are read.`,
    remedy: () =>
      'Say of the rest that they stayed, or that they were not looked at (rest: not-looked-at).',
  },
  'no-forecast-to-keep': {
    message: () => 'The study says too little to tell what this setting would do.',
    remedy: () => 'Read a card or count an order first, then keep the setting.',
  },
  'import-names-unknown-setting': {
    message: (p) =>
      `Count “${p.tally}” in the file belongs to a setting “${p.id}” that is neither in the file nor in the book.`,
    remedy: () => 'Nothing was changed. Export the file again from where it came from.',
  },
  'import-names-unknown-machine': {
    message: (p) => `A sheet in the file is of a machine “${p.id}” that the file does not have.`,
    remedy: () => 'Nothing was changed. Export the file again from where it came from.',
  },
  'machine-not-found': {
    message: (p) => `There is no machine “${p.id}”.`,
    remedy: () => 'It may have been removed. Load the page again and pick another.',
  },
  'machine-in-use': {
    message: (p) => `${p.count} sheets, kept settings or tests belong to this machine.`,
    remedy: () => 'Move its sheets to another machine first, or remove them.',
  },
  'machine-is-invented': {
    message: () => 'This machine belongs to the invented example.',
    remedy: () => 'Pick one of your own machines. The example goes with everything in it.',
  },
  'machine-change-id-taken': {
    message: (p) => `Another change of this machine already has the id “${p.id}”.`,
    remedy: () => 'Send the change with an id of its own, or with none.',
  },
  'machine-change-ahead': {
    message: (p) => `The date ${p.at} lies ahead.`,
    remedy: () => 'Give the day on which it was done.',
  },
  'sum-took-too-long': {
    message: (p) => `This takes longer than ${p.seconds} seconds to work out, and was stopped.`,
    remedy: () =>
      'Nothing was changed. Ask with fewer shapes, counts or earlier sheets: leave out those that tell least, such as many at one setting.',
  },
  'sum-too-big': {
    message: (p) =>
      `This takes more than ${p.megabytes} MB of memory to work out, and was stopped.`,
    remedy: () =>
      'Nothing was changed. Ask with fewer shapes, counts or earlier sheets; a drawing, in parts.',
  },
  'sums-waiting': {
    message: (p) => `So many sums are waiting (${p.waiting}) that this one could not be begun.`,
    remedy: () => 'Nothing was changed. Ask again in a minute.',
  },
  'sum-not-wanted': {
    message: () => 'Whoever asked has gone, and the sum was stopped.',
    remedy: () => 'Nothing was changed. Ask again.',
  },
} satisfies Sentences<AppCode>;
