import type { Card } from '../../src/core/card/card.ts';
import type { Setting } from '../../src/core/machine/setting.ts';
import { independentReaders } from './agreement.ts';
import { readWords } from './readWords.ts';

/** Cells whose engraved words, read from the file sign by sign, are not their setting. */
export const wrongWords = (card: Card, svg: string): readonly string[] =>
  card.cells.flatMap(({ id, rung }) => {
    const setting = card.rungs.find(({ letter }) => letter === rung)?.setting;
    const data = new RegExp(`<path id="words-${id}" d="[^"]+"`).exec(svg)?.[0];
    const height = / height="[\d.]+mm"/.exec(svg)?.[0] ?? '';
    const read = readWords(independentReaders.svg(`${height} ${data ?? ''}`))
      .map((line) => line?.replaceAll(/ +/g, ' ') ?? 'unreadable')
      .join(' ');
    const wanted = setting === undefined ? '' : `${inWords(setting)} ${id}`;
    return read === wanted ? [] : [`${card.code} ${id}: “${read}”, not “${wanted}”`];
  });

/** As a person would write a setting down, without asking the code that engraves it. */
const inWords = ({ speedMmPerS, powerPct, minPowerPct = powerPct, passes, air }: Setting): string =>
  [
    `${String(speedMmPerS)} mm/s ${String(powerPct)}%`,
    ...(minPowerPct === powerPct ? [] : [`c${String(minPowerPct)}%`]),
    ...(passes === 1 ? [] : [`x${String(passes)}`]),
    ...(air === 'off' ? ['no air'] : []),
  ].join(' ');
