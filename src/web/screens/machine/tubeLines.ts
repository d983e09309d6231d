import type { TubePoint } from '../../../core/machine/machine.ts';
import { done, refused, type Outcome } from '../../../core/problem.ts';
import { readCurrent, readPower } from '../../parts/quantity/readers.ts';

/** Meter readings as lines: `20 % 5.3 mA`. */
export const tubeLines = (points: readonly TubePoint[]): string =>
  points
    .map(({ powerPct, currentMa }) => `${String(powerPct)} % ${String(currentMa)} mA`)
    .join('\n');

const pattern = /^([\d.,]+\s*%?)[\s:;,=]+([\d.,]+\s*(?:mA)?)$/i;

/** Reads them back, in ascending power. Empty lines are passed over. */
export const readTubeLines = (text: string): Outcome<readonly TubePoint[]> => {
  const points: TubePoint[] = [];
  for (const line of text.split('\n').map((each) => each.trim())) {
    if (line === '') continue;
    const point = readPoint(line);
    if (point === undefined) return refused('line-not-a-reading', { text: line });
    const { powerPct } = point;
    if (points.some((other) => other.powerPct === powerPct))
      return refused('lines-same-power', { powerPct });
    points.push(point);
  }
  if (points.length > mostPoints)
    return refused('lines-too-many', { count: points.length, most: mostPoints });
  return done(points.sort((a, b) => a.powerPct - b.powerPct));
};

/** What a machine holds. */
const mostPoints = 200;

const readPoint = (line: string): TubePoint | undefined => {
  const [, power, current] = pattern.exec(line) ?? [];
  if (power === undefined || current === undefined) return undefined;
  const [readP, readC] = [readPower(power), readCurrent(current)];
  return readP.ok && readC.ok ? { powerPct: readP.value, currentMa: readC.value } : undefined;
};
