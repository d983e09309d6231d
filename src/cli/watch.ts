import type { WatchedByFile } from '../app/sums/watchByFile.ts';
import type { Outcome } from '../core/problem.ts';
import { parseWatchFile } from '../formats/watchFile.ts';
import { watchVerdictText as said } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import { askModel } from './askModel.ts';
import { printOutcome, type ExitCode } from './output.ts';
import { readJsonFile } from './readJsonFile.ts';

/** `watch FILE`: whether a kept setting still holds by its orders and strips, and where to look if not. */
export const runWatch = async (file: string): Promise<ExitCode> =>
  printOutcome(await watch(file), shown);

const watch = async (file: string): Promise<Outcome<WatchedByFile>> => {
  const parsed = await readJsonFile(file, parseWatchFile);
  return parsed.ok ? askModel('watchByFile', parsed.value) : parsed;
};

const shown = ({
  foreseen,
  chart,
  batchChanges,
  strips,
  cause,
  looks,
  nextStrip,
  ofMaterial,
}: WatchedByFile): object => ({
  version: 1,
  warnings: ofMaterial.map((problem) => problemInWords(problem)),
  standing: chart.standing,
  sentence: said.standing(chart),
  alarms: said.alarms,
  foreseen: { outOf100: foreseen.outOf100Mean, surePct: foreseen.surePct },
  points: chart.points,
  batchChanges,
  slipping: chart.slipping ?? null,
  strips: strips.map(({ strip, verdict }) => ({
    of: strip.of,
    batch: strip.batch ?? null,
    verdict,
    sentences: [said.verdict(verdict), said.verdictMore(verdict)],
  })),
  rule: said.rule,
  cause:
    cause === undefined
      ? null
      : { ...cause, sentences: [said.cause(cause), said.causeMore(cause)] },
  looks: looks.map(said.look),
  nextStrip: nextStrip ?? null,
});
