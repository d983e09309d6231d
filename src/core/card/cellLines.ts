import type { Setting } from '../machine/setting.ts';
import { cellWordLines } from './settingWords.ts';

/** The two lines below a cell: its speed; its power and its name. */
export const cellLines = (setting: Setting, id: string): readonly [string, string] => {
  const [speed, power] = cellWordLines(setting);
  return [speed, `${power}  ${id}`];
};
