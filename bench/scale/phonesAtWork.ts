import { createHash, randomBytes } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import type { ReadingEvent } from '../../src/core/reading/readingEvent.ts';
import type { OpenedStore } from '../../src/store/kyselyStore.ts';

/** Lets so many phones in, as if each had typed a code, and gives what each shows from then on. */
export const letPhonesIn = async (
  { phones }: OpenedStore,
  count: number,
  at: string,
): Promise<readonly string[]> => {
  const tokens = Array.from({ length: count }, () => randomBytes(32).toString('base64url'));
  await phones.change(async (session) => {
    for (const [n, token] of tokens.entries())
      await session.add({
        id: `phone-${String(n)}`,
        name: `phone ${String(n)}`,
        role: 'decides',
        tokenHash: createHash('sha256').update(token).digest('hex'),
        pairedAt: at,
        lastSeenAt: at,
      });
  });
  return tokens;
};

export interface Load {
  readonly base: string;
  /** One a phone; empty: all come from the desk. */
  readonly tokens: readonly string[];
  readonly perSecond: number;
  readonly seconds: number;
  /** Where the n-th grade goes. */
  readonly gradeAt: (n: number) => { readonly studyId: string; readonly event: ReadingEvent };
}

export interface LoadSeen {
  readonly tookMs: readonly number[];
  /** What was not answered with 200, in words. */
  readonly errors: readonly string[];
}

/** Phones that grade at this pace, whether or not the answers keep up with it. */
export const phonesAtWork = async ({
  base,
  tokens,
  perSecond,
  seconds,
  gradeAt,
}: Load): Promise<LoadSeen> => {
  const [tookMs, errors]: [number[], string[]] = [[], []];
  const grade = async (n: number): Promise<void> => {
    const { studyId, event } = gradeAt(n);
    const token = tokens[n % Math.max(1, tokens.length)];
    const began = performance.now();
    try {
      const reply = await fetch(`${base}/api/studies/${studyId}/events`, {
        method: 'POST',
        headers: {
          'content-type': 'application/json',
          ...(token === undefined ? {} : { cookie: `throughcut-phone=${token}` }),
        },
        body: JSON.stringify({ events: [event] }),
      });
      const said = await reply.text();
      if (!reply.ok) errors.push(`${String(reply.status)} ${said.slice(0, 100)}`);
    } catch (thrown) {
      errors.push(String(thrown));
    }
    tookMs.push(performance.now() - began);
  };
  const began = performance.now();
  const all: Promise<void>[] = [];
  for (let n = 0; n < perSecond * seconds; n += 1) {
    // By the clock, so that a slow answer does not slow the phones down.
    const waitMs = began + (n * 1000) / perSecond - performance.now();
    if (waitMs > 0) await pause(waitMs);
    all.push(grade(n));
  }
  await Promise.all(all);
  return { tookMs, errors };
};
