import type { AppCode } from '../core/problems/app.ts';
import type { Problem } from '../core/problem.ts';
import { byTestCode, type MachineTestCode } from '../core/problems/machineTests.ts';
import type { HttpCode } from '../core/problems/http.ts';

const statuses: Readonly<Record<AppCode | HttpCode | MachineTestCode, number>> = {
  'study-not-found': 404,
  'card-not-found': 404,
  'photo-not-kept': 404,
  'setting-photo-not-kept': 404,
  'tally-not-found': 404,
  'order-not-found': 404,
  'order-id-taken': 409,
  'entry-not-found': 404,
  'card-code-taken': 409,
  'card-code-changed': 409,
  'card-already-read': 409,
  'read-cell-would-vanish': 409,
  'cell-not-on-card': 422,
  'tally-id-taken': 409,
  'entry-id-taken': 409,
  'setting-change-not-found': 404,
  'setting-change-over': 409,
  'setting-changed-since': 409,
  'setting-built-on': 409,
  'setting-code-taken': 409,
  'setting-machine-gone': 409,
  'power-above-machine': 422,
  'overdrive-needs-reason': 422,
  'rest-not-said': 422,
  'no-forecast-to-keep': 422,
  'import-names-unknown-setting': 422,
  'import-names-unknown-machine': 422,
  'machine-not-found': 404,
  'machine-in-use': 409,
  'machine-is-invented': 422,
  'machine-change-id-taken': 409,
  'machine-change-ahead': 422,
  ...byTestCode(
    () => 404,
    () => 409,
  ),
  'sum-took-too-long': 422,
  'sum-too-big': 422,
  'sums-waiting': 429,
  'sum-not-wanted': 408,
  'request-body-not-json': 400,
  'request-body-too-big': 413,
  'request-not-json-type': 415,
  'request-address-malformed': 400,
  'request-bad': 400,
  'request-not-http': 400,
  'request-head-too-big': 431,
  'request-took-too-long': 408,
  'no-such-address': 404,
  'foreign-host': 403,
  'foreign-page': 403,
  'too-many-requests': 429,
  'pairing-needed': 401,
  'pairing-code-wrong': 403,
  'pairing-not-open': 403,
  'phone-not-found': 404,
  'role-too-low': 403,
  'metrics-token-needed': 401,
  'no-pdf-here': 501,
  'something-broke': 500,
};

/** The status for a refusal: what came in misshapen is 400, what is well-formed but cannot be done is 422. */
export const statusOf = ({ code }: Problem): number => {
  const known: Readonly<Record<string, number>> = statuses;
  if (Object.hasOwn(known, code)) return known[code] ?? 422;
  // Kept and sent again by whoever sent it, when the place can take it.
  if (/^(browser-)?store-/.test(code)) return 503;
  return code.startsWith('file-') ? 400 : 422;
};
