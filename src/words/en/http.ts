import type { HttpCode } from '../../core/problems/http.ts';
import type { Sentences } from '../shape/sentence.ts';
import { roleText } from './terms/roles.ts';

/** What the server refuses before any use-case is asked. */
export const httpWords = {
  'request-body-not-json': {
    message: (p) => `What was sent is not JSON: ${p.detail}.`,
    remedy: () => 'Nothing was changed. Check for a missing quote, comma or bracket.',
  },
  'request-body-too-big': {
    message: () => 'What was sent is too big.',
    remedy: () => 'Nothing was changed. Send less at a time; a whole workshop goes through import.',
  },
  'request-not-json-type': {
    message: () => 'What was sent does not say that it is JSON.',
    remedy: () => 'Nothing was changed. Send it with the header content-type: application/json.',
  },
  'request-address-malformed': {
    message: () => 'This address cannot be read.',
    remedy: () => 'Check it for a stray % or a space.',
  },
  'request-bad': {
    message: (p) => `The request cannot be understood: ${p.detail}.`,
    remedy: () => 'Nothing was changed. The addresses and what they take stand at /api/docs.',
  },
  'request-not-http': {
    message: () => 'What was sent cannot be read as a request.',
    remedy: () => 'Nothing was changed. Open the address that the terminal printed, with http://.',
  },
  'request-head-too-big': {
    message: () => 'The address and headers of this request are too long.',
    remedy: () => 'Nothing was changed. Clear the cookies of this address, and send less in it.',
  },
  'request-took-too-long': {
    message: (p) => `The request had not come whole after ${p.seconds} seconds.`,
    remedy: () => 'Nothing was changed. Look at the network, then send it again.',
  },
  'no-such-address': {
    message: (p) => `There is nothing at ${p.address}.`,
    remedy: () => 'Go back to the first screen. The addresses for programs stand at /api/docs.',
  },
  'foreign-host': {
    message: (p) => `This server does not answer to the name ${p.host}.`,
    remedy: () =>
      'Open the address that the terminal printed at start. To use a phone, start with --lan.',
  },
  'foreign-page': {
    message: (p) => `A change was sent from another page (${p.origin}) and was not made.`,
    remedy: () => 'Make the change on the page that this server serves.',
  },
  'too-many-requests': {
    message: () => 'That were too many tries in a short time.',
    remedy: () => 'Wait a minute, then try again.',
  },
  'pairing-needed': {
    message: () => 'This phone is not paired with the workshop yet.',
    remedy: () => 'Type the code that stands in the terminal and on the page at the desk.',
  },
  'pairing-code-wrong': {
    message: () => 'This is not the code, or it has run out.',
    remedy: () =>
      'Look at the terminal or the page at the desk: the code changes every few minutes.',
  },
  'pairing-not-open': {
    message: () => 'No phone is being let in just now.',
    remedy: () =>
      'Ask for a code at the desk, under “Machine”. After ten wrong codes the next one stands in the terminal.',
  },
  'phone-not-found': {
    message: (p) => `No phone “${p.id}” is let in.`,
    remedy: () => 'It may have been taken off the list already. Load the page again.',
  },
  'role-too-low': {
    message: (p) =>
      `This phone may ${roleText.may[p.role]}; for this it has to be one that may ${roleText.may[p.least]}. Nothing was changed.`,
    remedy: () =>
      'Do it at the desk, or ask whoever runs the place to let this phone do more: under “Machine”, “Phones that are let in”.',
  },
  'metrics-token-needed': {
    message: () => 'How the server fares is told at this computer, or to who shows the token.',
    remedy: () =>
      'Set THROUGHCUT_METRICS_TOKEN where Throughcut starts, and send it as Authorization: Bearer TOKEN.',
  },
  'no-pdf-here': {
    message: () => 'This page works by itself and makes no PDF files.',
    remedy: () =>
      'Print the screen with your browser’s own printing, which can write a PDF too, or take the SVG.',
  },
  'something-broke': {
    message: () => 'Something broke inside Throughcut. What was stored before is still there.',
    remedy: () =>
      'Load the page again. If it breaks again, please report what you did and what the terminal shows.',
  },
} satisfies Sentences<HttpCode>;
