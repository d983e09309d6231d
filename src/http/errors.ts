import type { FastifyError, FastifyReply } from 'fastify';
import { problemOf, type Problem } from '../core/problem.ts';
import { carriedProblem } from '../served/carriedProblem.ts';
import { sendRefusal } from './refusal.ts';

/** Every error leaves in one shape; what nobody expected is reported, and its details stay inside. */
export const refuseThrown = (
  thrown: unknown,
  reply: FastifyReply,
  report: (error: unknown) => void,
): FastifyReply => {
  const problem = carriedProblem(thrown) ?? requestProblem(thrown);
  if (problem === undefined || problem.code.startsWith('store-')) report(thrown);
  return sendRefusal(reply, problem ?? problemOf('something-broke'));
};

/** What the server framework found wrong with a request before any handler saw it. */
const requestProblem = (thrown: unknown): Problem | undefined => {
  if (!(thrown instanceof Error)) return undefined;
  const { code, statusCode, message } = thrown as FastifyError;
  switch (code) {
    case 'FST_ERR_CTP_INVALID_JSON_BODY':
    case 'FST_ERR_CTP_EMPTY_JSON_BODY':
    case 'FST_ERR_CTP_INVALID_CONTENT_LENGTH':
      return problemOf('request-body-not-json', { detail: message });
    case 'FST_ERR_CTP_BODY_TOO_LARGE':
      return problemOf('request-body-too-big');
    case 'FST_ERR_CTP_INVALID_MEDIA_TYPE':
      return problemOf('request-not-json-type');
    case 'FST_ERR_BAD_URL':
      return problemOf('request-address-malformed');
    default:
      if (statusCode === 429) return problemOf('too-many-requests');
      return statusCode !== undefined && statusCode >= 400 && statusCode < 500
        ? problemOf('request-bad', { detail: message })
        : undefined;
  }
};
