import type { FastifyInstance } from 'fastify';
import type { Ports } from '../../app/ports/ports.ts';
import type { FocusTestRead } from '../../app/machine/recordFocusTest.ts';
import { checkGauge, servedThicknessMm } from '../../core/focus/focusAdvice.ts';
import type { Machine } from '../../core/machine/machine.ts';
import { done } from '../../core/problem.ts';
import type { Stock } from '../../core/stock/stock.ts';
import { stockThicknessMm } from '../../core/stock/stockThickness.ts';
import { bounds } from '../../formats/saved/limits.ts';
import { knownBy } from '../../formats/saved/materialKnown.ts';
import { problemInWords } from '../../words/words.ts';
import { api, type ReplyOf } from '../../wire/api.ts';
import type { DrawRampFile } from '../cardFile.ts';
import { on } from '../on.ts';
import { unitsAsked } from '../unitsAsked.ts';

/** Finding the focus: the ramp as a file, and the tests kept over time. */
export const focusRoutes = (app: FastifyInstance, ports: Ports, rampFile: DrawRampFile): void => {
  on(app, api.listFocusTests, async () => {
    const { listFocusTests } = await import('../../app/machine/listFocusTests.ts');
    return done({ tests: await listFocusTests(ports) });
  });
  on(app, api.recordFocusTest, async ({ body }) => {
    const { recordFocusTest } = await import('../../app/machine/recordFocusTest.ts');
    const recorded = await recordFocusTest(ports, body);
    return recorded.ok ? done(inReply(recorded.value)) : recorded;
  });
  on(app, api.getFocusTest, async ({ params }) => {
    const { readFocusTest } = await import('../../app/machine/readFocusTest.ts');
    const read = await readFocusTest(ports, params.id);
    return read.ok ? done(inReply(read.value)) : read;
  });
  on(app, api.removeFocusTest, async ({ params }) => {
    const { removeFocusTest } = await import('../../app/machine/removeFocusTest.ts');
    const removed = await removeFocusTest(ports, params.id);
    return removed.ok ? done({ removed: true }) : removed;
  });
  on(app, api.rampFile, async ({ params: { kind }, query, reply }) => {
    const { designRamp } = await import('../../app/card/designRamp.ts');
    const {
      material,
      materialKnown,
      lengthMm,
      blockMm,
      nozzleGapMm,
      powerPct,
      speedMmPerS,
      studyId,
    } = query;
    const { machine, stock } = await machineOf(ports, studyId);
    const thicknessMm = stock?.material === material ? stockThicknessMm(stock) : undefined;
    const strip = {
      ...knownBy(materialKnown === 'true')({ material }),
      ...(thicknessMm === undefined ? {} : { thicknessMm }),
    };
    const card = designRamp(strip, {
      ramp: { lengthMm, blockMm, nozzleGapMm },
      setting: { powerPct, speedMmPerS, passes: 1 },
      machine,
    });
    if (!card.ok) return card;
    const file = await rampFile({ card: card.value, machine, ...unitsAsked(query) }, kind);
    if (!file.ok) return file;
    reply
      .type(file.value.contentType)
      .header('content-disposition', `attachment; filename="focus-ramp.${kind}"`)
      .send(file.value.body);
    return done(undefined);
  });
};

/** Without a study nobody has described the machine here: the page that asks knows its limits. */
const machineOf = async (
  { store }: Pick<Ports, 'store'>,
  studyId: string | undefined,
): Promise<{ readonly machine: Machine; readonly stock?: Stock }> => {
  const stored =
    studyId === undefined ? undefined : await store.read((session) => session.study(studyId));
  const [slowest, fastest] = bounds.speedMmPerS;
  return stored?.study ?? { machine: { maxPowerPct: 100, speedRangeMmPerS: [slowest, fastest] } };
};

const inReply = ({ test, found }: FocusTestRead): ReplyOf<typeof api.getFocusTest> => {
  if (!found.ok) return { test, reason: problemInWords(found.problem) };
  const { alongMm, gapMm, rayleighMm, remarks } = found.value;
  const doubled = (mm: number): number => 2 * mm;
  return {
    test,
    found: {
      alongMm,
      gapMm,
      ...(rayleighMm === null
        ? {}
        : {
            depthMm: {
              value: doubled(rayleighMm.value),
              low: doubled(rayleighMm.low),
              high: doubled(rayleighMm.high),
            },
            servedThicknessMm: servedThicknessMm(rayleighMm, gapMm),
          }),
      ...(test.gaugeMm === undefined ? {} : { gauge: checkGauge(test.gaugeMm, gapMm, rayleighMm) }),
      remarks: remarks.map((remark) => problemInWords(remark)),
    },
  };
};
