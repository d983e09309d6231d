import { rungLetter } from '../../core/card/rungLetter.ts';
import type { MarkStrip } from '../../core/marking/markStrip.ts';
import { counted, lengthWords, settingWords } from './terms/figures.ts';

/** The page that lies beside the machine when a strip is marked, and its entries. */
export const markStripText = {
  title: 'Marking strip',
  file: 'marking-strip',
  about: ({ kind, settings, lineSpacingMm }: MarkStrip) =>
    kind === 'lines'
      ? `${counted(settings.length, 'line')}, the gentlest on top. Nothing is cut.`
      : `${counted(settings.length, 'shade')}, the palest on top, lines ${lengthWords(lineSpacingMm)} apart. Nothing is cut.`,
  piece: ({ widthMm, heightMm }: MarkStrip) =>
    `The piece: ${lengthWords(widthMm)} × ${lengthWords(heightMm)} at least.`,
  steps: ({ kind }: MarkStrip): readonly string[] => [
    'Lay an offcut of the very sheet flat on the bed, masked as the part will be, clips clear of the path. Set zero at its lower left corner.',
    'Dry run round it with the beam off: nothing may touch, nothing may stick out of the piece.',
    'Lid shut, extraction on, air as the setting says. Run every layer as lines, not as a filling of its own: the lines are drawn. Stay with it to the end.',
    ...(kind === 'lines'
      ? ['Look along the middle of each line: its ends are slower and deeper.']
      : ['Look at the middle half of each band: its ends are slower and darker.']),
    'If anything comes through, stop: the sheet is weaker than was believed.',
  ],
  entries: ({ settings, scoring }: MarkStrip): readonly string[] => [
    `Words: ${settingWords(scoring)}`,
    ...settings.map((setting, i) => `${rungLetter(i)}: ${settingWords(setting)}`),
  ],
  noteFields: ['The palest that you see', 'The one that you want'],
} as const;
