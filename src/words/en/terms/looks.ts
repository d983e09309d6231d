import type { LookAt } from '../../../core/watch/whatToLookAt.ts';

/** What a person may look at, whoever points there: what it is called, and how. */
export const looks: Readonly<Record<LookAt, readonly [name: string, how: string]>> = {
  lens: [
    'Lens',
    'Machine off and cool. Dirty, cracked or the wrong way round? One job can dirty it. Clean it as its maker says; a cracked one is changed, and its pieces are not touched with bare hands.',
  ],
  water: [
    'Water and warm-up',
    'Warmer than usual, or flowing less? Warm water weakens the tube. Did the first parts of the day cut worse than the later ones? Read the display, and note the temperature with the next card.',
  ],
  focus: [
    'Focus',
    'Was the sheet changed and the height not? Is the bed level, and does the sheet lie on it? Find the focus again.',
  ],
  air: [
    'Air',
    'Gauge as usual, hose whole, nozzle clear and central? A kinked hose or a full filter cuts like a weak tube.',
  ],
  meter: [
    'Meter',
    'Read the milliammeter in the panel at three settings, and compare with the last time. Less current points at what feeds the tube, the same current at optics, water or the tube.',
  ],
  mirrors: [
    'Mirrors',
    'Dirty or knocked? Cleaning as their maker says, machine off; aligning is for trained persons.',
  ],
  tube: [
    'Tube',
    'An old tube draws the same and gives less light. Suspect it last: it costs most. Changing it is for someone qualified.',
  ],
  controller: [
    'Controller',
    'Was the highest power, a power scale or the file changed? Send the same setting from the panel and from the program.',
  ],
  wiring: [
    'Wiring',
    'For a competent person, machine isolated and discharged: a loose signal plug, a burnt joint in the return lead.',
  ],
  supply: [
    'Supply',
    'A tired supply gives less, or gives out near the top. It holds a deadly voltage after switch-off: leave it to someone qualified.',
  ],
  thickness: [
    'Thickness',
    'Measure the new sheet in several places: what it is sold as is only nominal, and 5\u202f% thicker is about 6\u202f% slower.',
  ],
  moisture: [
    'Moisture',
    'Was it stored damp, or is it fresh from a cold van? Let it lie flat in the room for a day, and cut a strip again.',
  ],
  batch: [
    'Batch',
    'Another core, another glue? Cut a card of this batch and keep its own setting.',
  ],
  'count-on': [
    'Go on counting',
    'Nothing to look for. Count the next order; the chart goes on watching.',
  ],
};
