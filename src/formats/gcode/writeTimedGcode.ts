import { timedJobLines } from '../../core/card/timedJobDrawing.ts';
import type { GcodeDialect } from '../../core/dialect/gcodeDialect.ts';
import type { JobToTime } from '../../core/motion/timedJobs.ts';
import type { Point } from '../../core/path/point.ts';
import { comment, comments } from './gcodeComments.ts';

const figure = (value: number): string => String(Number(value.toFixed(3)));
const xy = ([x, y]: Point): string => `X${figure(x)} Y${figure(y)}`;

/**
 * A job to be timed as G-code that never lights the beam: no M3, no M4, S0 throughout. `G4 P0` before and after each line
 * makes the controller come to rest there, as it does where a beam goes on and off (common practice, no source); so what a
 * beam costs at a start is not in its time. `notes` (cautions) stand as comments at the top.
 */
export const writeTimedGcode = (
  job: JobToTime,
  { opening, closing }: Pick<GcodeDialect, 'opening' | 'closing'>,
  notes: readonly string[],
): string => {
  const { lines, speedMmPerS } = timedJobLines(job);
  return [
    comment(`Throughcut job to be timed: ${job.kind}, ${figure(speedMmPerS)} mm/s, beam disarmed`),
    comment('zero is the lower left corner'),
    ...notes.flatMap(comments),
    ...opening,
    'M5 S0',
    'G17 G21 G90 G94',
    ...lines.flatMap(([first, ...rest]) =>
      first === undefined
        ? []
        : [
            `G0 ${xy(first)}`,
            'G4 P0',
            ...rest.map((point, i) =>
              i === 0 ? `G1 ${xy(point)} F${figure(speedMmPerS * 60)} S0` : xy(point),
            ),
            'G4 P0',
          ],
    ),
    'M5 S0',
    ...closing,
    '',
  ].join('\n');
};
