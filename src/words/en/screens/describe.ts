import { counted } from '../terms/figures.ts';
import { inUnitsShown } from '../terms/inUnits.ts';
import { shapeWords } from '../terms/testShapes.ts';

/** The screen on which a card cut elsewhere is described. */
export const describeText = {
  title: 'Describe the card in your hand',
  lead: 'Whatever made it: say what stands on it. Shapes that are missing are tapped away in the picture.',
  sheet: 'The sheet',
  material: 'Material',
  materialHint: 'As you would say it: birch ply, MDF, cast acrylic.',
  thickness: 'Thickness',
  cells: 'The shapes',
  laidOut: 'How is it laid out?',
  layouts: {
    crossed: 'Every speed at every power',
    listed: 'Settings one by one',
  },
  speeds: 'Speeds',
  get speedsHint() {
    return inUnitsShown(
      'Such as 10, 12.5, 15 mm/s, or 10 to 30 by 5 mm/s. Odd steps are fine; so is one.',
    );
  },
  powers: 'Power settings',
  powersHint: 'Such as 20, 25, 30 %. One is enough.',
  list: 'One setting a line: speed, power',
  get listHint() {
    return inUnitsShown('Such as 14 mm/s 30 %. A line may end with x2 for two passes.');
  },
  each: 'Shapes at each setting',
  shape: 'Form of the shapes',
  shapes: { ...shapeWords, other: 'another' },
  size: 'Its longer side',
  cutLength: 'Length of cut of one shape',
  get cutLengthHint() {
    return inUnitsShown('A square of 20 mm has 80 mm. It need not be exact.');
  },
  air: 'The air, if you noted it',
  circles: 'Circles flatter the machine: the head never slows as it must in corners.',
  picture: 'Your card',
  tapAway: 'Tap a shape that is missing on your card.',
  gone: 'missing',
  read: 'Read it',
  tooMany: 'One card holds at most 200 settings and 1,000 shapes. Describe it as two cards.',
  cannotYet: 'Say at least one speed and one power setting.',
  count: (cells: number, settings: number) =>
    `${counted(cells, 'shape')} at ${counted(settings, 'setting')}`,
  question: 'Is that what you meant?',
};
