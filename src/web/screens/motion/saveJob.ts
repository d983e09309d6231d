import { timedJobDrawing } from '../../../core/card/timedJobDrawing.ts';
import { plainDialect, type GcodeDialect } from '../../../core/machine/gcodeDialect.ts';
import type { JobToTime } from '../../../core/motion/timedJobs.ts';
import { cautionsInEnglish } from '../../../words/en/cautions.ts';
import { motionText as words } from '../../../words/en/screens/motion.ts';
import { saveText } from '../../state/saveText.ts';

export const jobFileKinds = ['svg', 'dxf', 'gcode'] as const;
export type JobFileKind = (typeof jobFileKinds)[number];

/** Draws a job to be timed in the browser, with its cautions in it where the format has room, and saves it. */
export const saveJob = async (
  job: JobToTime,
  number: number,
  kind: JobFileKind,
  dialect: GcodeDialect = plainDialect,
): Promise<void> => {
  const notes = cautionsInEnglish.timedJobs.map(({ sentence }) => sentence);
  const name = `timed-job-${String(number)}-${job.kind}.${kind}`;
  switch (kind) {
    case 'svg': {
      const { writeSvg } = await import('../../../formats/svg/writeSvg.ts');
      const title = `${words.job(number)}: ${words.jobShows[job.kind]}`;
      saveText(name, 'image/svg+xml', writeSvg(timedJobDrawing(job), title, notes));
      return;
    }
    case 'dxf': {
      const { writeDxf } = await import('../../../formats/dxf/writeDxf.ts');
      saveText(name, 'image/vnd.dxf', writeDxf(timedJobDrawing(job), notes));
      return;
    }
    case 'gcode': {
      const { writeTimedGcode } = await import('../../../formats/gcode/writeTimedGcode.ts');
      saveText(name, 'text/plain', writeTimedGcode(job, dialect, notes));
    }
  }
};
