import { timedJobDrawing } from '../../../core/card/timedJobDrawing.ts';
import type { Machine } from '../../../core/machine/machine.ts';
import type { JobToTime } from '../../../core/motion/timedJobs.ts';
import type { Problem } from '../../../core/problem.ts';
import type { MachineFileKind } from '../../../formats/machineFiles.ts';
import { allCautions, motionText as words } from '../../../words/texts.ts';
import { saveForMachine } from '../../state/saveForMachine.ts';

/** Makes a job to be timed, with its cautions in it, and saves it; what is at fault in it comes back. */
export const saveJob = (
  job: JobToTime,
  number: number,
  kind: MachineFileKind,
  machine: Machine,
): Promise<Problem | undefined> =>
  saveForMachine(`timed-job-${String(number)}-${job.kind}`, kind, {
    of: {
      title: `${words.job(number)}: ${words.jobShows[job.kind]}`,
      plainTitle: `timed job ${String(number)}`,
      drawing: timedJobDrawing(job),
      timed: job,
    },
    machine,
    notes: allCautions.timedJobs.map(({ sentence }) => sentence),
  });
