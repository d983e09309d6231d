import { listed } from '../figures.ts';

/** What is said of a material when it is named. */
export const materialText = {
  refused: (material: string) => `Not cut here: ${material}.`,
  caution: (material: string) => `${material}: cut with care.`,
  hazards: (hazards: readonly string[]) => `Hazard: ${listed(hazards)}.`,
  remedy: 'Choose another material. If it is something else, name it as its data sheet does.',
  sources: 'Who says so',
};
