import { act } from 'react';
import { createRoot } from 'react-dom/client';
import { describe, expect, it, vi } from 'vitest';
import { refuseBySize } from '../../../formats/drawingSize.ts';
import { FilePick } from './FilePick.tsx';

/** A file of so many bytes that tells whether anyone read it. */
const fileOf = (bytes: number) => {
  let reads = 0;
  const file = new File(['G21'], 'cut.nc');
  Object.defineProperty(file, 'size', { value: bytes });
  Object.defineProperty(file, 'arrayBuffer', {
    value: () => {
      reads += 1;
      return Promise.resolve(new TextEncoder().encode('G21').buffer);
    },
  });
  return { file, reads: () => reads };
};

const pickIn = async (holder: HTMLElement, file: File): Promise<void> => {
  const input = holder.querySelector('input');
  if (input === null) throw new Error('no input');
  Object.defineProperty(input, 'files', { value: [file], configurable: true });
  await act(async () => {
    input.dispatchEvent(new Event('change', { bubbles: true }));
    await Promise.resolve();
  });
};

describe('picking a file', () => {
  it('refuses one that is too big before any of it is read, and takes the next', async () => {
    Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
    const holder = document.body.appendChild(document.createElement('div'));
    const texts: string[] = [];
    const root = createRoot(holder);
    await act(async () => {
      root.render(
        <FilePick
          label="Drawing"
          accept=".nc"
          refuse={refuseBySize}
          onText={(name, text) => texts.push(`${name} ${text}`)}
        />,
      );
      await Promise.resolve();
    });
    // As a click on the field does: the words of later screens are fetched with it.
    document.dispatchEvent(new Event('pointerdown'));
    await vi.dynamicImportSettled();
    const huge = fileOf(41_000_000);
    await pickIn(holder, huge.file);
    expect(huge.reads()).toBe(0);
    expect(holder.querySelector('[role="alert"]')?.textContent).toMatch(/41 MB.*No more than 40/);
    const fair = fileOf(40_000_000);
    await pickIn(holder, fair.file);
    expect(fair.reads()).toBe(1);
    expect(texts).toEqual(['cut.nc G21']);
    expect(holder.querySelector('[role="alert"]')).toBeNull();
    root.unmount();
  });
});
