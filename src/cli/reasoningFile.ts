import { reasoningFileBy } from '../served/files/makeReasoningFile.ts';
import { printer } from './printer.ts';

/** The page of reasons of a stored study, as this program makes it. */
export const reasoningFile = reasoningFileBy(printer);
