import { createHmac, randomInt, timingSafeEqual } from 'node:crypto';
import { done, refused, type Outcome } from '../core/problem.ts';

/** What a phone types, and until when it holds. ISO 8601, UTC. */
export interface PairingCode {
  readonly code: string;
  readonly validUntil: string;
}

/** Lets phones in by a code that the desk shows. */
export interface Pairing {
  readonly code: () => PairingCode;
  /** Gives a token for a right code; the code is spent by it. Refuses: `pairing-code-wrong`. */
  readonly redeem: (code: string) => Outcome<string>;
  readonly accepts: (token: string) => boolean;
}

export interface PairingOptions {
  /** Signs tokens. Kept with the data, so that a phone stays paired when the server starts anew. */
  readonly key: Uint8Array;
  /** ISO 8601, UTC. */
  readonly now: () => string;
}

/** A code holds for ten minutes, for one phone and for ten wrong tries by all who try. */
export const codeMinutes = 10;
const wrongTries = 10;
/** A phone stays paired for a working day. */
export const tokenHours = 12;

export const openPairing = ({ key, now }: PairingOptions): Pairing => {
  const in_ = (minutes: number): string =>
    new Date(Date.parse(now()) + minutes * 60_000).toISOString();
  const fresh = (): PairingCode & { tries: number } => ({
    code: String(randomInt(1_000_000)).padStart(6, '0'),
    validUntil: in_(codeMinutes),
    tries: 0,
  });
  let current = fresh();
  const code = (): PairingCode => {
    if (current.validUntil <= now() || current.tries >= wrongTries) current = fresh();
    return { code: current.code, validUntil: current.validUntil };
  };
  const signed = (until: string): string =>
    `${until}.${createHmac('sha256', key).update(`phone until ${until}`).digest('base64url')}`;
  return {
    code,
    redeem: (typed) => {
      if (!same(typed.replace(/\s/g, ''), code().code)) {
        current.tries += 1;
        return refused('pairing-code-wrong');
      }
      current = fresh();
      return done(signed(in_(tokenHours * 60)));
    },
    accepts: (token) => {
      // ISO times hold a point of their own before the milliseconds.
      const until = token.slice(0, token.lastIndexOf('.'));
      return same(token, signed(until)) && until > now();
    },
  };
};

/** Compares in a time that tells nothing of where two texts differ. */
const same = (one: string, other: string): boolean => {
  const [a, b] = [Buffer.from(one), Buffer.from(other)];
  return a.length === b.length && timingSafeEqual(a, b);
};
