import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';
import type { PairedPhone, PairingNow, PhoneAltered, PhonesKept } from '../app/ports/phones.ts';
import { omit } from '../core/omit.ts';
import { done, refused, type Outcome } from '../core/problem.ts';
import { usualRole, type Role } from '../core/role.ts';

/** What a phone types, until when it holds (ISO 8601, UTC), and what that phone may do then. */
export interface PairingCode {
  readonly code: string;
  readonly validUntil: string;
  readonly role: Role;
}

/** `closed`: nobody asked for a code; `paused`: too many tried wrong ones, until then. */
export type PairingState =
  | { readonly kind: 'open'; readonly code: PairingCode }
  | { readonly kind: 'paused'; readonly until: string }
  | { readonly kind: 'closed' };

/** Lets phones in by a code that somebody asked for who runs the place. Throws what the store throws. */
export interface Pairing {
  readonly state: () => Promise<PairingState>;
  /**
   * Someone asks for a code: the one that is open, or a new one. Ends a pause. `role`: what the phone may do; absent: as was
   * said of the open one, else the usual.
   */
  readonly open: (role?: Role) => Promise<PairingCode>;
  /** Gives a token for a right code; the code is spent by it. Refuses: `pairing-code-wrong`, `pairing-not-open`. */
  readonly redeem: (code: string, name: string) => Promise<Outcome<string>>;
  /** The phone that shows this token, noted as seen. */
  readonly phoneOf: (token: string) => Promise<PairedPhone | undefined>;
  readonly phones: () => Promise<readonly PairedPhone[]>;
  /** The phone after it; undefined where there is none. */
  readonly alter: (id: string, to: PhoneAltered) => Promise<PairedPhone | undefined>;
  /** Whether there was such a phone. */
  readonly remove: (id: string) => Promise<boolean>;
}

export interface PairingOptions {
  readonly kept: PhonesKept;
  /** ISO 8601, UTC. */
  readonly now: () => string;
  /** Told of a pause and of the code that holds after it, for the terminal alone. */
  readonly paused: (next: PairingCode, from: string) => void;
}

/** A code holds for ten minutes, for one phone and for ten wrong tries by all who try. */
export const codeMinutes = 10;
const wrongTries = 10;
const pauseMinutes = 10;
/** A phone stays paired while it is used: this long after it was seen last. */
export const idleDays = 90;
/** A phone in use is noted as seen no more often than that. */
const noteEveryMinutes = 60;

const closed: PairingNow = { misses: 0, byItself: false };

export const openPairing = ({ kept, now, paused }: PairingOptions): Pairing => {
  const isUsed = ({ lastSeenAt }: PairedPhone): boolean =>
    later(lastSeenAt, idleDays * 24 * 60) > now();

  return {
    state: () => kept.read(async (session) => stateOf(await session.now(), now())),
    open: (role) =>
      kept.change(async (session) => {
        const at = now();
        const current = await session.now();
        const known = stateOf(current, at);
        if (known.kind !== 'open') {
          const made = codeFrom(at, role ?? usualRole);
          await session.putNow({ code: { ...made, from: at }, misses: 0, byItself: false });
          return made;
        }
        const code = { ...known.code, role: role ?? known.code.role };
        if (current.code !== undefined && code.role !== known.code.role)
          await session.putNow({ ...current, code: { ...current.code, role: code.role } });
        return code;
      }),
    redeem: async (typed, name) => {
      let pause: Paused | undefined;
      const token = await kept.change(async (session): Promise<Outcome<string>> => {
        const at = now();
        const current = await session.now();
        const known = stateOf(current, at);
        if (known.kind !== 'open') return refused('pairing-not-open');
        if (!same(typed.replace(/\s/g, ''), known.code.code)) {
          const missed = afterMiss(current, at);
          pause = missed.pause;
          await session.putNow(missed.now);
          return refused('pairing-code-wrong');
        }
        await session.putNow(closed);
        for (const phone of await session.phones())
          if (!isUsed(phone)) await session.remove(phone.id);
        const made = randomBytes(32).toString('base64url');
        const id = randomBytes(8).toString('hex');
        const { role } = known.code;
        await session.add({
          ...{ id, name, role },
          tokenHash: hashOf(made),
          pairedAt: at,
          lastSeenAt: at,
        });
        return done(made);
      });
      if (pause !== undefined) paused(pause.next, pause.from);
      return token;
    },
    phoneOf: async (token) => {
      if (token === '') return undefined;
      const phone = await kept.read((session) => session.phoneOf(hashOf(token)));
      if (phone === undefined || !isUsed(phone)) return undefined;
      const at = now();
      if (later(phone.lastSeenAt, noteEveryMinutes) <= at) await noteSeen(kept, phone.id, at);
      return phone;
    },
    phones: () => kept.read(async (session) => (await session.phones()).filter(isUsed)),
    alter: (id, to) => kept.change((session) => session.alter(id, to)),
    remove: (id) => kept.change((session) => session.remove(id)),
  };
};

/** A store that takes no changes now lets its phones look all the same. */
const noteSeen = async (kept: PhonesKept, id: string, at: string): Promise<void> => {
  try {
    await kept.change((session) => session.noteSeen(id, at));
  } catch (thrown) {
    if (!(thrown instanceof Error && 'problem' in thrown)) throw thrown;
  }
};

const stateOf = ({ code }: PairingNow, at: string): PairingState => {
  if (code === undefined || code.validUntil <= at) return { kind: 'closed' };
  if (code.from > at) return { kind: 'paused', until: code.from };
  return { kind: 'open', code: omit(code, 'from') };
};

interface Paused {
  readonly next: PairingCode;
  readonly from: string;
}

const afterMiss = (
  current: PairingNow,
  at: string,
): { readonly now: PairingNow; readonly pause?: Paused } => {
  const misses = current.misses + 1;
  if (misses < wrongTries) return { now: { ...current, misses } };
  if (current.byItself) return { now: closed };
  const from = later(at, pauseMinutes);
  const next = codeFrom(from, current.code?.role ?? usualRole);
  return {
    now: { code: { ...next, from }, misses: 0, byItself: true },
    pause: { next, from },
  };
};

const codeFrom = (from: string, role: Role): PairingCode => ({
  role,
  code: String(randomInt(1_000_000)).padStart(6, '0'),
  validUntil: later(from, codeMinutes),
});

const later = (at: string, minutes: number): string =>
  new Date(Date.parse(at) + minutes * 60_000).toISOString();

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

/** Compares in a time that tells nothing of where two texts differ. */
const same = (one: string, other: string): boolean => {
  const [a, b] = [Buffer.from(one), Buffer.from(other)];
  return a.length === b.length && timingSafeEqual(a, b);
};
