import type { Comparison } from '../../core/compare/compareConditions.ts';
import { done } from '../../core/problem.ts';
import { parseCompareFile } from '../../formats/compareFile.ts';
import { comparisonFile, type ComparisonFile } from '../../formats/comparisonFile.ts';
import { comparisonSaid, type SideNames } from '../../words/texts.ts';
import { problemInWords } from '../../words/words.ts';
import { compareApi as api } from '../../wire/compareApi.ts';
import type { Site } from '../site.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** Two conditions beside each other, stored or sent along. The model is loaded when it is first asked. */
export const compareRoutes = (site: Site, ports: ServedPorts): void => {
  site.put(api.compareConditions, async ({ body, gone }) => {
    const { compareStored } = await import('../../app/sheet/compareConditions.ts');
    const compared = await compareStored(ports.until(gone), body);
    return compared.ok ? done(inWords(compared.value)) : compared;
  });
  site.put(api.calcCompare, async ({ body, gone }) => {
    const file = parseCompareFile(body);
    if (!file.ok) return file;
    const compared = await ports.until(gone).model.ask('compareTwo', file.value.two);
    return compared.ok ? done(inWords(compared.value, file.value.names)) : compared;
  });
};

const inWords = (comparison: Comparison, named: Partial<SideNames> = {}): ComparisonFile =>
  comparisonFile(comparison, comparisonSaid(comparison, named), problemInWords);
