import type { MachineTestRead } from '../../app/machine/readMachineTest.ts';
import type { MeterReport } from '../../core/metering/meterReport.ts';
import type { api, ReplyOf } from '../../wire/api.ts';
import { problemInWords } from '../../words/words.ts';

/** A metering as it is sent. */
export const meteringSaid = ({
  test: metering,
  says: report,
}: MachineTestRead<'metering'>): ReplyOf<typeof api.getMetering> => {
  if (!report.ok) return { metering, reason: problemInWords(report.problem) };
  const { curve, lines, rated, remarks } = report.value;
  const { darkAtPct, firesAtPct } = curve.firing;
  const { sdMa, degrees, from } = curve.noise;
  return {
    metering,
    says: {
      ...(darkAtPct === null ? {} : { darkAtPct }),
      firesAtPct,
      noise: { sdMa, degrees, from },
      lines,
      ...(rated === undefined ? {} : { rated: ratedInReply(rated) }),
      remarks: remarks.map((remark) => problemInWords(remark)),
    },
  };
};

type Rated = NonNullable<MeterReport['rated']>;

const ratedInReply = (rated: Rated) => {
  if (!rated.reached) return { keepToPct: rated.keepToPct };
  const { value, low, high } = rated.at;
  return { at: { value, low, ...(high === null ? {} : { high }) }, keepToPct: rated.keepToPct };
};
