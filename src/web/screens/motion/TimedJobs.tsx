import { useMemo, useState } from 'react';
import { timedJobLines } from '../../../core/card/timedJobDrawing.ts';
import type { Machine } from '../../../core/machine/machine.ts';
import type { MotionValues } from '../../../core/motion/motionValues.ts';
import type { MotionFit } from '../../../core/motion/fitMotion.ts';
import { jobsToTime, type JobToTime } from '../../../core/motion/timedJobs.ts';
import { refused, type Outcome, type Problem } from '../../../core/problem.ts';
import { machineFileKinds, machineFiles } from '../../../formats/machineFiles.ts';
import { motionText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readDuration } from '../../parts/quantity/readers.ts';
import { useMotionFit, type MotionFitting } from '../../state/useMotionFit.ts';
import { keepMeasuredTime, measuredTimeOf } from '../../state/measuredTimes.ts';
import { FittedMotion } from './FittedMotion.tsx';
import { saveJob } from './saveJob.ts';
import { Said } from '../../parts/said/Said.tsx';

export interface TimedJobsProps {
  readonly machine: Machine;
  readonly onKeep: (motion: MotionValues) => void;
}

const acts = ['timedJobs', 'always'] as const;
const leastJobs = 3;

/** A job, its place in the list, and how long it took. */
interface Timed {
  readonly job: JobToTime;
  readonly number: number;
  readonly seconds: number;
}

/** The jobs that show how a machine moves: fetched, run without the beam, timed; and what their times say. */
export const TimedJobs = ({ machine, onKeep }: TimedJobsProps) => {
  const { bed, speedRangeMmPerS } = machine;
  const [, fastest] = speedRangeMmPerS;
  const jobs = useMemo(
    () => jobsToTime({ ...(bed === undefined ? {} : { bed }), speedRangeMmPerS: [0, fastest] }),
    [bed, fastest],
  );
  // A time belongs to a job as it was drawn for this bed and speed.
  const keyOf = ({ kind }: JobToTime): string =>
    ['job', kind, bed?.widthMm, bed?.heightMm, fastest].join('.');
  const [, setTold] = useState(0);
  const { fitting, ask, forget } = useMotionFit();
  const timed = jobs.flatMap((job, i): readonly Timed[] => {
    const seconds = measuredTimeOf(keyOf(job));
    return seconds === undefined ? [] : [{ job, number: i + 1, seconds }];
  });
  const tell = (job: JobToTime, seconds: number | undefined): void => {
    keepMeasuredTime(keyOf(job), seconds !== undefined && seconds > 0 ? seconds : undefined);
    forget();
    setTold((count) => count + 1);
  };
  return (
    <>
      <p>{words.jobsMore}</p>
      <Cautions acts={acts} />
      <p>{words.jobsHow}</p>
      <p className="small soft">{words.gcodeMore}</p>
      <ol className="timed">
        {jobs.map((job, i) => (
          <li key={job.kind} className="timed-job">
            <JobFiles job={job} number={i + 1} machine={machine} />
            <QuantityField
              label={words.took(i + 1)}
              optional
              value={measuredTimeOf(keyOf(job))}
              show={words.duration}
              parse={readDuration}
              onChange={(seconds) => tell(job, seconds)}
            />
          </li>
        ))}
      </ol>
      <div className="actions">
        <Action
          kind="strong"
          isDisabled={timed.length < leastJobs || fitting.at === 'working'}
          onPress={() => ask(timed.map(({ job: { moves }, seconds }) => ({ moves, seconds })))}
        >
          {words.fit}
        </Action>
        {timed.length < leastJobs ? (
          <span className="small soft">{words.fitNeeds(timed.length)}</span>
        ) : null}
      </div>
      <Said what="answer">
        <Fitted fitting={fitting} numbers={timed.map(({ number }) => number)} onKeep={onKeep} />
      </Said>
    </>
  );
};

interface FittedProps {
  readonly fitting: MotionFitting;
  /** Of the jobs that were timed, in their order. */
  readonly numbers: readonly number[];
  readonly onKeep: (motion: MotionValues) => void;
}

const Fitted = ({ fitting, numbers, onKeep }: FittedProps) => {
  switch (fitting.at) {
    case 'unasked':
      return null;
    case 'working':
      return (
        <label className="timed-working">
          <span>{words.working}</span>
          <progress />
        </label>
      );
    case 'broke':
      return (
        <Notice tone="stop">
          <p>{words.broke(fitting.message)}</p>
        </Notice>
      );
    case 'fitted': {
      const fit = inList(fitting.fit, numbers);
      return fit.ok ? (
        <FittedMotion fit={fit.value} numbers={numbers} onKeep={onKeep} />
      ) : (
        <ProblemNotice problem={fit.problem} tone="care" />
      );
    }
  }
};

/** A refusal names a job by its place among those that were timed; here it has its place in the list. */
const inList = (fit: Outcome<MotionFit>, numbers: readonly number[]): Outcome<MotionFit> => {
  if (fit.ok) return fit;
  const { problem } = fit;
  switch (problem.code) {
    case 'motion-time-impossible':
    case 'motion-times-disagree': {
      const job = numbers[problem.params.job - 1];
      return job === undefined ? fit : refused(problem.code, { ...problem.params, job });
    }
    default:
      return fit;
  }
};

interface JobFilesProps {
  readonly job: JobToTime;
  readonly number: number;
  readonly machine: Machine;
}

const JobFiles = ({ job, number, machine }: JobFilesProps) => {
  const [problem, setProblem] = useState<Problem>();
  return (
    <div className="timed-files">
      <p>
        <strong>{words.job(number)}</strong>: {words.jobShows[job.kind]},{' '}
        {words.atSpeed(timedJobLines(job).speedMmPerS)}
      </p>
      <div className="actions">
        {machineFileKinds.map((kind) => (
          <Action
            key={kind}
            kind="quiet"
            label={`${machineFiles[kind].name}, ${words.job(number)}`}
            onPress={() => {
              void saveJob(job, number, kind, machine).then(setProblem);
            }}
          >
            {machineFiles[kind].name}
          </Action>
        ))}
      </div>
      {problem === undefined ? null : <ProblemNotice problem={problem} tone="stop" />}
    </div>
  );
};
