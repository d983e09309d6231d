import type { FastifyInstance } from 'fastify';
import { done } from '../../core/problem.ts';
import { apiOfFiles } from '../../wire/apiOfFiles.ts';
import { on } from '../on.ts';
import type { ServedPorts } from '../servedPorts.ts';
import type { DrawReasoning } from '../reasoningFile.ts';

/** Why a stored study's answer is what it is, for the printer. */
export const reasoningRoutes = (
  app: FastifyInstance,
  ports: ServedPorts,
  draw: DrawReasoning,
): void => {
  on(app, apiOfFiles.reasoningFile, async ({ params, query, reply, gone }) => {
    const { explainAnswer } = await import('../../app/sheet/explainAnswer.ts');
    const explained = await explainAnswer(ports.until(gone), params.id, query);
    if (!explained.ok) return explained;
    reply
      .type('application/pdf')
      .header('content-disposition', 'inline; filename="reasoning.pdf"')
      .send(await draw(explained.value));
    return done(undefined);
  });
};
