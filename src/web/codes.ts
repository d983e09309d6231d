/** What can go wrong on the page, or between it and the server. */
export const webCodes = [
  'server-away',
  'server-slow',
  'server-refused',
  'reply-not-understood',
  'list-does-not-step',
  'list-too-long',
  'list-comma-unclear',
  'speed-range-empty',
  'line-not-a-setting',
  'line-not-a-reading',
  'line-not-a-width',
  'line-not-own-gcode',
  'own-gcode-too-long',
] as const;

export type WebCode = (typeof webCodes)[number];
