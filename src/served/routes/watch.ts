import type { EntryWatched } from '../../app/watch/watchEntry.ts';
import { done } from '../../core/problem.ts';
import { alarmLimits } from '../../core/watch/alarmLimits.ts';
import { watchVerdictText as said } from '../../words/texts.ts';
import { problemInWords } from '../../words/words.ts';
import type { ReplyOf } from '../../wire/api.ts';
import { watchApi } from '../../wire/watch.ts';
import type { Site } from '../site.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** Whether proven settings still hold. The cut model is loaded when it is first asked for. */
export const watchRoutes = (site: Site, ports: ServedPorts): void => {
  site.put(watchApi.watchEntry, async ({ params, gone }) => {
    const { watchEntry } = await import('../../app/watch/watchEntry.ts');
    const found = await watchEntry(ports.until(gone), params.id);
    return found.ok ? done(inReply(found.value)) : found;
  });
  site.put(watchApi.cutStrip, async ({ params, body, gone }) => {
    const { cutStrip } = await import('../../app/watch/cutStrip.ts');
    const cut = await cutStrip(ports.until(gone), params.id, body);
    if (!cut.ok) return cut;
    const { remarks, ...rest } = cut.value;
    const shown = remarks.map((remark) => {
      const { code, message } = problemInWords(remark);
      return { code, message };
    });
    return done({ ...rest, remarks: shown });
  });
};

const inReply = ({
  chart,
  batchChanges,
  machineChanges,
  strips,
  cause,
  looks,
}: EntryWatched): ReplyOf<typeof watchApi.watchEntry> => {
  const { lambda, width, limit, ordersPerFalseAlarm } = alarmLimits;
  return {
    standing: chart.standing,
    message: said.standing(chart),
    ordersPerFalseAlarm,
    limits: { average: width * Math.sqrt(lambda / (2 - lambda)), shortfall: limit },
    points: chart.points,
    batchChanges,
    machineChanges: [...machineChanges],
    rule: said.rule,
    ...(chart.slipping === undefined ? {} : { slipping: chart.slipping }),
    strips: strips.map(({ strip, verdict }) => ({
      studyId: strip.studyId,
      code: strip.code,
      of: strip.of,
      ...(strip.batch === undefined ? {} : { batch: strip.batch }),
      at: strip.at,
      cellCount: strip.cellCount,
      readCount: strip.cells.length,
      verdict: verdict.kind,
      message: said.verdict(verdict),
      more: said.verdictMore(verdict),
      ...('setting' in verdict ? { setting: verdict.setting, surePct: verdict.surePct } : {}),
    })),
    ...(cause === undefined
      ? {}
      : { cause: { ...cause, message: said.cause(cause), more: said.causeMore(cause) } }),
    looks: looks.map(said.look),
  };
};
