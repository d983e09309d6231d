import type { Home } from '../../app/workshop/home.ts';
import type { JudgedMaterialName } from '../../core/judgedMaterials.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { judgeMaterial } from '../../core/stock/judgeMaterial.ts';
import { judgedMaterialWords } from '../../words/texts.ts';
import { problemInWords } from '../../words/words.ts';
import { standingInWords } from '../../words/standingInWords.ts';
import { api, type ReplyOf } from '../../wire/api.ts';
import type { Site } from '../site.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** What the first screen and its doors need. */
export const homeRoutes = (site: Site, ports: ServedPorts, version: string): void => {
  site.put(api.health, () => Promise.resolve(done({ status: 'ok', version })));
  site.put(api.home, async ({ gone }) => {
    const { home } = await import('../../app/workshop/home.ts');
    return done(spoken(await home(ports.until(gone))));
  });
  site.put(api.openExample, async ({ gone }) => {
    const { openExample } = await import('../../app/workshop/openExample.ts');
    return saidOf(await openExample(ports.until(gone)));
  });
  site.put(api.removeExample, async ({ gone }) => {
    const { removeExample } = await import('../../app/workshop/removeExample.ts');
    return saidOf(await removeExample(ports.until(gone)));
  });
  site.put(api.judgeMaterial, ({ query }) => {
    const judged = judgeMaterial(query.text);
    const { decision, material } = judged;
    return Promise.resolve(
      done({
        decision,
        ...(material === undefined ? {} : { material: material.id }),
        ...('problem' in judged ? { said: problemInWords(judged.problem) } : {}),
        ...('judged' in judged ? whyOf(judged.judged) : {}),
      }),
    );
  });
};

const whyOf = (name: JudgedMaterialName) => {
  const { hazards, sources } = judgedMaterialWords[name];
  return { hazards: [...hazards], sources: [...sources] };
};

const spoken = ({ latest, unreadable, ...home }: Home): ReplyOf<typeof api.home> => {
  const said = {
    ...home,
    ...(unreadable === undefined
      ? {}
      : { unreadable: unreadable.map((problem) => problemInWords(problem)) }),
  };
  if (latest === undefined) return said;
  const { standing, ...rest } = latest;
  return {
    ...said,
    latest: { ...rest, ...(standing === undefined ? {} : { standing: standingInWords(standing) }) },
  };
};

const saidOf = (opened: Outcome<Home>): Outcome<ReplyOf<typeof api.home>> =>
  opened.ok ? done(spoken(opened.value)) : opened;
