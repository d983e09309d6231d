import { andThen, done } from '../../core/problem.ts';
import { apiOfFiles } from '../../wire/apiOfFiles.ts';
import { FileAnswer } from '../fileAnswer.ts';
import type { Site } from '../site.ts';
import type { ServedPorts } from '../servedPorts.ts';
import type { DrawReasoning } from '../files/reasoningFile.ts';

/** Why a stored study's answer is what it is, for the printer. */
export const reasoningRoutes = (site: Site, ports: ServedPorts, draw: DrawReasoning): void => {
  site.put(apiOfFiles.reasoningFile, async ({ params, query, gone }) => {
    const { explainAnswer } = await import('../../app/sheet/explainAnswer.ts');
    const explained = await explainAnswer(ports.until(gone), params.id, query);
    if (!explained.ok) return explained;
    return andThen(await draw(explained.value), (body) =>
      done(
        new FileAnswer({
          contentType: 'application/pdf',
          body,
          name: 'reasoning.pdf',
          isShown: true,
        }),
      ),
    );
  });
};
