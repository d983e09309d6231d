import type { CurveChange } from '../metering/compareMeterings.ts';
import { lightSuspects, whereToLook, type Suspect } from '../metering/whereToLook.ts';
import type { LaserOrWood } from './laserOrWood.ts';

/** What a person may look at; each has its sentence, and its cautions, in the words layer. */
export type LookAt = Suspect | 'moisture' | 'batch' | 'thickness' | 'count-on';

/** The meter, since it must be read in the panel, after what is looked at from outside, before what is dear. */
const laserLooks: readonly LookAt[] = lightSuspects.flatMap((suspect) =>
  suspect === 'mirrors' ? ['meter', suspect] : [suspect],
);

/** Cheapest first. Common practice, no source. */
const woodLooks: readonly LookAt[] = ['thickness', 'moisture', 'batch'];

/**
 * What to look at next, cheapest first. `meter`: how the tube's curve moved since an earlier metering, where there are two; one
 * that moved points at what feeds the tube, and is put before the optics; one that did not leaves the meter out.
 */
export const whatToLookAt = (
  pointsAt: LaserOrWood['pointsAt'],
  meter?: CurveChange['how'],
): readonly LookAt[] => {
  switch (pointsAt) {
    case 'neither':
      return ['count-on'];
    case 'wood':
      return woodLooks;
    case 'laser':
      return laserLooksBy(meter);
    case 'both':
    case 'unclear': {
      const [first, ...rest] = laserLooksBy(meter);
      return [...(first === undefined ? [] : [first]), ...woodLooks, ...rest];
    }
  }
};

const laserLooksBy = (how: CurveChange['how'] | undefined): readonly LookAt[] => {
  if (how === undefined) return laserLooks;
  const { at, suspects } = whereToLook({ how }, 'weaker');
  if (at === 'current') {
    const rest = laserLooks.filter((look) => look !== 'meter' && !suspects.some((s) => s === look));
    return [...suspects, ...rest];
  }
  return laserLooks.filter((look) => look !== 'meter');
};
