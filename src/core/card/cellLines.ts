import type { Setting } from '../machine/setting.ts';
import { cellWordLines } from './settingWords.ts';

/** The two lines below a cell: its speed; its power and its name. `before`: as cards said corner power once. */
export const cellLines = (
  setting: Setting,
  id: string,
  corner?: 'before',
): readonly [string, string] => {
  const [speed, power] = cellWordLines(setting, corner);
  return [speed, `${power}  ${id}`];
};
