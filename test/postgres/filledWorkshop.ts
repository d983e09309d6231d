import { settingSubjects } from '../../src/core/marking/settingSubjects.ts';
import { done } from '../../src/core/problem.ts';
import type { OpenedStore } from '../../src/store/kyselyStore.ts';
import {
  savedStudy,
  sampleBedTest,
  sampleCard,
  sampleEntry,
  sampleEvent,
  sampleFocusTest,
  sampleKerfTest,
  sampleMarkTest,
  sampleMachine,
  sampleMetering,
  sampleOrder,
  sampleStudy,
  sampleTally,
  sampleTime,
} from '../samples/studies.ts';

/** Names as people and broken keyboards type them: any script, signs that queries use, NUL, half a surrogate pair. */
export const oddNames = [
  'Sperrholz „Ünïcode“ 3 mm',
  '合板 ベニヤ фанера خشب',
  `50% off_'; drop table study; -- \\ "x"`,
  'nul \0 inside, half \ud83d a pair, whole \u{1f525}',
  '',
] as const;

/** Something in every table, under names of every kind; more events and photographs than are copied at once. */
export const fillWorkshop = async (store: OpenedStore, events = 1_203): Promise<void> => {
  await store.phones.change(async (session) => {
    for (const [i, name] of oddNames.entries())
      await session.add({
        id: `p${String(i)}`,
        name,
        role: 'decides',
        tokenHash: `hash ${String(i)}`,
        pairedAt: sampleTime,
        lastSeenAt: sampleTime,
      });
  });
  await store.change(async (session) => {
    await session.insertMachine(sampleMachine());
    for (const [i, name] of oddNames.entries()) {
      const id = `s${String(i)}`;
      const code = `K${String(i)}QX`;
      const { stock } = sampleStudy(id);
      await session.insertStudy(
        sampleStudy(id, {
          stock: { ...stock, material: oneLine(name) },
          cards: [sampleCard(code, { note: name })],
          events: Array.from({ length: i === 0 ? events : 3 }, (_, n) =>
            sampleEvent(`e${String(n)}`, { cardCode: code }),
          ),
          orders: [sampleOrder(`o${String(i)}`, { name: oneLine(name) })],
          tallies: [sampleTally(`t${String(i)}`)],
        }),
        sampleTime,
      );
      const entry = sampleEntry(`b${String(i)}`, { note: name });
      await session.insertEntry(entry);
      await session.noteChange({
        version: 1,
        ...{ id: `h${String(i)}`, at: sampleTime, settingId: entry.id, after: entry },
      });
    }
    for (let i = 0; i < 24; i += 1)
      await session.keepPhoto(
        { studyId: `s${String(i % oddNames.length)}`, code: `K${String(i)}` },
        {
          side: i % 2 === 0 ? 'front' : 'back',
          keptAt: sampleTime,
          widthPx: 40,
          heightPx: 30,
          jpeg: Uint8Array.from({ length: 500 + i }, (_, n) => (n * 31 + i) % 256),
        },
      );
    for (let i = 0; i < 12; i += 1)
      await session.keepSettingPhoto(`b${String(i % 4)}`, {
        subject: settingSubjects[Math.floor(i / 4)] ?? 'tape',
        keptAt: sampleTime,
        widthPx: 40,
        heightPx: 30,
        jpeg: Uint8Array.from({ length: 300 + i }, (_, n) => (n * 17 + i) % 256),
      });
    await session.insertTally(undefined, sampleTally('loose', { provenSettingId: 'b1' }));
    await session.insertMachineTest('metering', sampleMetering('same'));
    await session.insertMachineTest('focus-test', sampleFocusTest('same'));
    await session.insertMachineTest('bed-test', sampleBedTest('c1'));
    await session.insertMachineTest('kerf-test', sampleKerfTest('k1'));
    await session.insertMachineTest('mark-test', sampleMarkTest('e1'));
    await session.keepRemoved({
      study: savedStudy(sampleStudy('gone')),
      removedAt: sampleTime,
    });
    return done(undefined);
  });
};

/** Labels hold no control characters. */
const oneLine = (name: string): string =>
  name
    .replace(/\p{Cc}/gu, ' ')
    .trim()
    .slice(0, 40) || 'plywood';
