import type { Setting } from '../../../core/machine/setting.ts';
import { done, refused, type Outcome } from '../../../core/problem.ts';
import { readCutPower, readCutSpeed } from '../../parts/quantity/readers.ts';

/** Reads settings one a line: `14 mm/s 30 %`, `14 30`, `14, 30 x2`. Empty lines are passed over. */
export const readSettingLines = (text: string): Outcome<readonly Setting[]> => {
  const settings: Setting[] = [];
  for (const line of text.split('\n').map((each) => each.trim())) {
    if (line === '') continue;
    const setting = readLine(line);
    if (setting === undefined) return refused('line-not-a-setting', { text: line });
    settings.push(setting);
  }
  return done(settings);
};

const pattern =
  /^([\d.,/]+\s*[a-z/"″]*)[\s,;]+(?:at\s+)?([\d.,]+\s*(?:%|pct|percent)?)(?:[\s,;]*[x×]\s*(\d+))?$/iu;

const readLine = (line: string): Setting | undefined => {
  const found = pattern.exec(line.replace(/,\s/g, ' '));
  if (found === null) return undefined;
  const [, speed = '', power = '', passes = '1'] = found;
  const [readS, readP] = [readCutSpeed(speed), readCutPower(power)];
  return readS.ok && readP.ok
    ? { speedMmPerS: readS.value, powerPct: readP.value, passes: Number(passes) }
    : undefined;
};
