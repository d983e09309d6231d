import type { UnitChoice } from '../../../core/units/unitPreference.ts';

/** The screens of the machine: taking a card to it, and what is known of it. */
export const takeText = {
  title: (code: string) => `Card ${code} at the machine`,
  lead: 'Download the drawing, type what the list says, keep the order.',
  another: 'Make another card',
  putIn: 'Put in:',
  files: 'The drawing',
  fileKinds: {
    pdf: 'Job sheet (PDF)',
    json: 'Card file',
  },
  filesMore:
    'One layer for each letter; its name spells the setting. The colours only keep the layers apart.',
  saving: 'The files are ready as soon as the workshop computer has the card.',
  letter: 'Letter',
  corners:
    'If your machine also asks for a corner power (some machines: minimum power), enter the same figure there.',
  first: 'first',
  last: 'last',
  zeroPicture: 'The card on the bed; zero is its lower left corner.',
  print: 'Print this page',
  read: 'It is cut: read it',
  check: 'Check a file against this card',
};

export const machineText = {
  title: 'The machine',
  lead: 'Nothing here is needed to start. Each line sharpens an answer, and what is missing is said there.',
  name: 'Its name',
  limits: 'What it may do',
  maxPower: 'Highest power setting you allow',
  slowest: 'Slowest speed',
  fastest: 'Fastest speed',
  tube: 'The tube',
  strength: 'About how strong',
  strengthHint:
    'The watts that the tube was sold as, such as 60 W. Leave it empty if you don’t know: the first card then reaches further.',
  rated: 'Rated current',
  ratedHint: 'From the tube’s label or its maker’s sheet.',
  points: 'Meter readings',
  pointsHint: 'One a line: power setting, current. Such as 20 % 5.3 mA.',
  readMeter: 'Read the meter, step by step',
  focus: 'The focus',
  focusMore: 'How far the nozzle stands above a sheet that is in focus.',
  findFocus: 'Find the focus on a ramp',
  bed: 'The bed',
  gap: 'Widest gap between slats or honeycomb walls',
  gapHint: 'A shape must be bigger, or the piece drops and tips up.',
  width: 'Width',
  height: 'Height',
  gcode: 'G-code, where it takes any',
  gcodeMore:
    'The card’s G-code is written as said here. Take these from your controller’s manual or its own settings: with a wrong figure every power is wrong. Try the file with the beam disarmed first.',
  fullPower: 'S at a power setting of 100 %',
  beamPower: 'Power while the head slows down',
  beamPowers: {
    constant: { label: 'stays', more: 'M3' },
    'speed-following': { label: 'is lowered by the controller', more: 'M4' },
  },
  airWord: 'Air on',
  opening: 'Your own lines before the card',
  openingHint: 'One command a line; none is needed. The beam stays off in them.',
  closing: 'Your own lines after the card',
  closingHint: 'One command a line, such as G0 X0 Y0, then M2.',
  noStudy: 'It counts for every sheet of this machine.',
  forStudies: 'It counts for the sheet on the bed and every other sheet of this machine.',
  file: 'A file for it',
  fileMore: 'A drawing or a program can be read back here before it is cut.',
  fileCheck: 'Check a file',
  units: 'Units on this screen',
  unitChoices: {
    'mm/s': 'mm, mm/s, kPa, °C',
    'mm/min': 'mm, mm/min, kPa, °C',
    'in/s': 'in, in/s, psi, °F',
    'in/min': 'in, in/min, psi, °F',
  } satisfies Record<UnitChoice, string>,
  unitsMore:
    'Choose what your control program asks for: the list to type in follows. The words cut into a card stay in mm/s.',
};
