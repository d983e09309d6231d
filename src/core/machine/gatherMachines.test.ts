import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gatherMachines, machineName } from './gatherMachines.ts';
import { undescribedMachine, type Machine } from './machine.ts';

const described = fc.record(
  {
    name: fc.constantFrom('door', ' Door', 'window'),
    ratedCurrentMa: fc.constantFrom(20, 24),
    powerRampStartMmPerS: fc.constantFrom(5, 15),
  },
  { requiredKeys: [] },
);
const machineOf = (part: object): Machine => ({ ...undescribedMachine, ...part });

describe('machines gathered from descriptions', () => {
  it('have each description once, and share no name', () => {
    fc.assert(
      fc.property(fc.array(described, { maxLength: 8 }), (parts) => {
        const given = parts.map((part, i) => ({ key: String(i), machine: machineOf(part) }));
        const found = gatherMachines(given);
        expect(found.flatMap(({ keys }) => keys).sort()).toEqual(
          given.map(({ key }) => key).sort(),
        );
        const names = found.map(({ machine }) => machineName(machine));
        expect(new Set(names).size).toBe(names.length);
      }),
    );
  });

  it('say of each figure what the newest description says that has one', () => {
    fc.assert(
      fc.property(fc.array(described, { minLength: 1, maxLength: 8 }), (parts) => {
        const given = parts.map((part, i) => ({ key: String(i), machine: machineOf(part) }));
        for (const { machine, keys } of gatherMachines(given)) {
          const own = given.filter(({ key }) => keys.includes(key));
          const newest = own.find((each) => each.machine.ratedCurrentMa !== undefined);
          expect(machine.ratedCurrentMa).toBe(newest?.machine.ratedCurrentMa);
        }
      }),
    );
  });
});
