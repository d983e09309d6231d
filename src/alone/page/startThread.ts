import Thread from '../thread/thread.ts?worker&inline';
import type { ProgramName } from '../thread/thread.ts';

/** Starts one of the page's threads, from this very file. */
export const startThread = (name: ProgramName): Worker => new Thread({ name });
