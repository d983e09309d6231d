import { refused, type Outcome } from '../problem.ts';
import { parseQuantity, showQuantity, type Units } from './quantity.ts';

const powerUnits: Units<'%'> = {
  kind: 'power',
  factor: { '%': 1 },
  spellings: { pct: '%', percent: '%', percents: '%', '\uff05': '%' },
};

/** A power setting as people write it ("30%", "30", "per cent"), in per cent, 0–100. Watts are refused: they are no setting. */
export const parsePower = (text: string): Outcome<number> => {
  const parsed = parseQuantity(powerUnits, text, '%');
  if (parsed.ok && parsed.value > 100) return refused('power-setting-above-100', { text });
  return parsed;
};

/** A power setting to 0.1 %. */
export const showPower = (powerPct: number): string => showQuantity(powerUnits, powerPct, '%', 1);
