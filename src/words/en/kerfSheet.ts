import type { KerfCard, KerfCardKind } from '../../core/kerf/kerfCard.ts';
import { lengthWords, settingWords } from './terms/figures.ts';

const mm = (value: number): string => lengthWords(Number(value.toFixed(2)));

const titles: Readonly<Record<KerfCardKind, string>> = {
  comb: 'Kerf comb',
  slots: 'Slot card',
};

const combRead = [
  'Let the fume clear. Take the strips out comb by comb: each carries its comb’s name, such as 1X.',
  'Brush off char and dust. Lay the strips of one comb side by side as they lay, push them together, and measure across all of them with the caliper, in the middle of their length. Three times, pushed together anew.',
  'Then measure the bar of the same name, the same way. Write both down beside the name.',
];

const slotsRead = [
  'Let the fume clear. Measure how thick a tongue is, with the caliper, away from its edges.',
  'Try the tongue in every slot, the widest first. Write beside its width: not at all, press (with a mallet), snug (by hand, and stays), slip (slides), or loose.',
];

/** The page that lies beside the machine when a comb or slot card is cut. */
export const kerfSheetText = {
  title: ({ sheet: { kind } }: KerfCard) => titles[kind],
  file: { comb: 'kerf-comb', slots: 'slot-card' } as const satisfies Record<KerfCardKind, string>,
  about: ({ sheet, thicknessMm }: KerfCard) =>
    sheet.kind === 'comb'
      ? `Every block is parted into ${String(sheet.combs[0]?.strips ?? 0)} strips; comb and bar are ${mm(sheet.combs[0]?.nominalMm ?? 0)} wide as drawn. For a sheet of ${mm(thicknessMm)}.`
      : `${String(sheet.slots.length)} slots from ${mm(sheet.slots[0]?.drawnMm ?? 0)} to ${mm(sheet.slots.at(-1)?.drawnMm ?? 0)} as drawn, and two tongues. For a sheet of ${mm(thicknessMm)}.`,
  piece: ({ sheet: { widthMm, heightMm } }: KerfCard) =>
    `The piece: ${mm(widthMm)} × ${mm(heightMm)}.`,
  steps: ({ sheet: { kind } }: KerfCard): readonly string[] => [
    'Lay a flat piece of the very sheet on the bed, held down, clips clear of the path. Set zero at its lower left corner.',
    'Dry run round it with the beam off: nothing may touch, nothing may stick out of the piece.',
    'Lid shut, extraction on, air as the setting says. Keep the order: marks, inside, outline; turn off re-ordering. Stay with it to the end.',
    ...(kind === 'comb' ? combRead : slotsRead),
  ],
  entries: ({ setting, scoring }: KerfCard): readonly string[] => [
    `Marks: ${settingWords(scoring)}`,
    `Inside and outline: ${settingWords(setting)}`,
  ],
  tryFirst: 'Try the marks on scrap first: they should show plainly and cut nothing through.',
  noteFields: ({ sheet }: KerfCard): readonly string[] =>
    sheet.kind === 'comb'
      ? sheet.combs.flatMap(({ label }) => [
          `${label}: strips together, three times`,
          `${label}: bar, three times`,
        ])
      : [
          'Thickness of the tongue',
          ...sheet.slots.map(({ drawnMm }) => `Slot ${drawnMm.toFixed(2)}: how the tongue goes in`),
        ],
} as const;
