import { currentAt, meterCurve, settingAt } from '../../src/core/metering/meterCurve.ts';
import { meterRemarks } from '../../src/core/metering/meterRemarks.ts';
import { meterReport } from '../../src/core/metering/meterReport.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { followPlan, readBy, readers, type Reader } from './readings.ts';
import { trueSettingPct, tubes, type Tube } from './tubes.ts';

/** How wrong the inverse is at worst where nothing scatters: in per cent of the setting, over every current above firing. */
const worstInversePct = (tube: Tube): number => {
  const curve = meterCurve(followPlan(tube, (trueMa) => trueMa));
  if (!curve.ok) throw new Error(curve.problem.code);
  const { between, firing } = curve.value;
  const last = between.x.at(-1) ?? 0;
  let worst = 0;
  for (let pct = firing.firesAtPct; pct <= last; pct += 0.1) {
    const back = settingAt(curve.value, tube.drawsMa(pct));
    if (back.ok) worst = Math.max(worst, 100 * Math.abs(back.value.value / pct - 1));
  }
  return worst;
};

interface Tally {
  inside: number;
  asked: number;
}
const pctOf = ({ inside, asked }: Tally): string => `${((100 * inside) / asked).toFixed(1)} %`;
const note = (tally: Tally, isInside: boolean): void => {
  tally.asked += 1;
  if (isInside) tally.inside += 1;
};

/** Whole meterings by the plan: how often the bands hold the truth, and the kept setting the rating. */
const play = (reader: Reader, tests: number) => {
  const random = seededRandom(20_310_506);
  const current: Tally = { inside: 0, asked: 0 };
  const setting: Tally = { inside: 0, asked: 0 };
  const withinRating: Tally = { inside: 0, asked: 0 };
  const questioned: Tally = { inside: 0, asked: 0 };
  let [readings, hardest] = [0, 0];
  for (let test = 0; test < tests; test += 1) {
    const tube = tubes[test % tubes.length];
    if (tube === undefined) continue;
    const read = followPlan(tube, readBy(reader, random));
    const metering = {
      version: 1,
      id: 'bench',
      at: '2031-05-06T07:08:09.000Z',
      ratedCurrentMa: tube.ratedMa,
      readings: read,
    } as const;
    const report = meterReport(metering);
    if (!report.ok) throw new Error(report.problem.code);
    const { curve, rated } = report.value;
    const [first, last] = [curve.firing.firesAtPct, curve.between.x.at(-1) ?? 0];
    for (const share of [0.03, 0.2, 0.35, 0.5, 0.65, 0.8, 0.97]) {
      const powerPct = first + share * (last - first);
      const drawn = currentAt(curve, powerPct);
      const truth = tube.drawsMa(powerPct);
      if (drawn.ok)
        note(current, truth >= drawn.value.low && truth <= (drawn.value.high ?? Infinity));
    }
    for (const share of [0.3, 0.6, 0.9]) {
      const found = settingAt(curve, share * tube.ratedMa);
      const truth = trueSettingPct(tube, share * tube.ratedMa);
      if (found.ok)
        note(setting, truth >= found.value.low && truth <= (found.value.high ?? Infinity));
    }
    note(withinRating, tube.drawsMa(rated?.keepToPct ?? 100) <= tube.ratedMa);
    note(questioned, meterRemarks(metering).length > 0);
    readings += read.length / tests;
    hardest = Math.max(hardest, ...read.map((r) => tube.drawsMa(r.powerPct) / tube.ratedMa));
  }
  return { current, setting, withinRating, questioned, readings, hardest };
};

/** Reading the meter, measured: one line a figure. The readers after the first get a fifth of the tests. */
export const meterBench = function* (tests: number): Generator<string> {
  yield `reading the meter by the plan, ${String(tubes.length)} invented tubes in turn`;
  for (const tube of tubes) {
    const wrong = worstInversePct(tube).toFixed(2);
    yield `  inverse without noise, ${tube.name}: wrong by ${wrong} % of the setting at most (target 0.5 %)`;
  }
  for (const [i, reader] of readers.entries()) {
    const count = i === 0 ? tests : Math.ceil(tests / 5);
    const { current, setting, withinRating, questioned, readings, hardest } = play(reader, count);
    yield `  ${String(count)} × ${reader.name}: 95 % band holds current ${pctOf(current)}, setting ${pctOf(setting)} (target 93 to 97 %)`;
    yield `    kept setting within rating ${pctOf(withinRating)}, questioned without cause ${pctOf(questioned)}, ${readings.toFixed(0)} readings, highest ${(100 * hardest).toFixed(0)} % of rated`;
  }
};
