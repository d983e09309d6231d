import type { FastifyInstance } from 'fastify';
import type { Ports } from '../../app/ports/ports.ts';
import type { MeteringRead } from '../../app/machine/recordMetering.ts';
import { done } from '../../core/problem.ts';
import { meterVerdictText } from '../../words/en/meterVerdict.ts';
import { problemInWords } from '../../words/words.ts';
import { api, type ReplyOf } from '../../wire/api.ts';
import { on } from '../on.ts';

/** What the meter said, kept over time. The curve's mathematics is loaded when it is first asked for. */
export const meteringRoutes = (app: FastifyInstance, ports: Ports): void => {
  on(app, api.listMeterings, async () => {
    const { listMeterings } = await import('../../app/machine/listMeterings.ts');
    return done({ meterings: await listMeterings(ports) });
  });
  on(app, api.recordMetering, async ({ body }) => {
    const { recordMetering } = await import('../../app/machine/recordMetering.ts');
    const recorded = await recordMetering(ports, body);
    return recorded.ok ? done(inReply(recorded.value)) : recorded;
  });
  on(app, api.getMetering, async ({ params }) => {
    const { readMetering } = await import('../../app/machine/readMetering.ts');
    const found = await readMetering(ports, params.id);
    return found.ok ? done(inReply(found.value)) : found;
  });
  on(app, api.removeMetering, async ({ params }) => {
    const { removeMetering } = await import('../../app/machine/removeMetering.ts');
    const removed = await removeMetering(ports, params.id);
    return removed.ok ? done({ removed: true }) : removed;
  });
  on(app, api.compareMeterings, async ({ params, query }) => {
    const { holdAgainst } = await import('../../app/machine/holdAgainst.ts');
    const held = await holdAgainst(ports, { now: params.id, before: params.before, ...query });
    if (!held.ok) return held;
    const { change, look } = held.value;
    const { remarks, ...figures } = change;
    return done({
      ...figures,
      at: look.at,
      message: meterVerdictText.change(change),
      verdict: meterVerdictText.verdict(look),
      suspects: look.suspects.map((suspect) => {
        const [name, how] = meterVerdictText.suspect(suspect);
        return { name, how };
      }),
      remarks: remarks.map((remark) => problemInWords(remark)),
    });
  });
};

const inReply = ({ metering, report }: MeteringRead): ReplyOf<typeof api.getMetering> => {
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

type Rated = NonNullable<Extract<MeteringRead['report'], { ok: true }>['value']['rated']>;

const ratedInReply = (rated: Rated) => {
  if (!rated.reached) return { keepToPct: rated.keepToPct };
  const { value, low, high } = rated.at;
  return { at: { value, low, ...(high === null ? {} : { high }) }, keepToPct: rated.keepToPct };
};
