import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { PairedPhone } from '../app/ports/phones.ts';
import { authorNamed } from '../core/author.ts';
import { done, refused } from '../core/problem.ts';
import { mayDo, usualRole, type Role } from '../core/role.ts';
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
 * Lets the desk through as it is, and a phone once it has typed the code,
 * to what its role may do. The page itself holds nothing of the workshop
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
  const roleNow = async (request: FastifyRequest): Promise<Role | undefined> => {
    if (atDesk(request)) return 'runs-the-place';
    const phone = await phoneOf(request);
    if (phone !== undefined) letThrough.set(request, phone);
    return phone?.role;
  };
  const told = async (request: FastifyRequest) => {
    const role = await roleNow(request);
    const { by: name } = authorNamed(letThrough.get(request)?.name);
    const stands = await howItStands(lan, request, role);
    return done(name === undefined ? stands : { ...stands, name });
  };
  const tooLow = (reply: FastifyReply, role: Role, least: Role) =>
    sendRefusal(reply, { code: 'role-too-low', params: { role, least } });

  app.addHook('onRequest', async (request, reply) => {
    // The route that was found, not the address as written: that may be written in many ways.
    const { url = '', config } = request.routeOptions;
    // A route that says nothing is for who runs the place.
    const { least = 'runs-the-place' } = config;
    if (!url.startsWith('/api/') || least === 'anyone') return undefined;
    const role = await roleNow(request);
    if (role === undefined) return sendRefusal(reply, { code: 'pairing-needed', params: {} });
    return mayDo(role, least) ? undefined : tooLow(reply, role, least);
  });
  app.addHook('preHandler', async (request, reply) => {
    const { body } = request;
    const { leastToSay = {} } = request.routeOptions.config;
    const role = atDesk(request) ? undefined : letThrough.get(request)?.role;
    if (role === undefined || typeof body !== 'object' || body === null) return undefined;
    const [least] = Object.entries(leastToSay).flatMap(([field, needed]) =>
      Object.hasOwn(body, field) && !mayDo(role, needed) ? [needed] : [],
    );
    return least === undefined ? undefined : tooLow(reply, role, least);
  });

  on(app, api.pairing, ({ request }) => told(request));
  on(app, api.openPairing, async ({ query, request }) => {
    await lan?.pairing.open(query.role);
    return told(request);
  });
  on(app, api.changePhone, async ({ params, body }) => {
    const phone = await lan?.pairing.alter(params.id, body);
    if (phone === undefined) return refused('phone-not-found', params);
    changes.tell({ phoneChanged: params.id });
    return done({ phone: seenOf(phone) });
  });
  on(app, api.removePhone, async ({ params }) => {
    const removed = (await lan?.pairing.remove(params.id)) ?? false;
    if (!removed) return refused('phone-not-found', params);
    changes.tell({ phoneOut: params.id });
    return done({ removed: true });
  });
  on(
    app,
    api.pair,
    async ({ body, request, reply }) => {
      if (lan === undefined || atDesk(request))
        return done({ letIn: true, role: 'runs-the-place' });
      const name = body.name ?? pairText.unnamed((await lan.pairing.phones()).length + 1);
      const token = await lan.pairing.redeem(body.code, name);
      if (!token.ok) return token;
      reply.header('set-cookie', cookieFor(token.value, request.protocol));
      const role = (await lan.pairing.phoneOf(token.value))?.role ?? usualRole;
      return done({ letIn: true, role });
    },
    { triesAMinute: 5 },
  );
  return {
    phoneOf,
    roleNow,
    authorOf: (request) =>
      authorNamed(atDesk(request) ? cookieIn(request, nameCookie) : letThrough.get(request)?.name),
  };
};

const howItStands = async (
  lan: Lan | undefined,
  request: FastifyRequest,
  role: Role | undefined,
): Promise<ReplyOf<typeof api.pairing>> => {
  const desk = atDesk(request);
  const told = {
    lan: lan !== undefined,
    desk,
    letIn: role !== undefined,
    ...(role === undefined ? {} : { role }),
  };
  if (lan === undefined || !mayDo(role, api.openPairing.least)) return told;
  const state = await lan.pairing.state();
  const phones = (await lan.pairing.phones()).map(seenOf);
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

/** What of a phone is told. */
const seenOf = ({ id, name, role, pairedAt, lastSeenAt }: PairedPhone) => ({
  ...{ id, name, role, pairedAt, lastSeenAt },
});

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
