import { rampFileBy } from '../served/files/makeRampFile.ts';
import { printer } from './printer.ts';

/** The file of one kind of a focus ramp, as this program makes it. */
export const rampFile = rampFileBy(printer);
