import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Asked, QuestionOf, Reply } from '../worker/calls.ts';
import { startModel } from './model.ts';
import type { Port } from './thread.ts';

const studyAt = (speedMmPerS: number): QuestionOf<'fit'> => ({
  study: plainStudy({ cells: [{ powerPct: 30, speedMmPerS, grade: 'out' }] }),
  aim: 'fastest',
  earlier: [],
});

/** A thread that says of each question that it broke, or nothing. */
const threads = (isBroken: () => boolean) => {
  const heard: Asked[] = [];
  const open = (): Port => {
    const thread: Port = {
      postMessage: (asked) => {
        heard.push(asked);
        if (!isBroken()) return;
        const data: Reply = { id: asked.id, kind: 'broke', message: 'it broke' };
        queueMicrotask(() => thread.onmessage?.(new MessageEvent('message', { data })));
      },
      onmessage: null,
      onerror: null,
      terminate: () => undefined,
    };
    return thread;
  };
  return { heard, open };
};

describe('the model’s thread', () => {
  it('is asked once what is asked twice, at once or later, and anew what is new', () => {
    const { heard, open } = threads(() => false);
    const model = startModel(open);
    const first = model.fit(studyAt(14));
    expect(model.fit(structuredClone(studyAt(14)))).toBe(first);
    void model.fit(studyAt(15));
    expect(model.fit(studyAt(14))).toBe(first);
    expect(heard).toHaveLength(2);
    void model.nextCard({ ...studyAt(14), cellsWanted: 12, settingsAtMost: 6 });
    expect(heard).toHaveLength(3);
  });

  it('keeps few answers, and is asked again what broke', async () => {
    let isBroken = true;
    const { heard, open } = threads(() => isBroken);
    const model = startModel(open);
    await expect(model.fit(studyAt(14))).rejects.toThrow('it broke');
    isBroken = false;
    void model.fit(studyAt(14));
    expect(heard).toHaveLength(2);
    for (const speed of [15, 16, 17, 18]) void model.fit(studyAt(speed));
    void model.fit(studyAt(14));
    expect(heard).toHaveLength(7);
  });
});
