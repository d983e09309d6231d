// @vitest-environment jsdom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { useDraft, type DraftOptions } from './useDraft.ts';

const roots: Root[] = [];

beforeEach(() => {
  Reflect.set(globalThis, 'IS_REACT_ACT_ENVIRONMENT', true);
  sessionStorage.clear();
  localStorage.clear();
});
afterEach(() => {
  for (const root of roots.splice(0)) act(() => root.unmount());
});

/** Opens the form, as a reload or a way back does. */
const open = <T,>(options: DraftOptions<T>) => {
  const form: { current: ReturnType<typeof useDraft<T>> | undefined } = { current: undefined };
  const Form = () => {
    form.current = useDraft(options);
    return null;
  };
  const root = createRoot(document.createElement('div'));
  roots.push(root);
  act(() => root.render(<Form />));
  return {
    get current() {
      if (form.current === undefined) throw new Error('not drawn');
      return form.current;
    },
  };
};

describe('what is being filled in', () => {
  it('is there again when the form is opened anew, until it is sent', () => {
    const form = open({ name: 'sheet', initial: { material: '' } });
    act(() => form.current[1]({ material: 'birch' }));
    expect(open({ name: 'sheet', initial: { material: '' } }).current[0]).toEqual({
      material: 'birch',
    });
    expect(open({ name: 'run', initial: { material: '' } }).current[0]).toEqual({ material: '' });
    act(() => form.current[2]());
    expect(open({ name: 'sheet', initial: { material: '' } }).current[0]).toEqual({ material: '' });
  });

  it('is passed over where the form is of something else by now', () => {
    const form = open({ name: 'motion', initial: { mm: 3 } });
    act(() => form.current[1]({ mm: 4 }));
    expect(open({ name: 'motion', initial: { mm: 5 } }).current[0]).toEqual({ mm: 5 });
    const seeded = open({ name: 'card', initial: () => 'first code', of: ['AAAA'] });
    act(() => seeded.current[1]('changed'));
    expect(open({ name: 'card', initial: () => 'other', of: ['AAAA'] }).current[0]).toBe('changed');
    expect(open({ name: 'card', initial: () => 'other', of: [] }).current[0]).toBe('other');
  });

  it('is passed over where another build of the page wrote it', () => {
    const form = open({ name: 'sheet', initial: '' });
    act(() => form.current[1]('birch'));
    const script = document.createElement('script');
    script.setAttribute('src', '/assets/first-b.js');
    document.head.append(script);
    expect(open({ name: 'sheet', initial: '' }).current[0]).toBe('');
    script.remove();
    expect(open({ name: 'sheet', initial: '' }).current[0]).toBe('birch');
  });

  it('outlives the tab where it takes longer, and is read with care', () => {
    const lasting = (value: unknown) => (typeof value === 'number' ? value : undefined);
    const form = open({ name: 'meter', initial: 0, lasting });
    act(() => form.current[1](7));
    sessionStorage.clear();
    expect(open({ name: 'meter', initial: 0, lasting }).current[0]).toBe(7);
    localStorage.setItem('throughcut.draft.meter', JSON.stringify({ mark: '', value: 'seven' }));
    expect(open({ name: 'meter', initial: 0, lasting }).current[0]).toBe(0);
    localStorage.setItem('throughcut.draft.meter', '{"mark');
    expect(open({ name: 'meter', initial: 0, lasting }).current[0]).toBe(0);
  });
});
