import { lengthWords } from '../terms/figures.ts';
import { inUnitsShown } from '../terms/inUnits.ts';

/** The screen of a new sheet. */
export const sheetText = {
  title: 'The sheet on the bed',
  newTitle: 'A new sheet',
  lead: 'What lies there, and what you cut it with now. The rest can wait.',
  material: 'Material',
  materialHint: 'As you would say it: birch ply, MDF, cast acrylic.',
  thickness: 'Thickness on its label',
  measured: 'Thickness measured, in several places',
  get measuredHint() {
    return inUnitsShown(
      'Optional, and worth it: what it is sold as is only nominal. Such as 3.1, 3.15, 3.05 mm.',
    );
  },
  meanOf: (meanMm: number, uncertaintyMm: number, leastMm: number, mostMm: number) =>
    `${lengthWords(meanMm)} on average, give or take ${lengthWords(uncertaintyMm)}; from ${lengthWords(leastMm)} to ${lengthWords(mostMm)}.`,
  batch: 'Batch, if you keep them apart',
  batchHint: 'A date or a number: later sheets of it share what is learnt.',
  now: 'What do you cut it with now?',
  nowHint: 'Optional. It narrows the first card.',
  design: 'Make a card for it',
  save: 'Save',
  answerNow: 'See what this alone promises',
  runTitle: 'What you run now',
  runLead:
    'One setting that you trust is enough for a first answer. An order that was counted makes it firmer.',
  order: 'Did you count an order at it?',
  orderHint: 'Optional: a count says more than “nearly always”.',
  see: 'See what it promises',
  missing: {
    material: 'Say what the sheet is of.',
    setting: 'Say the speed and the power setting.',
    outcome: 'Say whether it comes out, or count an order.',
    length: 'Say how long the cut of one part is: the promise is for that part.',
  },
};
