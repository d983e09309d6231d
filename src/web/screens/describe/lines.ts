import type { Setting } from '../../../core/machine/setting.ts';
import { done, refused, type Outcome } from '../../../core/problem.ts';
import { bounds } from '../../../formats/saved/limits.ts';
import { readCount, readCutPower, readCutSpeed } from '../../parts/quantity/readers.ts';

/** Reads settings one a line: `14 mm/s 30 %`, `14 30`, `14, 30 x2`. Empty lines are passed over. */
export const readSettingLines = (text: string): Outcome<readonly Setting[]> => {
  const settings: Setting[] = [];
  for (const line of text.split('\n').map((each) => each.trim())) {
    if (line === '') continue;
    const setting = readLine(line);
    if (setting === undefined) return refused('line-not-a-setting', { text: line });
    settings.push(setting);
  }
  if (settings.length > mostLines)
    return refused('lines-too-many', { count: settings.length, most: mostLines });
  return done(settings);
};

/** As many settings as a list of speeds has. */
const mostLines = 60;

const readPasses = readCount(...bounds.passes);

const pattern =
  /^([\d.,/]+\s*[a-z/"″]*)[\s,;]+(?:at\s+)?([\d.,]+\s*(?:%|pct|percent)?)(?:[\s,;]*[x×]\s*(\d+))?$/iu;

const readLine = (line: string): Setting | undefined => {
  const found = pattern.exec(line.replace(/,\s/g, ' '));
  if (found === null) return undefined;
  const [, speed = '', power = '', passes = '1'] = found;
  const [readS, readP, times] = [readCutSpeed(speed), readCutPower(power), readPasses(passes)];
  return readS.ok && readP.ok && times.ok
    ? { speedMmPerS: readS.value, powerPct: readP.value, passes: times.value }
    : undefined;
};
