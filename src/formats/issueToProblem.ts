import { omit } from '../core/omit.ts';
import type { z } from 'zod';
import { problemOf, type ParamsOf, type Problem } from '../core/problem.ts';
import { closestWord } from './closestWord.ts';
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
  const place = { path, got };
  if (issue.path.length === 1 && issue.path[0] === 'version')
    return problemOf('file-version-unknown', { ...place, known: allowedAt(schema, issue.path) });
  if (!found.present) return problemOf('file-value-missing', place);
  switch (issue.code) {
    case 'unrecognized_keys': {
      const key = issue.keys[0] ?? '';
      const known = keysAt(schema, issue.path);
      return problemOf('file-key-unknown', {
        ...place,
        key,
        hint: closestWord(key, known) ?? '',
        known: known.join(', '),
      });
    }
    case 'invalid_type':
      return problemOf('file-value-wrong-type', { ...place, wanted: issue.expected });
    case 'too_small':
      return outOfBounds(issue.origin, 'small', issue.inclusive ?? true, {
        ...place,
        limit: Number(issue.minimum),
      });
    case 'too_big':
      return outOfBounds(issue.origin, 'big', issue.inclusive ?? true, {
        ...place,
        limit: Number(issue.maximum),
      });
    case 'invalid_value':
    case 'invalid_union':
      return problemOf('file-value-not-allowed', {
        ...place,
        allowed: allowedAt(schema, issue.path),
      });
    default:
      return problemOf('file-value-refused', { ...place, why: issue.message });
  }
};

const outOfBounds = (
  origin: string,
  side: 'small' | 'big',
  inclusive: boolean,
  beyond: ParamsOf<'file-value-too-big'>,
): Problem => {
  if (origin === 'string')
    return side === 'small'
      ? problemOf('file-text-empty', omit(beyond, 'limit'))
      : problemOf('file-text-too-long', beyond);
  if (origin === 'array' || origin === 'set' || origin === 'map')
    return problemOf(side === 'small' ? 'file-list-too-short' : 'file-list-too-long', beyond);
  if (side === 'small')
    return problemOf(inclusive ? 'file-value-too-small' : 'file-value-not-above', beyond);
  return problemOf(inclusive ? 'file-value-too-big' : 'file-value-not-below', beyond);
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
