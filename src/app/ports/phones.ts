import type { Role } from '../../core/role.ts';

/** A phone that was let in. What it shows on every request is kept as a hash alone. Times: ISO 8601, UTC. */
export interface PairedPhone {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly tokenHash: string;
  readonly pairedAt: string;
  readonly lastSeenAt: string;
}

/** What is said anew of a phone; what is absent stays. */
export type PhoneAltered = Partial<Pick<PairedPhone, 'name' | 'role'>>;

/** Who gets in just now, as all programs at work in one workshop know it. */
export interface PairingNow {
  /** Absent: nobody asked for one. It holds `from` then, which may not have come yet. */
  readonly code?: {
    readonly code: string;
    readonly validUntil: string;
    readonly from: string;
    /** What the phone may do that types it. */
    readonly role: Role;
  };
  /** Wrong codes that were typed. */
  readonly misses: number;
  /** The code came by itself after a pause: another pause is followed by none. */
  readonly byItself: boolean;
}

/**
 * Where phones are kept, beside the workshop's things, so that all programs at work in it let in the same ones. A change is
 * whole or not at all, and changes are made one after another, also by several programs.
 */
export interface PhonesKept {
  readonly read: <T>(work: (session: PhonesRead) => Promise<T>) => Promise<T>;
  readonly change: <T>(work: (session: PhonesChange) => Promise<T>) => Promise<T>;
}

export interface PhonesRead {
  readonly now: () => Promise<PairingNow>;
  /** Those paired first come first. */
  readonly phones: () => Promise<readonly PairedPhone[]>;
  readonly phoneOf: (tokenHash: string) => Promise<PairedPhone | undefined>;
}

export interface PhonesChange extends PhonesRead {
  readonly putNow: (now: PairingNow) => Promise<void>;
  /** One whose id is known is passed over. */
  readonly add: (phone: PairedPhone) => Promise<void>;
  readonly noteSeen: (id: string, at: string) => Promise<void>;
  /** The phone after it; undefined where there is none. Other programs hear of it. */
  readonly alter: (id: string, to: PhoneAltered) => Promise<PairedPhone | undefined>;
  /** Whether there was such a phone. Other programs hear of it. */
  readonly remove: (id: string) => Promise<boolean>;
}
