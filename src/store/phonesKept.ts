import type { Kysely } from 'kysely';
import { roles, usualRole, type Role } from '../core/role.ts';
import type {
  PairedPhone,
  PairingNow,
  PhonesChange,
  PhonesKept,
  PhonesRead,
} from '../app/ports/phones.ts';
import type { Engine } from './engine.ts';
import type { PhoneRow, Tables } from './tables.ts';

/** The phones of a workshop over any engine. Throws what the engine throws, explained. */
export const phonesKept = ({ db, explain, beginChange, news }: Engine): PhonesKept => ({
  read: async (work) => {
    try {
      return await work(reading(db));
    } catch (thrown) {
      throw explain(thrown);
    }
  },
  change: async (work) => {
    try {
      return await db.transaction().execute(async (transaction) => {
        await beginChange?.(transaction);
        return work(changing(transaction, news));
      });
    } catch (thrown) {
      throw explain(thrown);
    }
  },
});

const reading = (db: Kysely<Tables>): PhonesRead => ({
  now: async () => {
    const row = await db.selectFrom('pairing').selectAll().executeTakeFirst();
    if (row === undefined) return { misses: 0, byItself: false };
    const { code, valid_until: validUntil, valid_from: from } = row;
    return {
      misses: row.misses,
      byItself: row.by_itself === 1,
      ...(code === null || validUntil === null || from === null
        ? {}
        : { code: { code, validUntil, from, role: roleIn(row.role ?? usualRole) } }),
    };
  },
  phones: async () =>
    (await db.selectFrom('phone').selectAll().orderBy('paired_at').orderBy('id').execute()).map(
      phoneIn,
    ),
  phoneOf: async (tokenHash) => {
    const row = await db
      .selectFrom('phone')
      .selectAll()
      .where('token_hash', '=', tokenHash)
      .executeTakeFirst();
    return row === undefined ? undefined : phoneIn(row);
  },
});

const changing = (db: Kysely<Tables>, news: Engine['news']): PhonesChange => ({
  ...reading(db),
  putNow: async (now) => {
    await db.deleteFrom('pairing').execute();
    if (isClosed(now)) return;
    await db
      .insertInto('pairing')
      .values({
        id: 1,
        code: now.code?.code ?? null,
        valid_from: now.code?.from ?? null,
        valid_until: now.code?.validUntil ?? null,
        misses: now.misses,
        by_itself: now.byItself ? 1 : 0,
        role: now.code?.role ?? null,
      })
      .execute();
  },
  add: async ({ id, name, role, tokenHash, pairedAt, lastSeenAt }) => {
    await db
      .insertInto('phone')
      .values({
        id,
        // As JSON: a name may hold signs that one engine does not take as they are.
        name: JSON.stringify(name),
        role,
        token_hash: tokenHash,
        paired_at: pairedAt,
        last_seen_at: lastSeenAt,
      })
      .onConflict((conflict) => conflict.column('id').doNothing())
      .execute();
  },
  noteSeen: async (id, at) => {
    await db.updateTable('phone').set({ last_seen_at: at }).where('id', '=', id).execute();
  },
  alter: async (id, { name, role }) => {
    const said = {
      ...(name === undefined ? {} : { name: JSON.stringify(name) }),
      ...(role === undefined ? {} : { role }),
    };
    // Something is set in any case: a change of nothing is none that an engine takes.
    const row = await db
      .updateTable('phone')
      .set({ id, ...said })
      .where('id', '=', id)
      .returningAll()
      .executeTakeFirst();
    if (row === undefined) return undefined;
    await news?.announce(db, [{ phoneChanged: id }]);
    return phoneIn(row);
  },
  remove: async (id) => {
    const gone = await db.deleteFrom('phone').where('id', '=', id).returning('id').execute();
    if (gone.length > 0) await news?.announce(db, [{ phoneOut: id }]);
    return gone.length > 0;
  },
});

const isClosed = ({ code, misses, byItself }: PairingNow): boolean =>
  code === undefined && misses === 0 && !byItself;

const phoneIn = (row: PhoneRow): PairedPhone => ({
  id: row.id,
  name: JSON.parse(row.name) as string,
  role: roleIn(row.role),
  tokenHash: row.token_hash,
  pairedAt: row.paired_at,
  lastSeenAt: row.last_seen_at,
});

/** One that nobody knows lets do the least. */
const roleIn = (kept: string): Role => roles.find((role) => role === kept) ?? roles[0];
