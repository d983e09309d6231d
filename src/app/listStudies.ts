import type { Ports } from './ports.ts';
import type { StudySummary } from './stored.ts';

/** All studies, the last touched first. */
export const listStudies = ({ store }: Pick<Ports, 'store'>): Promise<readonly StudySummary[]> =>
  store.read((session) => session.summaries());
