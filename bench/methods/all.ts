import { bruceton } from './bruceton.ts';
import { entropy } from './entropy.ts';
import { gaussianProcess } from './gaussianProcess.ts';
import { gridEye } from './gridEye.ts';
import { gridFirth } from './gridFirth.ts';
import { gridMl } from './gridMl.ts';
import { halving } from './halving.ts';
import { langlie } from './langlie.ts';
import type { Method } from './method.ts';
import { neyer } from './neyer.ts';
import { oracle } from './oracle.ts';
import { threePhase } from './threePhase.ts';
import { throughcut } from './throughcut.ts';

/** What is played where no methods are named. */
const usualMethods: readonly Method[] = [gridEye, gridMl, halving, throughcut];

/** Peers from the literature, played by name or by `all`. */
const peers: readonly Method[] = [
  gridFirth,
  bruceton,
  langlie,
  neyer,
  threePhase,
  entropy,
  gaussianProcess,
];

/** Every method, on the same seeds. */
export const allMethods: readonly Method[] = [...usualMethods, ...peers];

/** With the bound, which is played only by its name. */
export const methodsAndBound: readonly Method[] = [...allMethods, oracle];

/** The names meant by an option: none for the usual four, `all`, or names with commas; null where one is unknown. */
export const methodNames = (wish: string | undefined): readonly string[] | null => {
  if (wish === undefined) return usualMethods.map(({ name }) => name);
  const known = allMethods.map(({ name }) => name);
  if (wish === 'all') return known;
  const names = wish.split(',');
  return names.every((name) => known.includes(name) || name === oracle.name) ? names : null;
};
