import { z } from 'zod';
import { unitChoiceNames } from '../core/units/unitPreference.ts';

/** The unit of speed, and with it all units, in which a printed page speaks; absent: mm/s, and mm. */
export const unitsWanted = z.enum(unitChoiceNames).exactOptional();
