import type { Ports } from '../../app/ports/ports.ts';
import { done } from '../../core/problem.ts';
import { meterVerdictText } from '../../words/texts.ts';
import { problemInWords } from '../../words/words.ts';
import { api } from '../../wire/api.ts';
import type { Site } from '../site.ts';

/** Two meterings held against each other. The curve's mathematics is loaded when it is first asked for. */
export const meteringRoutes = (site: Site, ports: Ports): void => {
  site.put(api.compareMeterings, async ({ params, query }) => {
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
