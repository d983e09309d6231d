import { firstCard } from '../../src/web/state/firstCard.ts';
import type { Study } from '../../src/core/study/study.ts';

const post = async (address: string, body: unknown, method = 'POST'): Promise<unknown> => {
  const reply = await fetch(address, {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!reply.ok) throw new Error(`${address}: ${String(reply.status)} ${await reply.text()}`);
  return reply.json();
};

let made = 0;
const letters = 'ACDEFGHJKLMNPQRTUVWXY';

/** Puts a sheet with cards of twelve shapes into the workshop, by its API. */
export const putSheet = async (
  base: string,
  { cards = 1, material = 'plywood' } = {},
): Promise<{ readonly id: string; readonly codes: readonly string[] }> => {
  const id = `sheet-${String((made += 1))}`;
  const stock = { material, nominalThicknessMm: 3, thicknessReadingsMm: [] };
  await post(`${base}/api/studies`, { id, stock });
  const codes = Array.from(
    { length: cards },
    (_, i) =>
      `${letters.charAt(made % 21)}${letters.charAt(Math.floor(made / 21))}A${letters.charAt(i)}`,
  );
  for (const code of codes)
    await post(`${base}/api/studies/${id}/cards`, { card: firstCard(code) });
  return { id, codes };
};

export const storedStudy = async (base: string, id: string): Promise<Study> => {
  const reply = await fetch(`${base}/api/studies/${id}`);
  return ((await reply.json()) as { readonly study: Study }).study;
};

/** The cells that were said to be something, in the order in which it was said. */
export const cellsSaid = async (base: string, id: string): Promise<readonly string[]> =>
  (await storedStudy(base, id)).events.flatMap((event) => ('cell' in event ? [event.cell] : []));

export const sendEvents = (base: string, id: string, events: unknown): Promise<unknown> =>
  post(`${base}/api/studies/${id}/events`, { events });

export const removeCard = async (base: string, id: string, code: string): Promise<void> => {
  await fetch(`${base}/api/studies/${id}/cards/${code}`, { method: 'DELETE' });
};
