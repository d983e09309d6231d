import { cardFileBy } from '../served/files/makeCardFile.ts';
import { printer } from './printer.ts';

/** The file of one kind of a card of a study that is kept, as this program makes it. */
export const cardFile = cardFileBy(printer);
