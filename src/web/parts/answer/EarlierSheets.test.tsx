import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readCardOf } from '../../../../test/samples/earlier.ts';
import { sampleStudy } from '../../../../test/samples/studies.ts';
import { earlierSheetsOf, type EarlierSheet } from '../../../core/study/earlierSheet.ts';
import type { Study } from '../../../core/study/study.ts';
import { openPageStore } from '../../state/pageStore.ts';
import { loneTab } from '../../state/tabs.ts';
import { startModel } from '../../state/model.ts';
import type { Port } from '../../state/thread.ts';
import { useAnswer } from '../../state/useAnswer.ts';
import { leaveEarlierOut } from '../../state/useEarlier.ts';
import { WorkshopProvider } from '../../state/workshop.tsx';
import { answerCalls } from '../../worker/answerCalls.ts';
import type { QuestionOf } from '../../worker/calls.ts';
import { modelCalls } from '../../worker/modelCalls.ts';
import { ModelDetails } from './ModelDetails.tsx';

const readStudy = (id: string, code: string, seed: number): Study => {
  const { card, events } = readCardOf(code, seed);
  return sampleStudy(id, { cards: [card], events, ask: { powerPct: 30 } });
};
const study = readStudy('now', 'NOW1', 5);
const earlier = [1, 2].flatMap((n) =>
  earlierSheetsOf(readStudy(`s${String(n)}`, `E${String(n)}`, n)),
);

/** The model on this very thread; what it was asked is noted. */
const questions: QuestionOf<'fit'>[] = [];
const answer = answerCalls(modelCalls);
const thread = (): Port => {
  const own: Port = {
    onmessage: null,
    onerror: null,
    postMessage: (asked) => {
      questions.push(asked.question as QuestionOf<'fit'>);
      void answer(asked, (data) =>
        setTimeout(() => own.onmessage?.(new MessageEvent('message', { data })), 0),
      );
    },
    terminate: () => undefined,
  };
  return own;
};
const store = openPageStore({
  shelf: localStorage,
  now: () => 0,
  send: () => Promise.resolve({ ok: true, value: {} }),
  fetchStudy: () => Promise.reject(new Error('not asked here')),
  later: () => undefined,
  tabs: loneTab,
  tab: 'one',
});

const Shown = ({ of }: { readonly of: Study }) => {
  const { answer, earlier: known } = useAnswer(of);
  return answer === undefined ? null : (
    <>
      <output>{answer.recommended?.speedMmPerS}</output>
      <ModelDetails study={of} answer={answer} earlier={known} />
    </>
  );
};

let root: Root;
let holder: HTMLElement;
let cache: QueryClient;
const show = (of: Study = study) =>
  act(async () => {
    root.render(
      <QueryClientProvider client={cache}>
        <WorkshopProvider value={{ store, model: startModel(thread) }}>
          <Shown of={of} />
        </WorkshopProvider>
      </QueryClientProvider>,
    );
    await Promise.resolve();
  });
/** Lets what is on its way arrive. */
const settle = async (until: () => boolean): Promise<void> => {
  for (let turn = 0; turn < 400 && !until(); turn += 1)
    await act(() => new Promise((resolve) => setTimeout(resolve, 5)));
  expect(until()).toBe(true);
};
const text = () => holder.textContent;
const answersWith = (sheets: readonly EarlierSheet[]) => {
  const reply = new Response(JSON.stringify({ sheets }));
  return vi.spyOn(globalThis, 'fetch').mockImplementation(() => Promise.resolve(reply.clone()));
};

beforeEach(() => {
  Reflect.set(globalThis, 'IS_REACT_ACT_ENVIRONMENT', true);
  questions.length = 0;
  leaveEarlierOut('now', false);
  cache = new QueryClient({ defaultOptions: { queries: { networkMode: 'always' } } });
  holder = document.createElement('div');
  document.body.append(holder);
  root = createRoot(holder);
});
afterEach(async () => {
  await act(async () => {
    root.unmount();
    await Promise.resolve();
  });
  holder.remove();
  cache.clear();
  vi.restoreAllMocks();
});

describe('what earlier sheets taught, on the page', () => {
  it('is asked once, given to the model with the first question, and said in plain words', async () => {
    const fetched = answersWith(earlier);
    await show();
    await settle(() => text().includes('24 earlier shapes from 2 other sheets'));
    expect(text()).toContain('None of them stands in for a shape of this sheet');
    expect(questions.map((question) => question.earlier)).toEqual([earlier]);
    const again = { ...study, promise: { ...study.promise, outOf100: 99 } };
    await show(again);
    await settle(() => questions.length === 2);
    expect(questions[1]?.earlier).toEqual(earlier);
    expect(fetched).toHaveBeenCalledTimes(1);
    const [address] = fetched.mock.calls[0] ?? [];
    expect(address).toMatch(/^\/api\/history\?except=now&.*material=birch/);
  });

  it('can be left out of this study, and leaned on again', async () => {
    answersWith(earlier);
    await show();
    await settle(() => text().includes('It leans on 24'));
    const leaning = holder.querySelector('output')?.textContent;
    const choose = async (name: string): Promise<void> => {
      const label = [...holder.querySelectorAll('label')].find((one) =>
        one.textContent.includes(name),
      );
      await act(async () => {
        label?.click();
        await Promise.resolve();
      });
    };
    await choose('do without');
    await settle(() => text().includes('24 earlier shapes from 2 other sheets are left out.'));
    await settle(() => questions.length === 2);
    expect(questions[1]?.earlier).toEqual([]);
    await settle(() => holder.querySelector('output')?.textContent !== leaning);
    await choose('lean on it');
    await settle(() => text().includes('It leans on 24'));
    expect(holder.querySelector('output')?.textContent).toBe(leaning);
  });

  it('is not waited for when the server is away: the answer does without and says so', async () => {
    vi.spyOn(globalThis, 'fetch').mockRejectedValue(new TypeError('no network'));
    await show();
    await settle(() => text().includes('the answer does without'));
    expect(questions.map((question) => question.earlier)).toEqual([[]]);
  });

  it('is not waited for long when the server says nothing', async () => {
    vi.spyOn(globalThis, 'fetch').mockReturnValue(new Promise(() => undefined));
    await show();
    expect(questions).toEqual([]);
    await settle(() => questions.length === 1);
    await settle(() => text().includes('the answer does without'));
  });

  it('is said to be nothing where no other sheet was read', async () => {
    answersWith([]);
    await show();
    await settle(() => text().includes('No other sheet of this material was read'));
    expect(holder.querySelector('[role=radiogroup]')).toBeNull();
  });
});
