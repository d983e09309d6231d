import type { z } from 'zod';
import type { Problem } from '../core/problem.ts';
import { closestWord } from './closestWord.ts';
import type { FormatCode } from './codes.ts';
import { allowedAt, keysAt } from './jsonSchemaAt.ts';

/** What a schema found wrong, as a problem: where, what stood there, and what was wanted. */
export const issueToProblem = (
  schema: z.ZodType,
  json: unknown,
  issue: z.core.$ZodIssue,
): Problem => {
  const path = showPath(issue.path);
  const found = valueAt(json, issue.path);
  const got = found.present ? showValue(found.value) : 'nothing';
  const problem = (code: FormatCode, params: Problem['params'] = {}): Problem => ({
    code,
    params: { path, got, ...params },
  });
  if (issue.path.length === 1 && issue.path[0] === 'version')
    return problem('file-version-unknown', { known: allowedAt(schema, issue.path) });
  if (!found.present) return problem('file-value-missing');
  switch (issue.code) {
    case 'unrecognized_keys': {
      const key = issue.keys[0] ?? '';
      const known = keysAt(schema, issue.path);
      return problem('file-key-unknown', {
        key,
        hint: closestWord(key, known) ?? '',
        known: known.join(', '),
      });
    }
    case 'invalid_type':
      return problem('file-value-wrong-type', { wanted: issue.expected });
    case 'too_small':
      return outOfBounds(
        problem,
        issue.origin,
        'small',
        Number(issue.minimum),
        issue.inclusive ?? true,
      );
    case 'too_big':
      return outOfBounds(
        problem,
        issue.origin,
        'big',
        Number(issue.maximum),
        issue.inclusive ?? true,
      );
    case 'invalid_value':
    case 'invalid_union':
      return problem('file-value-not-allowed', { allowed: allowedAt(schema, issue.path) });
    default:
      return problem('file-value-refused', { why: issue.message });
  }
};

const outOfBounds = (
  problem: (code: FormatCode, params?: Problem['params']) => Problem,
  origin: string,
  side: 'small' | 'big',
  limit: number,
  inclusive: boolean,
): Problem => {
  if (origin === 'string')
    return side === 'small' ? problem('file-text-empty') : problem('file-text-too-long', { limit });
  if (origin === 'array' || origin === 'set' || origin === 'map')
    return problem(side === 'small' ? 'file-list-too-short' : 'file-list-too-long', { limit });
  if (side === 'small')
    return problem(inclusive ? 'file-value-too-small' : 'file-value-not-above', { limit });
  return problem(inclusive ? 'file-value-too-big' : 'file-value-not-below', { limit });
};

/** A path as one writes it in code: `cells[3].speedMmPerS`; the whole is `the file`. */
const showPath = (path: readonly PropertyKey[]): string =>
  path.length === 0
    ? 'the file'
    : path
        .map((step, at) =>
          typeof step === 'number' ? `[${String(step)}]` : `${at > 0 ? '.' : ''}${String(step)}`,
        )
        .join('');

const valueAt = (
  json: unknown,
  path: readonly PropertyKey[],
): { readonly present: boolean; readonly value?: unknown } => {
  let value = json;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step))
      return { present: false };
    value = Reflect.get(value, step);
  }
  return { present: true, value };
};

const longestShown = 40;

/** What stood there, short enough for a sentence. */
const showValue = (value: unknown): string => {
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'a group { … }';
  if (typeof value === 'number') return String(value);
  const text = JSON.stringify(value);
  return text.length > longestShown ? `${text.slice(0, longestShown)}…` : text;
};
