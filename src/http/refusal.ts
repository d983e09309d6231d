import type { FastifyReply } from 'fastify';
import type { Problem } from '../core/problem.ts';
import { problemInWords } from '../words/words.ts';
import type { ErrorReply } from '../wire/problem.ts';
import { statusOf } from '../served/statusOf.ts';

/** Answers with a refusal in words. */
export const sendRefusal = (reply: FastifyReply, problem: Problem): FastifyReply => {
  const error: ErrorReply = { error: problemInWords(problem) };
  return reply.code(statusOf(problem)).send(error);
};
