import { undescribedMachine, type Machine } from '../../core/machine/machine.ts';
import { machineShape } from '../../formats/saved/machine.ts';

const key = 'throughcut.machine';

/** The machine that new sheets start with: what was last said of it in this browser. */
export const useMachine = (): Machine => rememberedMachine() ?? undescribedMachine;

export const rememberMachine = (machine: Machine): void => {
  try {
    localStorage.setItem(key, JSON.stringify(machine));
  } catch {
    // The study on the bed has it all the same.
  }
};

/** The same where there is one; for what is better left out than assumed. */
export const rememberedMachine = (): Machine | undefined => {
  try {
    const read = machineShape.safeParse(JSON.parse(localStorage.getItem(key) ?? 'null'));
    return read.success ? read.data : undefined;
  } catch {
    return undefined;
  }
};
