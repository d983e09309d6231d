import { describe, expect, it } from 'vitest';
import { sameMachine } from './sameMachine.ts';

const left = { name: 'left by the door' };
const right = { name: 'the big one' };

describe('whether two descriptions are of one machine', () => {
  it('goes by the name, however it is typed', () => {
    expect(sameMachine(left, { name: ' Left by the Door ' }, [])).toBe(true);
    expect(sameMachine(left, right, [])).toBe(false);
  });

  it('takes a nameless one for the only one that has a name', () => {
    expect(sameMachine({}, {}, [left, right])).toBe(true);
    expect(sameMachine(left, {}, [left, {}])).toBe(true);
    expect(sameMachine({}, left, [])).toBe(true);
    expect(sameMachine(left, {}, [right])).toBe(false);
    expect(sameMachine({}, right, [left, right, {}])).toBe(false);
  });
});
