import { counted, lengthWords } from '../terms/figures.ts';

/** Reading a file for the machine back. */
export const checkText = {
  title: 'Check a file',
  lead: 'A drawing or a program for the machine: its labels held against its settings, its order, its bounds. Nothing leaves this page.',
  leadFor: (code: string) =>
    `The file you are about to cut, held against card ${code}. Nothing leaves this page.`,
  pick: 'SVG, DXF or G-code',
  read: (lines: number, lengthMm: number, sizeMm: readonly [number, number] | undefined) =>
    `${counted(lines, 'line')} with ${lengthWords(lengthMm)} of cut${sizeMm === undefined ? '' : `, ${lengthWords(sizeMm[0])} × ${lengthWords(sizeMm[1])}`}.`,
  noFault: 'No fault found.',
  noFaultMore: 'That is not to say that it is safe: dry run first, beam off, and stay with it.',
  faults: (count: number) => `${counted(count, 'fault')} found.`,
  faultsMore: 'Do not cut it as it is.',
};
