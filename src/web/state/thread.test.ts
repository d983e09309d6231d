import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Asked, QuestionOf, Reply } from '../worker/calls.ts';
import { openThread, type Port } from './thread.ts';

/** Ports that do nothing by themselves: what they were sent is noted, and what they say is said by the test. */
const ports = () => {
  const begun: (Port & { readonly sent: Asked[]; isOver: boolean })[] = [];
  const start = (): Port => {
    const sent: Asked[] = [];
    const port = {
      sent,
      isOver: false,
      onmessage: null,
      onerror: null,
      postMessage: (asked: Asked) => void sent.push(asked),
      terminate: () => {
        port.isOver = true;
      },
    };
    begun.push(port);
    return port;
  };
  const say = (data: Reply): void =>
    begun.at(-1)?.onmessage?.(new MessageEvent('message', { data }));
  const fail = (message: string): void =>
    begun.at(-1)?.onerror?.(new ErrorEvent('error', { message }));
  return { begun, start, say, fail };
};

const study = plainStudy({ cells: [{ powerPct: 30, speedMmPerS: 14, grade: 'out' }] });
const question: QuestionOf<'fit'> = { study, earlier: [], aim: 'fastest' };
const numbersOf = (port: { readonly sent: readonly Asked[] } | undefined) =>
  port?.sent.map(({ id }) => id);

describe('a thread as the page asks it', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('gives each question its own answer, in whatever order they come, and says what broke', async () => {
    const { start, say } = ports();
    const { ask } = openThread(start);
    const [one, two, three] = [1, 2, 3].map(() => ask('fit', question));
    say({ id: 2, kind: 'answer', answer: 'second' });
    say({ id: 3, kind: 'broke', message: 'a bug' });
    say({ id: 1, kind: 'answer', answer: 'first' });
    expect(await Promise.all([one, two])).toEqual(['first', 'second']);
    await expect(three).rejects.toThrow('a bug');
  });

  it('tells the stages of a question to whoever asked it', async () => {
    const { start, say } = ports();
    const { ask } = openThread(start);
    const told: string[] = [];
    const drawing = { name: 'a', text: '' } as unknown as QuestionOf<'prove'>;
    const proof = ask('prove', drawing, (stage) => told.push(stage));
    void ask('prove', drawing, () => told.push('of another'));
    say({ id: 1, kind: 'stage', stage: 'reading' });
    say({ id: 1, kind: 'answer', answer: 'proven' });
    expect(await proof).toBe('proven');
    expect(told).toEqual(['reading']);
  });

  it('asks again where its script could not be fetched', async () => {
    const { begun, start, say, fail } = ports();
    const { ask } = openThread(start);
    const answer = ask('fit', question);
    fail('');
    expect(begun).toHaveLength(1);
    vi.advanceTimersByTime(2000);
    expect(begun.map(numbersOf)).toEqual([[1], [1]]);
    say({ id: 1, kind: 'answer', answer: 'late' });
    expect(await answer).toBe('late');
  });

  it('leaves no question waiting where the thread itself fails', async () => {
    const { start, fail } = ports();
    const { ask } = openThread(start);
    const [one, two] = [ask('fit', question), ask('fit', question)];
    fail('out of memory');
    await expect(one).rejects.toThrow('out of memory');
    await expect(two).rejects.toThrow('out of memory');
  });

  it('ends, and begins no more after that', () => {
    const { begun, start, fail } = ports();
    const { ask, end } = openThread(start);
    void ask('fit', question);
    fail('');
    end();
    vi.advanceTimersByTime(10_000);
    expect(begun.map(({ isOver }) => isOver)).toEqual([true]);
  });
});
