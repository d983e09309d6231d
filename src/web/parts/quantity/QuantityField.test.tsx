import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { speedWords } from '../../../words/texts.ts';
import { QuantityField } from './QuantityField.tsx';
import { readCutSpeed } from './readers.ts';

let root: Root;
let holder: HTMLElement;
const said: (number | undefined)[] = [];

const show = (optional: boolean, value = 14): Promise<void> =>
  acting(() =>
    root.render(
      <QuantityField
        label="Speed"
        hint="of the head"
        value={value}
        optional={optional}
        show={speedWords}
        parse={readCutSpeed}
        onChange={(value) => said.push(value)}
      />,
    ),
  );
/** Does something and lets React finish what follows from it. */
const acting = (what: () => void): Promise<void> =>
  act(async () => {
    what();
    await Promise.resolve();
  });
const box = (): HTMLInputElement => {
  const found = holder.querySelector('input');
  if (found === null) throw new Error('no box');
  return found;
};
/** As a person types: past React's own note of the value. */
const type = (text: string): Promise<void> =>
  acting(() => {
    box().focus();
    Reflect.set(HTMLInputElement.prototype, 'value', text, box());
    box().dispatchEvent(new Event('input', { bubbles: true }));
  });
const note = (): string => holder.querySelector('p')?.textContent ?? '';

beforeEach(() => {
  Reflect.set(globalThis, 'IS_REACT_ACT_ENVIRONMENT', true);
  said.length = 0;
  holder = document.createElement('div');
  document.body.append(holder);
  root = createRoot(holder);
});
afterEach(async () => {
  await acting(() => root.unmount());
  holder.remove();
});

describe('a quantity that is typed', () => {
  it('counts at once in any unit, and stands as typed until the field is left', async () => {
    await show(false);
    expect(box().value).toBe('14\u202fmm/s');
    await type('600 mm/min');
    expect(said).toEqual([10]);
    expect(box().value).toBe('600 mm/min');
    await acting(() => box().blur());
    expect(box().value).toBe('14\u202fmm/s'); // what is known, said anew
  });

  it('says why it cannot be read, in the place of the hint, and changes nothing', async () => {
    await show(false);
    expect(note()).toBe('of the head');
    await type('fast');
    expect(said).toEqual([]);
    expect(box().getAttribute('aria-invalid')).toBe('true');
    expect(box().getAttribute('aria-describedby')).toBe(holder.querySelector('p')?.id);
    expect(note()).not.toContain('of the head');
    await acting(() => box().blur());
    expect(box().value).toBe('fast'); // to be put right, not lost
  });

  it('may be emptied where it is optional, and nowhere else', async () => {
    await show(false);
    await type('');
    expect(said).toEqual([]);
    expect(box().getAttribute('aria-invalid')).toBe('true'); // nothing is sent by Enter meanwhile
    await acting(() => box().blur());
    expect(box().value).toBe('14\u202fmm/s');
    await show(true);
    await type(' ');
    expect(said).toEqual([undefined]);
  });

  it('is replaced by what is typed, though the figure was reckoned anew after it was entered', async () => {
    await show(false);
    await acting(() => box().focus());
    await show(false, 12.6);
    expect(box().value).toBe('12.6\u202fmm/s');
    expect([box().selectionStart, box().selectionEnd]).toEqual([0, box().value.length]);
    await type('13');
    await show(false, 9);
    expect([box().value, box().selectionStart]).toEqual(['13', 2]); // and never under a hand that types
  });
});
