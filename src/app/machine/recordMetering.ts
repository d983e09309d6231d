import { meterReport, type MeterReport } from '../../core/metering/meterReport.ts';
import type { Metering } from '../../core/metering/metering.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { ofItsMachine } from '../shared/machineOfTest.ts';
import type { Ports } from '../ports/ports.ts';
import { sameValue } from '../../core/sameValue.ts';

/** A metering whose id and time may be left to the tool. */
export type MeteringToRecord = Omit<Metering, 'id' | 'at' | 'version' | 'isExample'> & {
  readonly id?: string;
  readonly at?: string;
};

/** A stored metering, with what it says. */
export interface MeteringRead {
  readonly metering: Metering;
  readonly report: Outcome<MeterReport>;
}

/**
 * Stores a metering with its date. The same one sent twice is stored once. Refuses readings that make no curve, and
 * `metering-id-taken`, `machine-not-found`.
 */
export const recordMetering = (
  ports: Ports,
  asked: MeteringToRecord,
): Promise<Outcome<MeteringRead>> =>
  ports.store.change(async (session) => {
    const own = await ofItsMachine(session, ports, asked);
    if (!own.ok) return own;
    const metering: Metering = {
      ...own.value,
      version: 1,
      id: asked.id ?? ports.ids.newId(),
      at: asked.at ?? ports.clock.now(),
    };
    const report = meterReport(metering);
    if (!report.ok) return report;
    const known = await session.metering(metering.id);
    if (known === undefined) {
      await session.insertMetering(metering);
      return done({ metering, report });
    }
    const compared = asked.at === undefined ? { ...metering, at: known.at } : metering;
    return sameValue(known, compared)
      ? done({ metering: known, report })
      : refused('metering-id-taken', { id: metering.id });
  });
