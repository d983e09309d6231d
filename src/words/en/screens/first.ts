/** The first screen. */
export const firstText = {
  title: 'What fell out?',
  lead: (material: string, thickness: string, power: string) =>
    `A card like this in ${thickness} ${material}, all at ${power}? Tap each shape that fell out.`,
  notYours: 'Not your sheet? Say what was cut',
  yours: 'Is this a card that you cut?',
  yoursMore: 'Nothing is stored yet: this is a sample card.',
  own: 'Yes, keep it as my sheet',
  other: 'Mine is different',
  tried: 'I was only trying',
  doors: 'Where do you start?',
  described: 'I have a cut card here',
  describedMore: 'From the drawer, whatever made it: say its speeds and powers, tap what fell.',
  newSheet: 'I have a new sheet',
  newSheetMore: 'A small card for it, to cut now: six speeds to type, ten minutes.',
  run: 'I only know what I run',
  runMore: 'A speed, a power, and whether it comes out; or an order that was counted.',
  trouble: 'Parts stopped coming out',
  troubleMore: 'It cut last week. The laser, or the sheet?',
};
