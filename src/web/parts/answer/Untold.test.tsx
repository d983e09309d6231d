import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { readCardOf, type ReadCard } from '../../../../test/samples/earlier.ts';
import { sampleStudy } from '../../../../test/samples/studies.ts';
import { fitStudy } from '../../../core/cutmodel/fitStudy.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import { fetchTheRest } from '../../state/inWords.ts';
import { Untold } from './Untold.tsx';

// The page fetches the words with the part that says them.
beforeAll(fetchTheRest);

let root: Root;
let holder: HTMLElement;
beforeEach(() => {
  Reflect.set(globalThis, 'IS_REACT_ACT_ENVIRONMENT', true);
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
});

const show = async (...cards: readonly ReadCard[]): Promise<string> => {
  const study = sampleStudy('now', {
    cards: cards.map(({ card }) => card),
    events: cards.flatMap(({ events }) => events),
    ask: { powerPct: 30 },
  });
  await act(async () => {
    root.render(<Untold study={study} answer={fitStudy(toCutStudy(study))} />);
    await Promise.resolve();
  });
  return holder.textContent;
};

describe('what the page says of slips that the cells betray', () => {
  it('tells of a card that cuts much slower than the other, at once and with what to ask', async () => {
    const text = await show(readCardOf('K7QX', 5), readCardOf('M2TB', 6, { level: 0.7 }));
    expect(text).toMatch(/“card M2TB” cuts \d\d\s% slower than “card K7QX”/);
    expect(text).toContain('Same batch?');
    // Not folded away: before the first line that opens.
    const told = [...holder.querySelectorAll('li')].find((line) =>
      line.textContent.includes('disagree'),
    );
    expect(told?.closest('details')).toBeNull();
  });

  it('says nothing of the kind where two cards cut alike', async () => {
    const text = await show(readCardOf('K7QX', 5), readCardOf('M2TB', 6));
    expect(text).not.toBe('');
    expect(text).not.toContain('disagree');
  });
});
