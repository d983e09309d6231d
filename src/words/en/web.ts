import type { WebCode } from '../../core/problems/web.ts';
import type { Sentences } from '../shape/sentence.ts';

/** What can go wrong between the page and the server. */
export const webWords = {
  'server-away': {
    message: () => 'The workshop computer does not answer.',
    remedy: () =>
      'Go on: everything that you tap is kept in this browser and is sent when it answers again.',
  },
  'server-slow': {
    message: (p) => `The workshop computer has not answered within ${p.seconds} seconds.`,
    remedy: () => 'Go on: it is asked again by itself. What you tapped is kept in this browser.',
  },
  'server-refused': {
    message: (p) => `The workshop computer refused this (${p.status}).`,
    remedy: () => 'Reload the page. If it happens again, look at its terminal.',
  },
  'reply-not-understood': {
    message: (p) => `The workshop computer answered ${p.address} in a way this page does not know.`,
    remedy: () => 'Reload the page: it is probably older than the program.',
  },
  'list-does-not-step': {
    message: (p) => `“${p.text}” does not lead from the first to the last in at most 60 steps.`,
    remedy: () => 'Write it as 10 to 30 by 5, or write the figures one by one.',
  },
  'list-too-long': {
    message: (p) => `${p.count} figures are more than one card holds.`,
    remedy: (p) => `Write at most ${p.most}.`,
  },
  'list-comma-unclear': {
    message: (p) => `“${p.text}” can be read in two ways.`,
    remedy: () => 'Write 12.5 with a point, or put a space between two figures: 12 15.',
  },
  'speed-range-empty': {
    message: (p) => `The slowest speed must lie below the fastest; the other is ${p.other} mm/s.`,
    remedy: () => 'Change that one first, if this one is right.',
  },
  'line-not-a-setting': {
    message: (p) => `“${p.text}” is not a speed and a power setting.`,
    remedy: () => 'Write a speed, then a power setting, such as 14 mm/s 30 %.',
  },
  'line-not-a-reading': {
    message: (p) => `“${p.text}” is not a power setting and a current.`,
    remedy: () => 'Write a power setting, then a current, such as 20 % 5.3 mA.',
  },
  'lines-same-power': {
    message: (p) => `${p.powerPct} % stands in two lines.`,
    remedy: () => 'Write each power setting once, with the mean of its readings.',
  },
  'lines-too-many': {
    message: (p) => `${p.count} lines are more than can be kept.`,
    remedy: (p) => `Write at most ${p.most}.`,
  },
  'line-too-long': {
    message: (p) => `These are ${p.count} characters; at most ${p.most} can be kept.`,
    remedy: () => 'Say it in fewer.',
  },
  'note-too-long': {
    message: (p) => `The note has ${p.count} characters; at most ${p.most} can be kept.`,
    remedy: () => 'Make it shorter.',
  },
  'line-with-controls': {
    message: () => 'There is a sign in it that cannot be kept, such as a tab.',
    remedy: () => 'Type a space in its place.',
  },
  'corner-power-too-high': {
    message: (p) => `The corner power cannot be above the power setting, ${p.powerPct} %.`,
    remedy: () => 'Type that power setting again, or less.',
  },
  'day-to-come': {
    message: () => 'That day is yet to come.',
    remedy: () => 'Choose today or an earlier day.',
  },
  'line-not-own-gcode': {
    message: (p) => `“${p.text}” cannot stand among your own lines.`,
    remedy: () =>
      'Write one command a line, without %, and leave the beam off: no M3 and no M4. What is cut is in the card alone.',
  },
  'own-gcode-too-long': {
    message: (p) => `${p.count} lines of your own are more than a card’s file takes.`,
    remedy: () => 'Keep to 100 lines.',
  },
  'line-not-a-width': {
    message: (p) => `“${p.text}” is not a place and a width.`,
    remedy: () => 'Write a place along the strip, then the width there, such as 30 mm 0.42 mm.',
  },
} satisfies Sentences<WebCode>;
