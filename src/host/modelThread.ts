import { parentPort } from 'node:worker_threads';
import type { QuestionOf, SumName } from '../app/sums/model.ts';
import { runSum } from '../app/sums/modelHere.ts';
import type { SumReply } from './sumReply.ts';

/** A thread's program: it makes one sum after the other and remembers what it worked out for the newest sheets. */
interface Asked {
  readonly name: SumName;
  readonly question: QuestionOf<SumName>;
}

const made = async ({ name, question }: Asked): Promise<SumReply> => {
  try {
    return { outcome: await runSum(name, question) };
  } catch (error) {
    return error instanceof Error
      ? { message: error.message, stack: error.stack ?? error.message }
      : { message: String(error), stack: String(error) };
  }
};

parentPort?.on('message', (asked: Asked) => {
  void made(asked).then((reply) => parentPort?.postMessage(reply));
});
