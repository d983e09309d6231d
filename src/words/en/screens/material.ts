import { listed } from '../terms/figures.ts';

/** What is said of a material when it is named. */
export const materialText = {
  refused: (material: string) => `Not cut here: ${material}.`,
  caution: (material: string) => `${material}: cut with care.`,
  hazards: (hazards: readonly string[]) => `Hazard: ${listed(hazards)}.`,
  remedy: 'Choose another material. If it is something else, name it as its data sheet does.',
  look: 'I have looked: I know what it is, and it may be cut',
  looked: 'You have looked at what it is. The question stays with every card of it.',
  sayWhat: 'Say what the sheet is',
  sources: 'Who says so',
};
