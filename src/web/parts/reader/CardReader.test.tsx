import { act, useState } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ReadingEvent } from '../../../core/reading/readingEvent.ts';
import { crossed, describedCard } from '../../screens/describe/describedCard.ts';
import { CardReader } from './CardReader.tsx';
import { useReading } from './useReading.ts';

const made = describedCard({
  code: 'AB3D',
  rows: crossed([30], [10, 12, 14, 16], 1),
  shape: 'circle',
  sizeMm: 12,
});
if (made === undefined) throw new Error('no card');
const card = made;

const said: ReadingEvent[] = [];
const Bench = () => {
  const [events, setEvents] = useState<readonly ReadingEvent[]>([]);
  const reading = useReading(card, events, (more) => {
    said.push(...more);
    setEvents((before) => [...before, ...more]);
  });
  return <CardReader reading={reading} flaws="pocket-or-knot" edges="wood" />;
};

/** Does something and lets React finish what follows from it. */
const acting = (what: () => void): Promise<void> =>
  act(async () => {
    what();
    await Promise.resolve();
  });

let root: Root;
let holder: HTMLElement;
beforeEach(async () => {
  Reflect.set(globalThis, 'IS_REACT_ACT_ENVIRONMENT', true);
  said.length = 0;
  holder = document.createElement('div');
  document.body.append(holder);
  root = createRoot(holder);
  await acting(() => root.render(<Bench />));
});
afterEach(async () => {
  await acting(() => root.unmount());
  holder.remove();
});

const button = (matching: (button: HTMLElement) => boolean): HTMLElement => {
  const found = [...holder.querySelectorAll('button')].find(matching);
  if (found === undefined) throw new Error('no such button');
  return found;
};
const cell = (id: string) => button((each) => each.dataset['cell'] === id);
const named = (text: string) => button((each) => each.textContent === text);
const states = () => ['A1', 'B1', 'C1', 'D1'].map((id) => cell(id).dataset['state']).join(' ');
const tap = (element: HTMLElement) =>
  acting(() => {
    element.focus();
    element.click();
  });
const press = (key: string) =>
  acting(() => {
    document.activeElement?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
  });

describe('reading a card', () => {
  it('steps a cell from out over hangs to stays with each tap', async () => {
    expect(states()).toBe('unread unread unread unread');
    await tap(cell('A1'));
    expect(states()).toBe('out unread unread unread');
    await tap(cell('A1'));
    expect(states()).toBe('hangs unread unread unread');
    await tap(cell('A1'));
    expect(states()).toBe('stays unread unread unread');
    await tap(cell('A1'));
    expect(states()).toBe('out unread unread unread');
  });

  it('names each cell by its own words and how it stands', async () => {
    expect(cell('B1').textContent).toBe('12 mm/s30% B1 not read');
    await tap(cell('B1'));
    expect(cell('B1').textContent).toBe('12 mm/s30% B1 out');
  });

  it('says that the rest stayed in one go, and takes it back in one go', async () => {
    await tap(cell('A1'));
    await tap(named('The other 3 are not through'));
    expect(states()).toBe('out stays stays stays');
    await tap(named('Undo'));
    expect(states()).toBe('out unread unread unread');
    await tap(named('Redo'));
    expect(states()).toBe('out stays stays stays');
  });

  it('grades the edge of a shape that came out, for who wants to, and takes it back', async () => {
    expect([...holder.querySelectorAll('button')].map((each) => each.textContent)).not.toContain(
      'brown',
    );
    await tap(cell('B1'));
    await tap(named('brown'));
    expect(said.at(-1)).toMatchObject({ kind: 'edge', cell: 'B1', edge: 'brown' });
    expect(cell('B1').textContent).toBe('12 mm/s30% B1 out brown');
    await tap(named('through tape'));
    expect(said.at(-1)).toMatchObject({ edge: 'brown', taped: true });
    await tap(cell('A1'));
    await tap(named('clean'));
    expect(said.at(-1)).toMatchObject({ cell: 'A1', edge: 'clean', taped: true });
    await tap(named('clean'));
    expect(said.at(-1)).toMatchObject({ cell: 'A1', edge: null });
    await tap(named('Undo'));
    expect(cell('A1').textContent).toBe('10 mm/s30% A1 out clean');
  });

  it('asks why before it calls a cell spoilt', async () => {
    await tap(cell('C1'));
    await tap(named('Spoilt'));
    expect(states()).toBe('unread unread out unread');
    await tap(named('knota flaw of the sheet'));
    expect(states()).toBe('unread unread spoilt unread');
    expect(said.at(-1)).toMatchObject({ kind: 'spoilt', cell: 'C1', reason: 'knot' });
  });

  it('corrects what was really typed, and only adds events', async () => {
    await tap(cell('D1'));
    await tap(named('Cut at another setting?'));
    // Its fields are fetched.
    await act(async () => {
      await import('./AsCut.tsx');
      await new Promise((resolve) => setTimeout(resolve, 50));
    });
    const [speed] = holder.querySelectorAll('input');
    if (speed === undefined) throw new Error('no field');
    await acting(() => {
      // As a person types: past React's own note of the value.
      Reflect.set(HTMLInputElement.prototype, 'value', '9.5', speed);
      speed.dispatchEvent(new Event('input', { bubbles: true }));
    });
    await tap(named('Correct it'));
    expect(cell('D1').textContent).toContain('9.5 mm/s');
    expect(said.map(({ kind }) => kind)).toEqual(['graded', 'as-cut']);
    expect(new Set(said.map(({ id }) => id)).size).toBe(said.length);
  });

  it('goes by keys from cell to cell and grades them', async () => {
    await acting(() => cell('A1').focus());
    await press('o');
    await press('ArrowRight');
    await press('h');
    await press('ArrowRight');
    await press('s');
    expect(states()).toBe('out hangs stays unread');
    await press('Backspace');
    expect(states()).toBe('out hangs unread unread');
    await press('u');
    expect(states()).toBe('out hangs stays unread');
  });
});
