import type { Danger } from './danger.ts';
import { kerfDangers } from './kerf.cases.ts';
import { limitDangers } from './limits.cases.ts';

/** Every danger that is tried at every door. A new file of cases is one line here. */
export const dangers: readonly Danger[] = [...limitDangers, ...kerfDangers];
