import type { ReferenceCode } from '../../core/problems/reference.ts';
import type { Sentences } from '../shape/sentence.ts';

export const referenceWords = {
  'reference-no-file': {
    message: () => 'No reference file was named.',
    remedy: () =>
      'Name one or more, such as “npm run -s reference -- test/reference/*.json”, and run it again.',
  },
  'reference-file-not-found': {
    message: (p) => `The file ${p.file} cannot be read.`,
    remedy: () => 'Check its path; a relative path counts from the folder in which you called.',
  },
  'reference-file-not-json': {
    message: (p) => `The file ${p.file} is not JSON.`,
    remedy: () => 'Check that it is a reference file and that it is whole.',
  },
  'reference-file-of-other-form': {
    message: (p) => `The file ${p.file} is JSON, but no reference file (${p.where}).`,
    remedy: () => 'It needs an id and cases, each with a name and an input.',
  },
  'reference-case-of-other-form': {
    message: (p) => `The input of case ${p.name} is not of its kind’s form (${p.where}).`,
    remedy: () => 'Compare it with the cases of the same kind in test/reference.',
  },
} satisfies Sentences<ReferenceCode>;
