import { Worker } from 'node:worker_threads';
import type { Model, SumName } from '../app/sums/model.ts';
import { refused, type Outcome } from '../core/problem.ts';
import type { SumReply } from './sumReply.ts';

export interface ModelPoolOptions {
  /** The program of a thread: takes `{name, question}`, gives a {@link SumReply}. */
  readonly entry: URL;
  readonly threads: number;
  /** Most time for a sum, and for one to wait until it is begun. */
  readonly limitMs: number;
  /** Most memory for what a sum makes, in a thread. */
  readonly limitMb: number;
  readonly waitingAtMost: number;
}

/** Threads that make sums, so that whoever serves people never waits for one. */
export interface ModelPool {
  /** Sums are given up when `gone` says that nobody waits for them any more. */
  readonly modelFor: (gone?: AbortSignal) => Model;
  /** Ends every thread at once, in the midst of whatever it does. */
  readonly close: () => Promise<void>;
}

interface Job {
  readonly name: SumName;
  readonly question: unknown;
  readonly about: string | undefined;
  readonly settle: (outcome: Outcome<unknown>) => void;
  readonly fail: (error: unknown) => void;
  timer?: NodeJS.Timeout;
}

interface Thread {
  worker?: Worker;
  job?: Job;
  /** The sheets that it was asked about last: their fits are at hand there. */
  readonly about: string[];
}

/** What a thread remembers of sheets is worth going back to for about so many. */
const sheetsRemembered = 24;
/** A sum that nobody waits for may end if it is nearly done: a new thread has to learn everything again. */
const graceMs = 1500;

/**
 * A thread is started when it is first needed. A sum goes to the free thread that knows its sheet, else to any free one, else it
 * waits its turn. One that takes too long or too much ends with its thread; the next sum gets a new one.
 */
export const openModelPool = (options: ModelPoolOptions): ModelPool => {
  const { entry, limitMs, limitMb, waitingAtMost } = options;
  const threads = Array.from({ length: options.threads }, (): Thread => ({ about: [] }));
  const waiting: Job[] = [];
  let isClosed = false;

  const threadFor = ({ about }: Job): Thread | undefined => {
    const free = threads.filter(({ job }) => job === undefined);
    const knowing = free.find((thread) => about !== undefined && thread.about.includes(about));
    return knowing ?? free.find(({ worker }) => worker !== undefined) ?? free[0];
  };

  const begin = (): void => {
    for (let next = waiting[0]; next !== undefined; next = waiting[0]) {
      const thread = threadFor(next);
      if (thread === undefined) return;
      waiting.shift();
      run(thread, next);
    }
  };

  const run = (thread: Thread, job: Job): void => {
    clearTimeout(job.timer);
    thread.job = job;
    remember(thread, job.about);
    job.timer = setTimeout(() => stop(thread, tooLong()), limitMs);
    try {
      (thread.worker ??= started(thread)).postMessage({ name: job.name, question: job.question });
    } catch (error) {
      release(thread)?.fail(error);
    }
  };

  const started = (thread: Thread): Worker => {
    const worker = new Worker(entry, { resourceLimits: { maxOldGenerationSizeMb: limitMb } });
    worker.unref();
    worker.on('message', (reply: SumReply) => {
      const job = release(thread);
      if ('outcome' in reply) job?.settle(reply.outcome);
      else job?.fail(Object.assign(new Error(reply.message), { stack: reply.stack }));
      begin();
    });
    const ended = (error?: unknown): void => {
      if (thread.worker !== worker) return;
      forget(thread);
      const job = release(thread);
      if (isOutOfMemory(error)) job?.settle(refused('sum-too-big', { megabytes: limitMb }));
      else job?.fail(error ?? new Error('a thread that makes sums ended by itself'));
      begin();
    };
    worker.on('error', ended);
    worker.on('exit', () => ended());
    return worker;
  };

  const stop = (thread: Thread, outcome: Outcome<never>): void => {
    const job = release(thread);
    void thread.worker?.terminate();
    forget(thread);
    job?.settle(outcome);
    begin();
  };

  const tooLong = () => refused('sum-took-too-long', { seconds: limitMs / 1000 });

  const giveUp = (job: Job): void => {
    const outcome = refused('sum-not-wanted');
    const place = waiting.indexOf(job);
    const thread = threads.find((one) => one.job === job);
    if (place >= 0) waiting.splice(place, 1);
    clearTimeout(job.timer);
    if (thread === undefined) job.settle(outcome);
    else job.timer = setTimeout(() => stop(thread, outcome), graceMs);
  };

  const queue = (job: Job): void => {
    waiting.push(job);
    job.timer = setTimeout(() => {
      waiting.splice(waiting.indexOf(job), 1);
      job.settle(refused('sums-waiting', { waiting: waiting.length + 1 }));
    }, limitMs);
    begin();
  };

  const ask = (name: SumName, question: unknown, about?: string, gone?: AbortSignal) =>
    new Promise<Outcome<unknown>>((settle, fail) => {
      if (isClosed || gone?.aborted === true) settle(refused('sum-not-wanted'));
      else if (waiting.length >= waitingAtMost)
        settle(refused('sums-waiting', { waiting: waiting.length }));
      else {
        const onGone = (): void => giveUp(job);
        // Who asks for many sums is listened to for those that are under way only.
        const ended =
          <T>(then: (value: T) => void) =>
          (value: T): void => {
            gone?.removeEventListener('abort', onGone);
            then(value);
          };
        const job: Job = { name, question, about, settle: ended(settle), fail: ended(fail) };
        gone?.addEventListener('abort', onGone, { once: true });
        queue(job);
      }
    });

  return {
    modelFor: (gone) => ({
      // What a thread answers is what the sum of that name gives.
      ask: ((name: SumName, question: unknown, about?: string) =>
        ask(name, question, about, gone)) as Model['ask'],
    }),
    close: async () => {
      isClosed = true;
      for (const job of waiting.splice(0)) {
        clearTimeout(job.timer);
        job.settle(refused('sum-not-wanted'));
      }
      const workers = threads.flatMap(({ worker }) => worker ?? []);
      for (const thread of threads) {
        release(thread)?.settle(refused('sum-not-wanted'));
        forget(thread);
      }
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
};

/** The thread is free again; gives what it was at. */
const release = (thread: Thread): Job | undefined => {
  const { job } = thread;
  clearTimeout(job?.timer);
  delete thread.job;
  return job;
};

const forget = (thread: Thread): void => {
  delete thread.worker;
  thread.about.length = 0;
};

const remember = ({ about }: Thread, sheet: string | undefined): void => {
  if (sheet === undefined) return;
  const place = about.indexOf(sheet);
  if (place >= 0) about.splice(place, 1);
  about.push(sheet);
  if (about.length > sheetsRemembered) about.shift();
};

const isOutOfMemory = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
