import { roles } from '../role.ts';
import { figure, oneOf, text, type ProblemList } from './param.ts';

/** What the server itself may refuse, before any use-case is asked. */
export const httpProblems = {
  'request-body-not-json': { detail: text },
  'request-body-too-big': {},
  'request-not-json-type': {},
  'request-address-malformed': {},
  'request-bad': { detail: text },
  'request-not-http': {},
  'request-head-too-big': {},
  'request-took-too-long': { seconds: figure },
  'no-such-address': { address: text },
  'foreign-host': { host: text },
  'foreign-page': { origin: text },
  'too-many-requests': {},
  'pairing-needed': {},
  'pairing-code-wrong': {},
  'pairing-not-open': {},
  'phone-not-found': { id: text },
  'role-too-low': { role: oneOf(roles), least: oneOf(roles) },
  'metrics-token-needed': {},
  'no-pdf-here': {},
  'something-broke': {},
} as const satisfies ProblemList;

export type HttpCode = keyof typeof httpProblems;
