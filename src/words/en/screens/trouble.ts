import { whatToLookAt } from '../../../core/watch/whatToLookAt.ts';
import { looks } from '../terms/looks.ts';

/** Parts stopped coming out: what to look at, cheapest first. */
export const troubleText = {
  title: 'Parts stopped coming out',
  lead: 'The laser or the sheet? Look at what costs least first. Stop at the first thing that is wrong, put it right, and cut one part.',
  careTitle: 'Machine off, cooled and isolated before you touch lens, mirrors or tube.',
  care: 'Follow the maker’s manual and your local rules. High voltage and the tube are for a competent person. Never fire with a cover open.',
  first: 'At the machine',
  firstMore: 'In this order, cheapest first. No published source; usual advice.',
  checks: whatToLookAt('laser').map((look) => looks[look]),
  wood: 'Or the sheet',
  woodMore: [
    ['Another batch?', 'Measure it in several places: what it is sold as is only nominal.'],
    ['Damp?', 'Sheets that lay in a cold or wet place cut slower.'],
    ['Pockets and knots?', 'Parts that hang only here and there are the sheet, not the setting.'],
  ],
  which: 'Which setting was it?',
  whichMore: 'A check strip of it, six small shapes, says whether the setting still holds.',
  strip: 'Cut its check strip',
  countIt: 'Count the order',
  tell: 'Tell them apart',
  tellMore:
    'Cut the same small card on the reference sheet, which used to cut well, and on this one. Both worse: the laser. Only this one: the sheet.',
  newCard: 'A card for this sheet',
  count: 'Count the last order against its promise',
} as const;
