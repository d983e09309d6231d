import { deliveredOrSetting } from '../tube/deliveredPower.ts';
import type { Machine } from '../machine/machine.ts';
import type { SheetOnTube } from './priors.ts';

/** How strong a machine is, as far as it was said: by the watts of its tube, else by a slow setting that has cut. */
export const strengthOf = (machine: Machine): Pick<SheetOnTube, 'nominalW' | 'slowCut'> => {
  const { nominalW, slowCut } = machine;
  if (nominalW !== undefined) return { nominalW };
  if (slowCut === undefined) return {};
  const { powerPct, ...cut } = slowCut;
  return { slowCut: { ...cut, deliveredFraction: deliveredOrSetting(machine)(powerPct) } };
};

/** Nobody has been asked yet how strong it is. */
export const isStrengthOpen = ({ nominalW, slowCut, strengthUnknown }: Machine): boolean =>
  nominalW === undefined && slowCut === undefined && strengthUnknown === undefined;
