import { undescribedMachine } from '../../core/machine/machine.ts';
import { defaultMachineId, type WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { defaultPromise } from '../../core/reading/promise.ts';
import type { Stock } from '../../core/stock/stock.ts';
import type { Study } from '../../core/study/study.ts';
import { newId } from './newId.ts';

/** A study with nothing in it but its sheet. Nothing is saved until it is started. */
export const newStudy = (
  stock: Stock,
  of: Pick<WorkshopMachine, 'id' | 'machine' | 'changes'> = anyMachine,
): Study => ({
  version: 1,
  id: newId(),
  isExample: false,
  createdAt: new Date().toISOString(),
  stock,
  machineId: of.id,
  machine: of.machine,
  machineChanges: of.changes,
  promise: defaultPromise,
  aim: 'fastest',
  ask: {},
  tallies: [],
  cards: [],
  events: [],
});

/** The one that sheets are begun on, of which the first screen knows nothing. */
const anyMachine = { id: defaultMachineId, machine: undescribedMachine, changes: [] };

/** The commonest sheet on the bed of a small laser. Common practice, no source. */
export const commonStock: Stock = {
  material: 'plywood',
  nominalThicknessMm: 3,
  thicknessReadingsMm: [],
};

/** A power setting that many run for it. Common practice, no source. */
export const commonPowerPct = 30;
