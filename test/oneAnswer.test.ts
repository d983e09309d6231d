import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawCounted } from '../bench/counted/drawCounted.ts';
import { drawStudy } from '../bench/calibration/drawStudy.ts';
import { modelSums } from '../src/app/sums/modelSums.ts';
import type { CutStudy, StudyCell } from '../src/core/cutmodel/cutStudy.ts';
import { answerFrom } from '../src/core/cutmodel/fitStudy.ts';
import { fitWithEarlier } from '../src/core/study/answerWithEarlier.ts';
import { seededRandom } from '../src/num/seededRandom.ts';
import { modelCalls } from '../src/web/worker/modelCalls.ts';
import { api } from '../src/wire/api.ts';
import { someOf } from './everyCase.ts';
import { plainStudy } from './plainStudy.ts';
import { testServer, type TestServer } from './samples/server.ts';

/** Cards of twelve cells, each of a batch of its own, whose levels lie apart. */
const ofBatches = (batches: number, seed: number): CutStudy => {
  const random = seededRandom(seed);
  const cells = Array.from({ length: batches }, (_, batch): readonly StudyCell[] => {
    const lnV50 = Math.log(13) + 0.15 * random.normal();
    return Array.from({ length: 12 }, (_cell, i) => {
      const speedMmPerS = 8 + (i % 6) * 2;
      const margin = (lnV50 - Math.log(speedMmPerS)) / 0.08 + random.normal();
      const grade = margin > 0 ? 'out' : margin > -0.8 ? 'hangs' : 'stays';
      return {
        powerPct: 34,
        speedMmPerS,
        passes: 1,
        batch: String(batch),
        sheet: `${String(batch)}.1`,
        grade,
      };
    });
  }).flat();
  return plainStudy({ cells, ask: { powerPct: 34 } });
};

const studies: readonly (readonly [string, CutStudy])[] = someOf([
  ...Array.from({ length: 28 }, (_, seed) => {
    const { study } = drawStudy(seededRandom(seed), false);
    return [`cards, ${String(seed)}`, study] as const;
  }),
  ...Array.from({ length: 12 }, (_, k) => {
    const { before, order } = drawCounted(seededRandom(2001 + k));
    const study = { ...before, tallies: [...before.tallies, order] };
    return [`orders, ${String(2001 + k)}`, study] as const;
  }),
  ...[2, 4, 8, 9, 10, 11, 12, 16, 20, 30].map(
    (batches, k) => [`${String(batches)} batches`, ofBatches(batches, k)] as const,
  ),
]);

/** The study as its file says it: a tally's setting stands beside its counts. */
const fileOf = ({ tallies, ...study }: CutStudy) => ({
  version: 1,
  ...study,
  tallies: tallies.map(({ setting, ...tally }) => ({ ...setting, ...tally })),
});

/** The same question asked of the page's worker, the server, what `calc fit` asks, and the benches. */
describe('the answer to a study', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await testServer();
  });
  afterAll(() => server.close());

  it.each(studies)('is one at every door: %s', async (_, study) => {
    const asked = { study, aim: 'fastest', earlier: [] } as const;
    const ofPage = modelCalls.fit(asked).recommended;
    const ofServer = await server.ask(api.calcFit, { body: fileOf(study) });
    const atCommandLine = await modelSums.answerCutStudy(study);
    const ofBench = answerFrom(fitWithEarlier(study, [])).recommended;

    expect(ofPage).toEqual(ofBench);
    expect(ofServer.recommended).toEqual(ofBench);
    expect(atCommandLine.ok && atCommandLine.value.recommended).toEqual(ofBench);
  });
});
