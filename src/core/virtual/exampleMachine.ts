import type { Bed, Machine } from '../machine/machine.ts';
import type { WorkshopMachine } from '../machine/workshopMachine.ts';

export const exampleMachineId = 'example-machine';

export const exampleBed: Bed = { widthMm: 900, heightMm: 600, gapMm: 8 };

/** An invented machine: its meter was read at seven settings. */
export const exampleMachine: Machine = {
  name: 'Larkspur Lane (invented)',
  ratedCurrentMa: 22,
  tubePoints: [
    { powerPct: 15, currentMa: 3.4 },
    { powerPct: 25, currentMa: 6.8 },
    { powerPct: 35, currentMa: 10.1 },
    { powerPct: 45, currentMa: 13.6 },
    { powerPct: 55, currentMa: 16.9 },
    { powerPct: 65, currentMa: 20.1 },
    { powerPct: 75, currentMa: 23.2 },
  ],
  maxPowerPct: 80,
  speedRangeMmPerS: [1, 120],
  bed: exampleBed,
};

/** The same as one of a workshop's machines. */
export const exampleWorkshopMachine = (addedAt: string): WorkshopMachine => ({
  version: 1,
  id: exampleMachineId,
  isExample: true,
  isDefault: false,
  addedAt,
  machine: exampleMachine,
  changes: [],
});
