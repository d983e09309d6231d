// A program of its own that appends events to a store, one a session, and says each one once it is acknowledged.
import { openStore } from '../../build/src/store/openStore.js';

const [place, studyId, name, count] = process.argv.slice(2);
const at = '2031-05-06T07:08:09.000Z';
const store = await openStore(JSON.parse(place), at);
for (let i = 0; i < Number(count); i += 1) {
  const event = {
    id: `${name}${i}`,
    cardCode: 'K7QX',
    at,
    kind: 'graded',
    cell: 'A1',
    grade: 'out',
  };
  await store.change(async (session) => ({
    ok: true,
    value: await session.appendEvents(studyId, [event]),
  }));
  process.stdout.write(`${event.id}\n`);
}
await store.close();
