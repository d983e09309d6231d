/** How long a page of many kept settings may wait for how they stand; those not worked out by then say that they are not. */
export const pagePatienceMs = 3000;

/** The same for a whole table, which somebody downloads to keep: no answer takes more than 5 s. The next time more is known. */
export const tablePatienceMs = 4000;

/**
 * Says when whoever asked has gone, or has waited for so long: each sum has a limit of its own, but a list has many sums. With a
 * timer of its own: of `AbortSignal.any` over `AbortSignal.timeout` Node 20 forgets the timer when it collects garbage, and then
 * nobody is ever told.
 */
export const goneOrAfter = (gone: AbortSignal, ms: number): AbortSignal => {
  const over = new AbortController();
  const timer = setTimeout(() => over.abort(), ms);
  // Nobody waits for the end of a program because of this. A browser's timer is a number, and holds nobody up.
  if (typeof timer === 'object') timer.unref();
  const end = (): void => {
    clearTimeout(timer);
    over.abort();
  };
  if (gone.aborted) end();
  else gone.addEventListener('abort', end, { once: true });
  return over.signal;
};
