import { meterReport } from '../../core/metering/meterReport.ts';
import type { Metering } from '../../core/metering/metering.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports, ReadSession } from '../ports/ports.ts';
import type { MeteringRead } from './recordMetering.ts';

/** One metering and what it says. Refuses: `metering-not-found`. */
export const readMetering = async (
  { store }: Pick<Ports, 'store'>,
  id: string,
): Promise<Outcome<MeteringRead>> => {
  const found = await store.read((session) => findMetering(session, id));
  return found.ok ? done({ metering: found.value, report: meterReport(found.value) }) : found;
};

/** The same inside a session, without what it says. */
export const findMetering = async (
  session: ReadSession,
  id: string,
): Promise<Outcome<Metering>> => {
  const metering = await session.metering(id);
  return metering === undefined ? refused('metering-not-found', { id }) : done(metering);
};
