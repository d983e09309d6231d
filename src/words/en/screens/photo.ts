import { grades, type Grade } from '../../../core/reading/grade.ts';
import type { PhotoStep } from '../../../core/photo/readPhoto.ts';
import type { PhotoSide } from '../../../core/photo/photoSide.ts';
import { counted } from '../terms/figures.ts';
import { readingText } from './reading.ts';

/** While a card is read from photographs. */
export const photoText = {
  title: (code: string) => `Read card ${code} from a photo`,
  lead: 'Nothing leaves this workshop: the photo is read on this device. Not yet tried on real photographs, so look at what was read.',
  how: [
    'Lay the card on a plain sheet of another colour, the scored side up, all four sides in view.',
    'Leave what hangs where it hangs. Hold the phone level over it, no shadow or glare on the card.',
    'Then turn it over for the back: that tells hanging from not through.',
  ],
  front: { take: 'Take the front', choose: 'Photo of the front' },
  back: { take: 'Take the back', choose: 'Photo of the back' },
  again: 'Other photos',
  steps: {
    opening: 'Opening the photo …',
    finding: 'Looking for the card …',
    grading: 'Looking at each shape …',
    back: 'Looking at the back …',
  } satisfies Record<PhotoStep | 'opening', string>,
  stop: 'Stop',
  broke: 'Reading the photo failed.',
  brokeMore: 'Take another one, or read the card by hand. What failed:',
  board: (code: string) => `Card ${code} as the photo shows it`,
  corners: 'Point at the card',
  cornersMore: 'Tap its four corners on the photo, one after another round the card.',
  cornersPicture: 'The photo of the front',
  cornersTapped: (count: number) => `${String(count)} of 4 corners`,
  cornersAnew: 'Begin again',
  cornersRead: 'Read it there',
  side: 'Which side is shown',
  sides: { front: 'Front', back: 'Back' },
  check:
    'Check it against the card in your hand. Tap a shape to correct it: out, hangs, not through.',
  cantTell: '?',
  cantTellInFull: 'can’t tell, look at it by hand',
  corrected: 'by you',
  sure: (sure: number) => `${String(Math.min(99, Math.floor(100 * sure)))}\u202f%`,
  sureInFull: (sure: number) => `${String(Math.min(99, Math.floor(100 * sure)))} % sure`,
  cell: (id: string, said: string, how: string) => `${id}: ${said}, ${how}`,
  counts: (counts: Readonly<Record<Grade, number>>) =>
    grades.map((grade) => `${String(counts[grade])} ${readingText.grades[grade]}`).join(', '),
  toLookAt: (unsure: number, cantTell: number) =>
    [
      ...(cantTell === 0 ? [] : [`${counted(cantTell, 'shape')} it can’t tell`]),
      ...(unsure === 0 ? [] : [`${String(unsure)} less than 90\u202f% sure (dashed)`]),
    ].join(', '),
  lookAtThem: 'Look at these by hand first.',
  use: 'Use these readings',
  useSome: (left: number) => `Use these readings, ${String(left)} left unread`,
  replaces: (read: number) =>
    `${counted(read, 'shape')} of this card ${read === 1 ? 'was' : 'were'} read before. What the photo says takes that place; Undo on the card brings it back.`,
  byHand: 'Read it by hand',
  keep: 'Keep the photos with the card',
  keepMore: 'Made smaller, without where and when they were taken.',
  keeping: 'Keeping the photos …',
  notKept: 'The readings are kept, the photos are not.',
  keepAgain: 'Try again',
  without: 'Go on without them',
  kept: (side: PhotoSide, code: string) => `Card ${code}, photo of its ${side}`,
  removePhoto: (side: PhotoSide) => `Remove the photo of the ${side}`,
  removePhotoAsk: 'It cannot be brought back. What was read from it stays.',
};
