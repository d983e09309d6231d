import type { FastifyInstance } from 'fastify';
import type { Ports } from '../../app/ports/ports.ts';
import type { BedTest } from '../../core/bed/bedTest.ts';
import { done } from '../../core/problem.ts';
import { cornersText } from '../../words/en/screens/corners.ts';
import { api, type ReplyOf } from '../../wire/api.ts';
import { on } from '../on.ts';

/** How alike the bed cut in its four corners, kept over time. The calculation is loaded when it is first asked for. */
export const bedRoutes = (app: FastifyInstance, ports: Ports): void => {
  on(app, api.listBedTests, async () => {
    const { listBedTests } = await import('../../app/machine/listBedTests.ts');
    return done({ tests: await listBedTests(ports) });
  });
  on(app, api.recordBedTest, async ({ body }) => {
    const { recordBedTest } = await import('../../app/machine/recordBedTest.ts');
    const recorded = await recordBedTest(ports, body);
    return recorded.ok ? done(await inReply(recorded.value)) : recorded;
  });
  on(app, api.getBedTest, async ({ params }) => {
    const { readBedTest } = await import('../../app/machine/readBedTest.ts');
    const read = await readBedTest(ports, params.id);
    return read.ok ? done(await inReply(read.value)) : read;
  });
  on(app, api.removeBedTest, async ({ params }) => {
    const { removeBedTest } = await import('../../app/machine/removeBedTest.ts');
    const removed = await removeBedTest(ports, params.id);
    return removed.ok ? done({ removed: true }) : removed;
  });
};

const inReply = async (test: BedTest): Promise<ReplyOf<typeof api.getBedTest>> => {
  const { bedTestReport } = await import('../../core/bed/bedTest.ts');
  const { bedPlaces } = await import('../../core/bed/place.ts');
  const { verdict, effects, exact, suspects } = bedTestReport(test);
  return {
    test,
    verdict: verdict.kind,
    sentence: cornersText.verdict(verdict),
    places: bedPlaces.map((place) => {
      const { slowerPct, lowPct, highPct, chanceWeak } = effects.places[place];
      const { p, pOfFour } = exact[place];
      return { place, slowerPct, lowPct, highPct, chanceWeak, exactP: p, exactPOfFour: pOfFour };
    }),
    suspects: suspects.map((suspect) => {
      const [name, how] = cornersText.suspects[suspect];
      return { name, how };
    }),
  };
};
