import type { CliCode } from '../../core/problems/cli.ts';
import type { HostCode } from '../../core/problems/host.ts';
import type { Sentences } from '../shape/sentence.ts';

/** What stands against a command. */
export const programWords = {
  'file-not-found': {
    message: (p) => `There is no file ${p.file}.`,
    remedy: () => 'Check its name. A relative name counts from the folder in which you call.',
  },
  'file-not-readable': {
    message: (p) => `The file ${p.file} cannot be read: ${p.detail}.`,
    remedy: () => 'Check that it belongs to you and that its disk is there.',
  },
  'file-is-a-folder': {
    message: (p) => `${p.file} is a folder, not a file.`,
    remedy: () => 'Name a file in it.',
  },
  'file-folder-not-there': {
    message: (p) => `${p.file} cannot be written: there is no folder ${p.folder}.`,
    remedy: () => 'Make the folder, or name one that is there. Nothing was changed.',
  },
  'file-too-big-to-read': {
    message: (p) => `The file ${p.file} is too big to be read in one piece.`,
    remedy: () => 'Nothing was changed. Check that it is the right file, or split it into parts.',
  },
  'file-not-written': {
    message: (p) => `The file ${p.file} cannot be written: ${p.detail}.`,
    remedy: () => 'Check that its folder exists, belongs to you and has room.',
  },
  'file-name-too-long': {
    message: (p) => `The name ${p.file} is longer than this disk takes.`,
    remedy: () => 'Choose a shorter name, or a folder that lies less deep.',
  },
  'file-disk-full': {
    message: (p) => `The disk is full: ${p.file} was not written.`,
    remedy: () => 'What was there before is unchanged. Make room, or choose another disk.',
  },
  'file-is-the-store': {
    message: (p) => `${p.file} is where Throughcut keeps your data, or belongs to it.`,
    remedy: () => 'Nothing was written. Choose another name.',
  },
  'no-home-folder': {
    message: () => 'This user has no home folder, so there is no usual place for your data.',
    remedy: () => 'Name a folder for them in THROUGHCUT_DATA.',
  },
  'stdin-empty': {
    message: () => 'Nothing was piped in.',
    remedy: () => 'Pipe a study file into the command, as in throughcut calc fit < study.json.',
  },
  'stdin-too-big': {
    message: () => 'What was piped in is too big to be read in one piece.',
    remedy: () => 'Nothing was calculated. Check that it is the right file.',
  },
  'command-misused': {
    message: (p) => `The command cannot be understood: ${p.detail}.`,
    remedy: () => 'See what there is with throughcut --help.',
  },
  'order-not-said': {
    message: () => 'The study says nothing of an order.',
    remedy: () =>
      'Add "order": { "parts": 60 } to it; docs/formats/study.md says what else it may hold.',
  },
  'port-not-a-port': {
    message: (p) => `THROUGHCUT_PORT is “${p.port}”, which is no port.`,
    remedy: () => 'Set it to a whole number from 1 to 65535, or leave it out for 4870.',
  },
  'setting-not-a-number': {
    message: (p) => `${p.name} is “${p.given}”, which is not what it takes.`,
    remedy: (p) => `Set it to a whole number from ${p.least} to ${p.most}, or leave it out.`,
  },
  'setting-not-one-of': {
    message: (p) => `${p.name} is “${p.given}”, which is not what it takes.`,
    remedy: (p) => `Set it to ${p.known}, or leave it out.`,
  },
  'tls-half-said': {
    message: () => 'A certificate and its key go together, and only one of them is named.',
    remedy: () => 'Name the files in THROUGHCUT_TLS_CERT and THROUGHCUT_TLS_KEY, or neither.',
  },
  'tls-not-usable': {
    message: (p) => `The certificate or its key cannot be used: ${p.file}: ${p.detail}.`,
    remedy: () => 'Both are PEM files that this user may read; the key has no password.',
  },
  'port-taken': {
    message: (p) =>
      `Port ${p.port} is taken by another program, perhaps by a Throughcut that is already running.`,
    remedy: (p) =>
      `Open http://127.0.0.1:${p.port} to see, close the other program, or choose another port with THROUGHCUT_PORT.`,
  },
  'port-not-allowed': {
    message: (p) => `This computer does not let you use port ${p.port}.`,
    remedy: () => 'Choose a port above 1023 with THROUGHCUT_PORT.',
  },
} satisfies Sentences<CliCode | HostCode>;
