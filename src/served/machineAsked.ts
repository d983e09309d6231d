import type { Air } from '../core/machine/air.ts';
import { undescribedMachine, type Machine } from '../core/machine/machine.ts';
import type { Setting } from '../core/machine/setting.ts';
import { done, refused, type Outcome } from '../core/problem.ts';
import type { ServedPorts } from './servedPorts.ts';

/** A setting as an address spells it. */
export interface SettingInAddress {
  readonly powerPct: number;
  readonly minPowerPct?: number;
  readonly speedMmPerS: number;
  readonly passes?: number;
  /** A number: kPa. */
  readonly air?: 'off' | 'pump' | number;
}

export const settingAsked = ({
  powerPct,
  minPowerPct,
  speedMmPerS,
  passes = 1,
  air,
}: SettingInAddress): Setting => ({
  powerPct,
  ...(minPowerPct === undefined ? {} : { minPowerPct }),
  speedMmPerS,
  passes,
  ...(air === undefined ? {} : { air: airOf(air) }),
});

const airOf = (air: NonNullable<SettingInAddress['air']>): Air =>
  typeof air === 'number' ? { kPa: air } : air;

/** Of this id; absent, that of the sheet on the bed, or one that nobody has described. */
export const machineAsked = (
  { store }: Pick<ServedPorts, 'store'>,
  machineId: string | undefined,
): Promise<Outcome<Machine>> =>
  store.read(async (session) => {
    const wanted = machineId ?? (await session.onBed())?.machineId;
    if (wanted === undefined) return done(undescribedMachine);
    const found = await session.machine(wanted);
    if (found !== undefined) return done(found.machine);
    return machineId === undefined
      ? done(undescribedMachine)
      : refused('machine-not-found', { id: machineId });
  });
