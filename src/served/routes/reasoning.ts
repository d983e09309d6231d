import { apiOfFiles } from '../../wire/apiOfFiles.ts';
import { pageAnswer } from '../fileAnswer.ts';
import type { Printer } from '../files/printer.ts';
import { reasoningPage } from '../files/reasoningPage.ts';
import type { ServedPorts } from '../servedPorts.ts';
import type { Site } from '../site.ts';

/** Why a stored study's answer is what it is, for the printer. */
export const reasoningRoutes = (site: Site, ports: ServedPorts, printer: Printer): void => {
  site.put(apiOfFiles.reasoningFile, async ({ params, query, gone }) => {
    const { explainAnswer } = await import('../../app/sheet/explainAnswer.ts');
    const explained = await explainAnswer(ports.until(gone), params.id, query);
    if (!explained.ok) return explained;
    const { study, cut, explanation } = explained.value;
    const { isExample } = study;
    return pageAnswer(
      await reasoningPage(cut, explanation, { printer, isExample }),
      'reasoning.pdf',
    );
  });
};
