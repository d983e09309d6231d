import { formatHex, modeHsl, modeRgb, parse, useMode } from 'culori/fn';

useMode(modeRgb);
useMode(modeHsl);

/** No colour is longer; what is longer is none. */
const mostSigns = 200;

/**
 * A colour as the key that control programs go by, `#rrggbb`, however the file writes it (name, `#rgb`, `rgb()`,
 * `hsl()`): one colour written in two ways is one entry there. What cannot be read stays as it is written; undefined for
 * no colour at all.
 */
export const colourKey = (text: string | undefined, current?: string): string | undefined => {
  const said = (text ?? '').slice(0, mostSigns).trim().toLowerCase();
  if (said === '' || said === 'none' || said === 'transparent') return undefined;
  if (said === 'currentcolor') return current === undefined ? '#000000' : colourKey(current);
  // A gradient or pattern is no colour, but may name one for whoever cannot draw it.
  if (said.startsWith('url(')) {
    const end = said.indexOf(')');
    return end < 0 ? undefined : colourKey(said.slice(end + 1), current);
  }
  return formatHex(parse(said)) ?? said.slice(0, 40);
};
