import type { PhoneAltered, PairedPhone } from '../app/ports/phones.ts';
import { done, refused } from '../core/problem.ts';
import { omit } from '../core/omit.ts';
import { systemClock } from '../host/clock.ts';
import { storePlace } from '../host/storePlace.ts';
import { openPairing, type Pairing } from '../http/pairing.ts';
import { openStore } from '../store/openStore.ts';
import { printJson, printOutcome, type ExitCode } from './output.ts';

/** `phones list`: the phones that are let in, and what each may do. */
export const runPhonesList = (): Promise<ExitCode> =>
  withPairing(async (pairing) => {
    printJson({ version: 1, phones: (await pairing.phones()).map(shown) });
    return 0;
  });

/** `phones change`: lets one do more or less from its next request on, or calls it otherwise. Refuses: `phone-not-found`. */
export const runPhonesChange = (id: string, to: PhoneAltered): Promise<ExitCode> =>
  withPairing(async (pairing) => {
    const phone = await pairing.alter(id, to);
    const outcome = phone === undefined ? refused('phone-not-found', { id }) : done(phone);
    return printOutcome(outcome, (changed) => ({ version: 1, phone: shown(changed) }));
  });

/** What lets a phone in is nobody's to see. */
const shown = (phone: PairedPhone) => omit(phone, 'tokenHash');

const withPairing = async (work: (pairing: Pairing) => Promise<ExitCode>): Promise<ExitCode> => {
  const store = await openStore(storePlace(), systemClock.now());
  try {
    const { now } = systemClock;
    return await work(openPairing({ kept: store.phones, now, paused: () => undefined }));
  } finally {
    await store.close();
  }
};
