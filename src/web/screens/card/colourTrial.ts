import { rungColours } from '../../../core/card/rungColours.ts';

/** Strips on the trial: more than any card needs. */
export const trialStrips = 24;

const stripMm = { length: 20, apart: 4, margin: 5 } as const;

/**
 * A drawing of strips, each on a layer and in a colour of its own, as the rungs of a card are. Opened in a control
 * program (nothing is cut), it shows how many entries the program keeps apart.
 */
export const colourTrialSvg = (): string => {
  const widthMm = stripMm.length + 2 * stripMm.margin;
  const heightMm = (trialStrips - 1) * stripMm.apart + 2 * stripMm.margin;
  const strips = rungColours(trialStrips).map((colour, i) => {
    const y = stripMm.margin + i * stripMm.apart;
    const to = stripMm.margin + stripMm.length;
    return `<g id="strip-${String(i + 1)}"><path d="M${String(stripMm.margin)} ${String(y)}H${String(to)}" fill="none" stroke="${colour}" stroke-width="0.2"/></g>`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${String(widthMm)}mm" height="${String(heightMm)}mm" viewBox="0 0 ${String(widthMm)} ${String(heightMm)}">`,
    ...strips,
    '</svg>',
    '',
  ].join('\n');
};
