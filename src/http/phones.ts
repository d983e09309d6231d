import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { PairedPhone } from '../app/ports/phones.ts';
import { authorNamed } from '../core/author.ts';
import { done, refused } from '../core/problem.ts';
import { api, type ReplyOf } from '../wire/api.ts';
import { pairText } from '../words/texts.ts';
import { atDesk } from './atDesk.ts';
import type { Gate } from './gate.ts';
import type { Changes } from './live.ts';
import { on } from './on.ts';
import type { Pairing } from './pairing.ts';
import { sendRefusal } from './refusal.ts';

/** How phones get in; absent where only this computer is served. */
export interface Lan {
  readonly pairing: Pairing;
  /** Under which names and addresses of this computer a phone may ask. */
  readonly isOwnName: (hostname: string) => boolean;
  /** Where a phone finds the page. */
  readonly addresses: () => readonly string[];
}

/**
 * Lets the desk through as it is, and a phone once it has typed the code. The page itself holds nothing of the workshop
 * and is served to all, so that it can ask for the code.
 */
export const gatePhones = async (
  app: FastifyInstance,
  lan: Lan | undefined,
  changes: Changes,
): Promise<Gate> => {
  if (lan !== undefined) {
    const { default: rateLimit } = await import('@fastify/rate-limit');
    await app.register(rateLimit, { global: false });
  }
  const phoneOf = async (request: FastifyRequest): Promise<PairedPhone | undefined> =>
    lan?.pairing.phoneOf(tokenOf(request));
  /** Which phone was let through with which request: what it says is said under its name. */
  const letThrough = new WeakMap<FastifyRequest, PairedPhone>();
  const letIn = async (request: FastifyRequest): Promise<boolean> => {
    if (atDesk(request)) return true;
    const phone = await phoneOf(request);
    if (phone !== undefined) letThrough.set(request, phone);
    return phone !== undefined;
  };
  const told = async (request: FastifyRequest) => {
    const isLetIn = await letIn(request);
    const { by: name } = authorNamed(letThrough.get(request)?.name);
    const stands = await howItStands(lan, request, isLetIn);
    return done(name === undefined ? stands : { ...stands, name });
  };

  app.addHook('onRequest', async (request, reply) => {
    // The route that was found, not the address as written: that may be written in many ways.
    const route = request.routeOptions.url ?? '';
    if (!route.startsWith('/api/') || openToAll.includes(route) || (await letIn(request)))
      return undefined;
    return sendRefusal(reply, { code: 'pairing-needed', params: {} });
  });

  on(app, api.pairing, ({ request }) => told(request));
  on(app, api.openPairing, async ({ request }) => {
    if (!atDesk(request)) return refused('desk-only');
    await lan?.pairing.open();
    return told(request);
  });
  on(app, api.removePhone, async ({ params, request }) => {
    if (!atDesk(request)) return refused('desk-only');
    const removed = (await lan?.pairing.remove(params.id)) ?? false;
    if (!removed) return refused('phone-not-found', params);
    changes.tell({ phoneOut: params.id });
    return done({ removed: true });
  });
  on(
    app,
    api.pair,
    async ({ body, request, reply }) => {
      if (lan === undefined || atDesk(request)) return done({ letIn: true });
      const name = body.name ?? pairText.unnamed((await lan.pairing.phones()).length + 1);
      const token = await lan.pairing.redeem(body.code, name);
      if (!token.ok) return token;
      reply.header('set-cookie', cookieFor(token.value, request.protocol));
      return done({ letIn: true });
    },
    { triesAMinute: 5 },
  );
  return {
    phoneOf,
    isStillIn: letIn,
    authorOf: (request) =>
      authorNamed(atDesk(request) ? cookieIn(request, nameCookie) : letThrough.get(request)?.name),
  };
};

const howItStands = async (
  lan: Lan | undefined,
  request: FastifyRequest,
  letIn: boolean,
): Promise<ReplyOf<typeof api.pairing>> => {
  const desk = atDesk(request);
  const told = { lan: lan !== undefined, desk, letIn };
  if (lan === undefined || !desk) return told;
  const state = await lan.pairing.state();
  const phones = (await lan.pairing.phones()).map(({ id, name, pairedAt, lastSeenAt }) => ({
    id,
    name,
    pairedAt,
    lastSeenAt,
  }));
  return {
    ...told,
    invitation: {
      addresses: [...lan.addresses()],
      ...(state.kind === 'open' ? state.code : {}),
      ...(state.kind === 'paused' ? { pausedUntil: state.until } : {}),
    },
    phones,
  };
};

const openToAll: readonly string[] = [api.health.path, api.pairing.path, api.pair.path];

/** As long as browsers keep one; when a phone is let in no longer is decided here. */
const cookieDays = 400;
const cookieName = 'throughcut-phone';
/** What the page at the desk keeps there itself: it lets nobody in. */
const nameCookie = 'throughcut-name';

const cookieFor = (token: string, protocol: string): string =>
  `${cookieName}=${encodeURIComponent(token)}; HttpOnly; SameSite=Strict; Path=/; Max-Age=${String(cookieDays * 24 * 3600)}${protocol === 'https' ? '; Secure' : ''}`;

const tokenOf = (request: FastifyRequest): string => cookieIn(request, cookieName);

const cookieIn = ({ headers }: FastifyRequest, name: string): string => {
  const found = new RegExp(`(?:^|;\\s*)${name}=([^;]*)`).exec(headers.cookie ?? '');
  try {
    return decodeURIComponent(found?.[1] ?? '');
  } catch {
    return '';
  }
};
