import type { Metering } from '../../core/metering/metering.ts';
import type { Ports } from '../ports/ports.ts';

/** All meterings, the latest first. */
export const listMeterings = ({ store }: Pick<Ports, 'store'>): Promise<readonly Metering[]> =>
  store.read((session) => session.meterings());
