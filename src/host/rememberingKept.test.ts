import { describe, expect, it } from 'vitest';
import type { Model, QuestionOf, SumName } from '../app/sums/model.ts';
import { done, refused, type Outcome } from '../core/problem.ts';
import { rememberingKept } from './rememberingKept.ts';

const question = (id: string): QuestionOf<'judgeKept'> =>
  ({ kept: { id }, tallies: [], strips: [] }) as unknown as QuestionOf<'judgeKept'>;

/** A model that counts what it is asked. */
const counting = (answer: (name: SumName) => Outcome<unknown>) => {
  const asked: SumName[] = [];
  const model: Model = {
    ask: ((name: SumName) => {
      asked.push(name);
      return Promise.resolve(answer(name));
    }) as unknown as Model['ask'],
  };
  return { asked, modelFor: rememberingKept(() => model) };
};

describe('how kept settings stand', () => {
  it('is worked out once for one question, whoever asks, and anew when anything in it changed', async () => {
    const { asked, modelFor } = counting(() => done({ standing: 'holds' }));
    const first = await modelFor(undefined).ask('judgeKept', question('a'));
    expect(await modelFor(undefined).ask('judgeKept', question('a'))).toEqual(first);
    expect(asked).toHaveLength(1);
    await modelFor(undefined).ask('judgeKept', question('b'));
    expect(asked).toHaveLength(2);
  });

  it('is asked again after a refusal', async () => {
    const { asked, modelFor } = counting(() => refused('sum-took-too-long', { seconds: 20 }));
    const model = modelFor(undefined);
    expect((await model.ask('judgeKept', question('a'))).ok).toBe(false);
    await model.ask('judgeKept', question('a'));
    expect(asked).toHaveLength(2);
  });

  it('is all that is remembered: other sums go through', async () => {
    const { asked, modelFor } = counting(() => done('answer'));
    const model = modelFor(undefined);
    const study = {} as QuestionOf<'answerCutStudy'>;
    await model.ask('answerCutStudy', study);
    await model.ask('answerCutStudy', study);
    expect(asked).toEqual(['answerCutStudy', 'answerCutStudy']);
  });
});
