/** Parts stopped coming out: what to look at, cheapest first. */
export const troubleText = {
  title: 'Parts stopped coming out',
  lead: 'The laser or the sheet? Look at what costs least first. Stop at the first thing that is wrong, put it right, and cut one part.',
  careTitle: 'Machine off, cooled and isolated before you touch lens, mirrors or tube.',
  care: 'Follow the maker’s manual and your local rules. High voltage and the tube are for a competent person. Never fire with a cover open.',
  first: 'At the machine',
  firstMore: 'In this order, cheapest first. No published source; usual advice.',
  checks: [
    ['Lens', 'Dirty or the wrong way round? Clean it as its maker says. One job can dirty it.'],
    [
      'Water and warm-up',
      'Warmer than usual, or the machine just switched on? Warm water weakens the tube.',
    ],
    ['Focus', 'Was the sheet changed and the height not? Is it bowed off the bed?'],
    ['Air', 'Same pressure as before? A kinked hose or a full filter cuts like a weak tube.'],
    [
      'Meter',
      'Same setting, same milliamperes? Less points at supply, wiring or controller; the same with weak cuts at optics, water or the tube.',
    ],
    ['Mirrors', 'Dirty or knocked? Alignment is for trained persons.'],
    ['Tube', 'Old tubes draw the same and give less light.'],
  ],
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
