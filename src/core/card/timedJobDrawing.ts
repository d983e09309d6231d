import type { JobToTime } from '../motion/timedJobs.ts';
import type { Polyline } from '../path/polyline.ts';
import type { CardDrawing } from './cardDrawing.ts';
import { marksColour } from './rungColours.ts';
import { typed } from './settingWords.ts';

/** The lines of a job to be timed, in their order. All are run once, at the one speed that the job asks for. */
export const timedJobLines = ({
  moves,
}: JobToTime): { readonly lines: readonly Polyline[]; readonly speedMmPerS: number } => {
  const cuts = moves.filter((move) => move.kind === 'cut');
  return { lines: cuts.map(({ points }) => points), speedMmPerS: cuts[0]?.speedMmPerS ?? 0 };
};

/**
 * A job to be timed as one layer, for the writers of drawings. It has no setting, for no beam is meant to be on; its name
 * says the speed, and that.
 */
export const timedJobDrawing = (job: JobToTime): CardDrawing => {
  const { lines, speedMmPerS } = timedJobLines(job);
  return {
    widthMm: Math.max(...lines.flat().map(([x]) => x)),
    heightMm: Math.max(1, ...lines.flat().map(([, y]) => y)),
    layers: [
      {
        kind: 'marks',
        name: `${job.kind} ${typed(speedMmPerS)}mmps beam-disarmed`,
        colour: marksColour,
        parts: [{ of: { what: 'timed' }, polylines: lines }],
        polylines: lines,
      },
    ],
  };
};
