import { done, type Outcome } from '../core/problem.ts';
import { homeIn, type Home } from './home.ts';
import type { Ports } from './ports.ts';

/** Removes every trace of the example workshop, and whatever was added to it. The workshop's own is untouched. */
export const removeExample = ({ store }: Pick<Ports, 'store'>): Promise<Outcome<Home>> =>
  store.change(async (session) => {
    await session.deleteExample();
    return done(await homeIn(session));
  });
