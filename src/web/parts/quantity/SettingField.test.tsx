import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { Setting } from '../../../core/machine/setting.ts';
import { SettingField } from './SettingField.tsx';

let root: Root;
let holder: HTMLElement;
let said: Setting | undefined;

/** Does something and lets React finish what follows from it. */
const acting = (what: () => void): Promise<void> =>
  act(async () => {
    what();
    await Promise.resolve();
  });

const show = (setting: Setting): Promise<void> =>
  acting(() =>
    root.render(
      <SettingField
        name="test"
        label="Setting"
        setting={setting}
        onChange={(next) => {
          said = next;
        }}
      />,
    ),
  );

const speedBox = (): HTMLInputElement => {
  const box = holder.querySelector('input');
  if (box === null) throw new Error('no box');
  return box;
};

beforeEach(() => {
  Reflect.set(globalThis, 'IS_REACT_ACT_ENVIRONMENT', true);
  sessionStorage.clear();
  said = undefined;
  holder = document.createElement('div');
  document.body.append(holder);
  root = createRoot(holder);
});
afterEach(async () => {
  await acting(() => root.unmount());
  holder.remove();
});

it('shows what is reckoned anew until something is typed, and never loses the caret by it', async () => {
  await show({ speedMmPerS: 14, powerPct: 30, passes: 1 });
  await show({ speedMmPerS: 13.5, powerPct: 30, passes: 2 });
  expect(speedBox().value).toBe('13.5\u202fmm/s');
  const box = speedBox();
  await acting(() => {
    box.focus();
    Reflect.set(HTMLInputElement.prototype, 'value', '1', box);
    box.dispatchEvent(new Event('input', { bubbles: true }));
  });
  expect(said).toEqual({ speedMmPerS: 1, powerPct: 30, passes: 2 });
  // The answer comes while a person is at the second figure.
  await show({ speedMmPerS: 12, powerPct: 28, passes: 1 });
  expect(speedBox()).toBe(box);
  expect(document.activeElement).toBe(box);
  expect(box.value).toBe('1');
});
