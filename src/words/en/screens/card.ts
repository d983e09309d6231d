import { counted, durationWords, lengthWords } from '../terms/figures.ts';
import { shapeWords } from '../terms/testShapes.ts';

/** The screen on which a card is designed. */
export const cardText = {
  title: 'A card for this sheet',
  question: 'What do you want to find out?',
  vary: {
    speed: 'The speed',
    power: 'The power',
    'speed-and-power': 'Speed and power',
    passes: 'Are two passes worth it?',
    corners: 'The corner power',
  },
  varyMore: {
    speed: 'One power, several speeds: power is typed once.',
    power: 'One speed, several powers.',
    'speed-and-power': 'A few speeds at each of a few powers.',
    passes: 'The same speeds once and twice over.',
    corners: 'One speed and power, several corner powers: which hang, which tips burn.',
  },
  nextCard: 'The settings that would teach most',
  comparedCard: 'The settings that would settle the comparison',
  compared: (names: { readonly by: string; readonly with: string }) =>
    `For ${names.by}; its twin for ${names.with} has the same settings and shapes.`,
  comparedOneSheet: 'Cut both from one sheet, one after the other.',
  comparedOwnSheets: 'Each comes from a sheet of its own.',
  power: 'Power setting you run',
  atSpeed: 'At which speed',
  settings: 'Settings to type, at most',
  each: 'Shapes at each setting',
  shape: 'Shape',
  shapes: shapeWords,
  size: 'Size of a shape',
  offcutWide: 'Width of the offcut',
  offcutHigh: 'Height of the offcut',
  marks: 'Marks and outline',
  scoring: 'What do you score a line with?',
  trusted: 'A slow setting you trust, to cut the outline',
  trustedHint: 'Leave it empty to read the card in the corner of the sheet, without an outline.',
  speed: 'Speed',
  powerShort: 'Power setting',
  more: 'Shape, size, marks and outline',
  shuffle: 'Draw the order anew',
  trial: (strips: number) =>
    `Some control programs keep only a few colours apart. Load the colour trial in yours, ${String(strips)} strips, without cutting it, and count its separate entries.`,
  trialTitle: 'Colour trial',
  trialNote: 'To be loaded and counted, not to be cut.',
  overdrive: 'Overdrive: let this card go above the tube’s rated current',
  overdriveMore:
    'It shortens the tube’s life. The machine’s own limit still holds, and the card says so wherever it stands.',
  trialSvg: 'Colour trial as SVG',
  trialDxf: 'as DXF',
  entries: 'Entries you counted',
  uses: (widthMm: number, heightMm: number) =>
    `${lengthWords(widthMm)} × ${lengthWords(heightMm)} of sheet`,
  types: (settings: number) => `${counted(settings, 'setting')} to type`,
  cells: (cells: number) => counted(cells, 'shape'),
  takes: (seconds: number) => `about ${durationWords(seconds)}`,
  say: 'Worth knowing',
  take: 'Take it to the machine',
  picture: (code: string) => `Card ${code} as it will be cut`,
};
