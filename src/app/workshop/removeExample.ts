import { done, type Outcome } from '../../core/problem.ts';
import { home, type Home } from './home.ts';
import type { AskingPorts } from '../ports/ports.ts';

/** Removes every trace of the example workshop, and whatever was added to it. The workshop's own is untouched. */
export const removeExample = async (ports: AskingPorts): Promise<Outcome<Home>> => {
  const removed = await ports.store.change(async (session) => {
    await session.deleteExample();
    return done(undefined);
  });
  return removed.ok ? done(await home(ports)) : removed;
};
