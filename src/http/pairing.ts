import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';
import { done, refused, type Outcome } from '../core/problem.ts';

/** What a phone types, and until when it holds. ISO 8601, UTC. */
export interface PairingCode {
  readonly code: string;
  readonly validUntil: string;
}

/** A phone that was let in. What it shows on every request is kept as a hash alone. */
export interface PairedPhone {
  readonly id: string;
  readonly name: string;
  readonly tokenHash: string;
  readonly pairedAt: string;
  readonly lastSeenAt: string;
}

/** Where the phones are kept, so that they stay paired when the server starts anew. */
export interface PhoneList {
  readonly read: () => readonly PairedPhone[];
  readonly write: (phones: readonly PairedPhone[]) => void;
}

/** `closed`: nobody asked for a code; `paused`: too many tried wrong ones, until then. */
export type PairingState =
  | { readonly kind: 'open'; readonly code: PairingCode }
  | { readonly kind: 'paused'; readonly until: string }
  | { readonly kind: 'closed' };

/** Lets phones in by a code that the desk asked for. */
export interface Pairing {
  readonly state: () => PairingState;
  /** Someone at the desk asks for a code: the one that is open, or a new one. Ends a pause. */
  readonly open: () => PairingCode;
  /** Gives a token for a right code; the code is spent by it. Refuses: `pairing-code-wrong`, `pairing-not-open`. */
  readonly redeem: (code: string, name: string) => Outcome<string>;
  /** The phone that shows this token, noted as seen. */
  readonly phoneOf: (token: string) => PairedPhone | undefined;
  readonly phones: () => readonly PairedPhone[];
  /** Whether there was such a phone. */
  readonly remove: (id: string) => boolean;
}

export interface PairingOptions {
  readonly list: PhoneList;
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

interface Now {
  readonly code?: PairingCode & { readonly from: string };
  readonly misses: number;
  /** The code came by itself after a pause: another pause is followed by none. */
  readonly byItself: boolean;
}

const closed: Now = { misses: 0, byItself: false };

export const openPairing = ({ list, now, paused }: PairingOptions): Pairing => {
  const later = (at: string, minutes: number): string =>
    new Date(Date.parse(at) + minutes * 60_000).toISOString();
  const made = (from: string): PairingCode & { readonly from: string } => ({
    code: String(randomInt(1_000_000)).padStart(6, '0'),
    validUntil: later(from, codeMinutes),
    from,
  });
  let current = closed;
  let phones = list.read();
  const keep = (changed: readonly PairedPhone[]): void => {
    phones = changed;
    list.write(changed);
  };
  const isUsed = ({ lastSeenAt }: PairedPhone): boolean =>
    later(lastSeenAt, idleDays * 24 * 60) > now();

  const state = (): PairingState => {
    const { code } = current;
    if (code === undefined || code.validUntil <= now()) return { kind: 'closed' };
    if (code.from > now()) return { kind: 'paused', until: code.from };
    return { kind: 'open', code: { code: code.code, validUntil: code.validUntil } };
  };

  const miss = (): void => {
    current = { ...current, misses: current.misses + 1 };
    if (current.misses < wrongTries) return;
    if (current.byItself) {
      current = closed;
      return;
    }
    const from = later(now(), pauseMinutes);
    const next = made(from);
    current = { code: next, misses: 0, byItself: true };
    paused(next, from);
  };

  return {
    state,
    open: () => {
      const known = state();
      if (known.kind === 'open') return known.code;
      const { code, validUntil } = made(now());
      current = { code: { code, validUntil, from: now() }, misses: 0, byItself: false };
      return { code, validUntil };
    },
    redeem: (typed, name) => {
      const known = state();
      if (known.kind !== 'open') return refused('pairing-not-open');
      if (!same(typed.replace(/\s/g, ''), known.code.code)) {
        miss();
        return refused('pairing-code-wrong');
      }
      current = closed;
      const token = randomBytes(32).toString('base64url');
      const at = now();
      const id = randomBytes(8).toString('hex');
      const phone = { id, name, tokenHash: hashOf(token), pairedAt: at, lastSeenAt: at };
      keep([...phones.filter(isUsed), phone]);
      return done(token);
    },
    phoneOf: (token) => {
      const hash = hashOf(token);
      const phone = phones.find(({ tokenHash }) => same(tokenHash, hash));
      if (phone === undefined || !isUsed(phone)) return undefined;
      if (later(phone.lastSeenAt, noteEveryMinutes) <= now())
        keep(phones.map((one) => (one.id === phone.id ? { ...one, lastSeenAt: now() } : one)));
      return phone;
    },
    phones: () => phones.filter(isUsed),
    remove: (id) => {
      const left = phones.filter((one) => one.id !== id);
      const isThere = left.length < phones.length;
      if (isThere) keep(left);
      return isThere;
    },
  };
};

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

/** Compares in a time that tells nothing of where two texts differ. */
const same = (one: string, other: string): boolean => {
  const [a, b] = [Buffer.from(one), Buffer.from(other)];
  return a.length === b.length && timingSafeEqual(a, b);
};
