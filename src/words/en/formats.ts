import type { FormatCode } from '../../core/problems/files.ts';
import type { Sentences } from '../shape/sentence.ts';

const kinds: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'text in quotes',
  boolean: 'true or false',
  array: 'a list [ … ]',
  tuple: 'a list [ … ]',
  object: 'a group { … }',
  record: 'a group { … }',
};

const wanted = (p: { readonly wanted: string }): string => kinds[p.wanted] ?? p.wanted;

/** Something at a place in a file. */
export interface Placed {
  readonly path: string;
}

const changeIt = (p: Placed): string => `Change ${p.path} and send it again; nothing was changed.`;

/** Sentences for what comes in from outside: files and messages. Their codes are listed in the formats layer. */
export const formatWords = {
  'plan-not-said': {
    message: () => 'The study says nothing of a plan.',
    remedy: () =>
      'Add "plan": { "parts": 300, "partsPerSheet": 30, "partLengthMm": 180 } to it; docs/formats/study.md says what else it may hold.',
  },
  'file-not-json': {
    message: (p) => `This is not JSON: ${p.detail}.`,
    remedy: () => 'Check for a missing quote, comma or bracket. Comments are not allowed in JSON.',
  },
  'file-version-unknown': {
    message: (p) => `The version of this file is ${p.got}; known here: ${p.known}.`,
    remedy: (p) =>
      p.got === 'nothing'
        ? `Add "version": ${p.known} if the file was written by hand.`
        : 'It was written by a newer Throughcut, or by something else. Bring this one up to date, or export again.',
  },
  'file-key-unknown': {
    message: (p) => `${inWhole(p)} has an entry "${p.key}", which means nothing here.`,
    remedy: (p) =>
      p.hint === ''
        ? `Take it out. Known there: ${p.known}.`
        : `Did you mean "${p.hint}"? Known there: ${p.known}.`,
  },
  'file-value-missing': {
    message: (p) => `${p.path} is missing.`,
    remedy: (p) => `Add ${p.path}; it cannot be guessed.`,
  },
  'file-value-wrong-type': {
    message: (p) => `${p.path} should be ${wanted(p)}, but is ${p.got}.`,
    remedy: (p) =>
      p.wanted === 'number' && p.got.startsWith('"')
        ? 'Write the number without quotes and without its unit.'
        : changeIt(p),
  },
  'file-value-too-small': {
    message: (p) => `${p.path} is ${p.got}, but must be at least ${p.limit}.`,
    remedy: changeIt,
  },
  'file-value-not-above': {
    message: (p) => `${p.path} is ${p.got}, but must be more than ${p.limit}.`,
    remedy: changeIt,
  },
  'file-value-too-big': {
    message: (p) => `${p.path} is ${p.got}, but must be at most ${p.limit}.`,
    remedy: (p) => `Check the unit and the decimal point. ${changeIt(p)}`,
  },
  'file-value-not-below': {
    message: (p) => `${p.path} is ${p.got}, but must be less than ${p.limit}.`,
    remedy: changeIt,
  },
  'file-value-not-allowed': {
    message: (p) => `${p.path} is ${p.got}, which is none of: ${p.allowed}.`,
    remedy: changeIt,
  },
  'file-text-empty': {
    message: (p) => `${p.path} is empty.`,
    remedy: (p) => `Write something there, or leave ${p.path} out if it may be left out.`,
  },
  'file-text-too-long': {
    message: (p) => `${p.path} is longer than ${p.limit} characters.`,
    remedy: () => 'Shorten it.',
  },
  'file-list-too-short': {
    message: (p) => `${p.path} has fewer than ${p.limit} entries.`,
    remedy: changeIt,
  },
  'file-list-too-long': {
    message: (p) => `${p.path} has more than ${p.limit} entries.`,
    remedy: () => 'Send less at a time.',
  },
  'file-value-refused': {
    message: (p) => `${p.path} is ${p.got}: ${p.why}.`,
    remedy: changeIt,
  },
} satisfies Sentences<FormatCode>;

const inWhole = (p: Placed): string => (p.path === 'the file' ? 'The file' : p.path);
