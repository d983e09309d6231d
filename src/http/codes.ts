/** What the server itself may refuse, before any use-case is asked. */
export const httpCodes = [
  'request-body-not-json',
  'request-body-too-big',
  'request-not-json-type',
  'request-address-malformed',
  'request-bad',
  'request-not-http',
  'request-head-too-big',
  'request-took-too-long',
  'no-such-address',
  'foreign-host',
  'foreign-page',
  'too-many-requests',
  'pairing-needed',
  'pairing-code-wrong',
  'pairing-not-open',
  'phone-not-found',
  'desk-only',
  'something-broke',
] as const;

export type HttpCode = (typeof httpCodes)[number];
