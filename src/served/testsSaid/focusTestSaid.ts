import type { MachineTestRead } from '../../app/machine/readMachineTest.ts';
import { checkGauge, servedThicknessMm } from '../../core/focus/focusAdvice.ts';
import type { api, ReplyOf } from '../../wire/api.ts';
import { problemInWords } from '../../words/words.ts';

/** A focus test as it is sent. */
export const focusTestSaid = ({
  test,
  says: found,
}: MachineTestRead<'focus-test'>): ReplyOf<typeof api.getFocusTest> => {
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
